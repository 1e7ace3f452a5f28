import type { FC } from 'hono/jsx';
import { postBreadthMm, shortestSideMm } from '../../capacity/post-section.ts';
import { depthFigure, depthUnit } from '../../drawing/quantity-text.ts';
import { INSPECTION_METHODS, type InspectionMethod } from '../../forecast/evidence/inspection.ts';
import { MEASURED_KINDS, type ReadingRecord } from '../../register/reading-record.ts';
import type { CheckedPost } from '../../season/visit/check-list.ts';
import { textField } from '../frame/text-field.ts';
import { type CrewVisitor, EntryForm } from './crew-frame.tsx';
import { FIELDS_OF_METHOD } from './crew-marks.ts';
import type { CrewWords, EntryField } from './crew-words.ts';
import { CREW_WORDS } from './crew-words-of.ts';
import type { RefusedForm } from './visit-page.tsx';

/** Properties of the form of one post. */
export interface PostFormProps {
  readonly visitor: CrewVisitor;
  readonly action: string;
  readonly title: string;
  readonly post: CheckedPost;
  readonly units: 'us' | 'metric';
  readonly reading: ReadingRecord | null;
  readonly method: InspectionMethod | null;
  readonly refused: RefusedForm | null;
}

const shortest = (mm: number, units: 'us' | 'metric'): string => String(Number(depthFigure(mm, units)));

/** What a field holds: what was typed and refused, else what this visit entered. */
function heldBy(field: EntryField, { refused, reading, units }: PostFormProps): string {
  if (refused) return textField(refused.form, field);
  if (!reading) return '';
  const { groundlineKind: kind, groundlineMm: mm, cavityMm, leanDegrees, railConnection, trimmerCutMm } = reading;
  const measured = MEASURED_KINDS.find((each) => each.replaceAll('-', '_') === field);
  if (measured) return kind === measured && mm !== null ? shortest(mm, units) : '';
  const yesNo = (is: boolean | null): string => (is === null ? '' : is ? 'yes' : 'no');
  const held: Readonly<Partial<Record<EntryField, string>>> = {
    broken: kind === 'broken' ? 'yes' : '',
    cavity: cavityMm === null ? '' : shortest(cavityMm, units),
    lean_degrees: leanDegrees === null ? '' : String(leanDegrees),
    collar_cracked: yesNo(reading.collarCracked),
    rail_connection: railConnection === null ? '' : String(railConnection),
    trimmer_cut: trimmerCutMm === null ? '' : shortest(trimmerCutMm, units),
    notes: reading.notes,
  };
  return held[field] ?? '';
}

/** The most that a field can hold at a post of that section [mm], by the rules of the register; null where it has none of its own. */
function mostMm(field: EntryField, { wood: { section } }: CheckedPost): number | null {
  if (field === 'depth' || field === 'sound_to' || field === 'soft_to') return shortestSideMm(section) / 2;
  if (field === 'cavity') return shortestSideMm(section);
  return field === 'trimmer_cut' ? postBreadthMm(section) : null;
}

/** The form of one post: large targets, and only the numbers that the method gives. */
export const PostForm: FC<PostFormProps> = (props) => {
  const { visitor, action, title, post, method, refused, units } = props;
  const words = CREW_WORDS[visitor.account.language];
  const unit = depthUnit(units);
  const mostOf = (field: EntryField): string | null => {
    const most = mostMm(field, post);
    return most === null ? null : shortest(most, units);
  };
  const value = (field: EntryField): string => heldBy(field, props);
  return (
    <EntryForm visitor={visitor} action={action} title={title} kind="reading" class="crew-form post-form">
      <input type="hidden" name="method" value={method ?? ''} />
      <input type="hidden" name="day" value="" />
      {INSPECTION_METHODS.map((each) => (
        // without a script those of another method are never there to be filled in
        <fieldset class="plain-set" data-method={each} hidden={each !== method} disabled={each !== method}>
          <legend class="visually-hidden">{words.methods[each]}</legend>
          {FIELDS_OF_METHOD[each].map((field) => (
            <NumberField
              id={`${field}-${each}-${post.number}`}
              field={field}
              unit={unit}
              value={value(field)}
              most={mostOf(field)}
              words={words}
            />
          ))}
        </fieldset>
      ))}
      <label class="big-tick">
        <input type="checkbox" name="broken" value="yes" checked={value('broken') === 'yes'} />
        <span>{words.field.broken}</span>
      </label>
      <NumberField
        id={`lean_degrees-${post.number}`}
        field="lean_degrees"
        unit="°"
        value={value('lean_degrees')}
        words={words}
        isLean={true}
      />
      <Choices
        field="collar_cracked"
        chosen={value('collar_cracked')}
        choices={[
          ['', words.notLooked],
          ['yes', words.yes],
          ['no', words.no],
        ]}
        words={words}
      />
      <Choices
        field="rail_connection"
        chosen={value('rail_connection')}
        choices={[
          ['', words.notLooked],
          ['1', words.rail['1']],
          ['0.5', words.rail['0.5']],
          ['0', words.rail['0']],
        ]}
        hint={words.railHint}
        words={words}
      />
      <NumberField
        id={`trimmer_cut-${post.number}`}
        field="trimmer_cut"
        unit={unit}
        value={value('trimmer_cut')}
        most={mostOf('trimmer_cut')}
        words={words}
      />
      <div class="field">
        <label for={`notes-${post.number}`}>{words.field.notes}</label>
        <input id={`notes-${post.number}`} name="notes" maxlength={500} autocomplete="off" value={value('notes')} />
      </div>
      {refused?.question && (
        <label class="big-tick">
          <input type="checkbox" name="sure" value="yes" />
          <span>{words.sure}</span>
        </label>
      )}
      <button type="submit" class="primary">
        {words.save(post.number)}
      </button>
    </EntryForm>
  );
};

const NumberField: FC<{
  readonly id: string;
  readonly field: EntryField;
  readonly unit: string;
  readonly value: string;
  /** Most that the post can have, in the unit; null where there is no such limit. */
  readonly most?: string | null;
  readonly words: CrewWords;
  readonly isLean?: boolean;
}> = ({ id, field, unit, value, most = null, words, isLean = false }) => {
  const hint = words.fieldHint[field];
  return (
    <div class="field big-number">
      <label for={id}>{words.field[field]}</label>
      <div class="with-unit">
        <input
          id={id}
          name={field}
          inputmode="decimal"
          autocomplete="off"
          value={value}
          aria-describedby={hint ? `${id}-hint` : undefined}
          data-most={most ?? undefined}
          data-too-much={most === null ? undefined : words.tooDeep(`${most} ${unit}`)}
          data-lean={isLean ? 'yes' : undefined}
        />
        <span class="unit">{unit}</span>
      </div>
      {isLean && <button type="button" class="wide" data-take-level="yes" hidden></button>}
      {hint && (
        <p class="hint" id={`${id}-hint`}>
          {hint}
        </p>
      )}
    </div>
  );
};

const Choices: FC<{
  readonly field: EntryField;
  readonly chosen: string;
  readonly choices: readonly (readonly [value: string, text: string])[];
  readonly hint?: string;
  readonly words: CrewWords;
}> = ({ field, chosen, choices, hint, words }) => (
  <fieldset class="plain-set">
    <legend>{words.field[field]}</legend>
    <div class="big-choices in-a-row">
      {choices.map(([value, text]) => (
        <label class="big-choice">
          <input type="radio" name={field} value={value} checked={value === chosen} />
          <span>{text}</span>
        </label>
      ))}
    </div>
    {hint && <p class="hint">{hint}</p>}
  </fieldset>
);
