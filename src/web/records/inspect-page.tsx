import type { FC } from 'hono/jsx';
import { methodText } from '../../drawing/evidence-text.ts';
import { INSPECTION_METHODS } from '../../forecast/evidence/inspection.ts';
import type { ExportUnits } from '../../register/csv/csv-field.ts';
import type { RowCells } from '../../register/csv/record-cells.ts';
import { ChoiceField, FormAlert, FormField, TokenField } from '../frame/form-field.tsx';
import type { PageFrame } from '../frame/page-frame.ts';
import { PageShell } from '../frame/page-shell.tsx';
import { ScrollFrame } from '../frame/scroll-frame.tsx';
import { FOUND_WORDS, type ReadingEntry, readingField, smallUnit } from './reading-rows.ts';
import { LongTextField } from './record-fields.tsx';

/** A fault of the form: of a field of the inspection, or of a post. */
export interface InspectFault {
  /** Null where it is about the inspection itself. */
  readonly post: number | null;
  readonly field: string;
  readonly reason: string;
}

/** Properties of the page on which an inspection is entered. */
export interface InspectPageProps {
  readonly frame: PageFrame;
  readonly formToken: string;
  readonly fenceRef: string;
  readonly place: string;
  readonly units: ExportUnits;
  readonly cells: RowCells;
  readonly entries: readonly ReadingEntry[];
  /** How many posts the fence has; the form shows some of them. */
  readonly postCount: number;
  readonly from: number;
  readonly most: number;
  readonly faults: readonly InspectFault[];
  /** True where something is refused until it is confirmed. */
  readonly asked: boolean;
}

/** The page on which the office enters an inspection of a fence. */
export const InspectPage: FC<InspectPageProps> = (props) => {
  const { frame, formToken, fenceRef, place, cells, entries, faults, asked, postCount, from, most } = props;
  const path = `/fences/${encodeURIComponent(fenceRef)}`;
  const fault = (field: string): string | undefined =>
    faults.find((each) => each.post === null && each.field === field)?.reason;
  const ofPosts = faults.filter(({ post }) => post !== null);
  const lone = faults.filter(({ post, field }) => post === null && !(field in LABELS));
  return (
    <PageShell title={`Inspection of fence ${fenceRef}`} section="fences" frame={frame} cautions={false}>
      <p class="back">
        <a href={path}>{`Fence ${fenceRef}`}</a>
      </p>
      <h1>{`Inspection of fence ${fenceRef}`}</h1>
      <p class="where">{place}</p>
      {faults.length > 0 && (
        <FormAlert>
          Nothing was stored. {lone.length > 0 ? lone.map(({ reason }) => reason).join(' · ') : 'See what to correct.'}
        </FormAlert>
      )}
      {ofPosts.length > 0 && (
        <ul class="plain">
          {ofPosts.map(({ post, field, reason }) => (
            <li>
              <a href={`#post-${post}`}>{`Post ${post}`}</a>
              {`${field === '' ? '' : `, ${field.replaceAll('_', ' ')}`}: ${reason}`}
            </li>
          ))}
        </ul>
      )}
      <form class="entry-form" method="post" action={`${path}/inspect?from=${from}`}>
        <TokenField token={formToken} />
        <div class="tall-fields">
          <FormField name="day" label="Day" value={cells.day ?? ''} hint="As 2026-05-12." fault={fault('day')} />
          <FormField
            name="inspector"
            label="Who looked"
            value={cells.inspector ?? ''}
            autocomplete="name"
            fault={fault('inspector')}
          />
          <ChoiceField
            name="method"
            label="With what"
            chosen={cells.method ?? ''}
            choices={INSPECTION_METHODS.map((method) => [method, methodText(method)])}
            fault={fault('method')}
          />
          <FormField
            name="qualification"
            label="Qualification (may be empty)"
            value={cells.qualification ?? ''}
            required={false}
            fault={fault('qualification')}
          />
          <FormField
            name="instrument"
            label="Instrument (may be empty)"
            value={cells.instrument ?? ''}
            required={false}
            fault={fault('instrument')}
          />
          <FormField
            name="ref"
            label="Ref (may be empty)"
            value={cells.ref ?? ''}
            required={false}
            hint="Empty: fence, day and method. A second look on the same day needs one of its own."
            fault={fault('ref')}
          />
        </div>
        <LongTextField name="notes" label="Notes (may be empty)" value={cells.notes ?? ''} fault={fault('notes')} />
        <h2>What was found</h2>
        <p>
          A row that stays empty counts as a post nobody looked at. Lengths are in{' '}
          {smallUnit(props.units) === 'in' ? 'inches' : 'millimetres'}.
        </p>
        <PostRows {...props} entries={entries} />
        {postCount > most && <OtherPosts {...props} path={path} />}
        {asked && (
          <div class="tick">
            <input id="confirmed" type="checkbox" name="confirmed" value="yes" />
            <label for="confirmed">It is so: take it as it stands</label>
          </div>
        )}
        <button type="submit">Store the inspection</button>
      </form>
    </PageShell>
  );
};

const LABELS: Readonly<Record<string, true>> = {
  day: true,
  inspector: true,
  method: true,
  qualification: true,
  instrument: true,
  ref: true,
  notes: true,
};

const OtherPosts: FC<InspectPageProps & { readonly path: string }> = ({ postCount, from, most, path }) => (
  <p>
    {`Posts ${from} to ${Math.min(postCount, from + most - 1)} of ${postCount} are shown. Readings of the others are added to the same inspection: store these first, then open `}
    {Array.from({ length: Math.ceil(postCount / most) }, (_, index) => index * most + 1)
      .filter((first) => first !== from)
      .map((first, index) => (
        <>
          {index > 0 && ', '}
          <a href={`${path}/inspect?from=${first}`}>{`posts from ${first}`}</a>
        </>
      ))}
    {' and enter the same day, name and method.'}
  </p>
);

const PostRows: FC<Pick<InspectPageProps, 'entries' | 'faults' | 'units'>> = ({ entries, faults }) => (
  <ScrollFrame label="Posts">
    <table class="entry stacked">
      <caption class="visually-hidden">What was found, post by post</caption>
      <thead>
        <tr>
          {[
            'Post',
            'At the groundline',
            'Number',
            'Hollow',
            'Lean °',
            'Collar',
            'Rail 0 to 1',
            'Trimmer cut',
            'Closed off',
            'Notes',
          ].map((heading) => (
            <th scope="col">{heading}</th>
          ))}
        </tr>
      </thead>
      <tbody>
        {entries.map((entry) => (
          <PostRow entry={entry} isWrong={faults.some(({ post }) => post === entry.post)} />
        ))}
      </tbody>
    </table>
  </ScrollFrame>
);

const PostRow: FC<{ readonly entry: ReadingEntry; readonly isWrong: boolean }> = ({ entry, isWrong }) => {
  const { post } = entry;
  const box = (name: 'number' | 'cavity' | 'lean' | 'rail' | 'trimmer' | 'notes', label: string, label2: string) => (
    <td data-label={label2}>
      <input
        name={readingField(post, name)}
        type="text"
        inputmode={name === 'notes' ? undefined : 'decimal'}
        value={entry[name]}
        autocomplete="off"
        aria-label={`Post ${post}: ${label}`}
        aria-invalid={isWrong ? 'true' : undefined}
      />
    </td>
  );
  return (
    <tr id={`post-${post}`}>
      <th scope="row">
        <span class="stacked-name">Post </span>
        {post}
      </th>
      <td data-label="At the groundline">
        <select name={readingField(post, 'found')} aria-label={`Post ${post}: at the groundline`}>
          {FOUND_WORDS.map(([value, words]) => (
            <option value={value} selected={value === entry.found}>
              {words}
            </option>
          ))}
        </select>
      </td>
      {box('number', 'number read at the groundline', 'Number')}
      {box('cavity', 'hollow, across', 'Hollow')}
      {box('lean', 'degrees out of plumb', 'Lean °')}
      <td data-label="Collar">
        <select name={readingField(post, 'collar')} aria-label={`Post ${post}: collar`}>
          {[
            ['', '–'],
            ['no', 'sound'],
            ['yes', 'cracked'],
          ].map(([value, words]) => (
            <option value={value} selected={value === entry.collar}>
              {words}
            </option>
          ))}
        </select>
      </td>
      {box('rail', 'weakest rail connection, 0 to 1', 'Rail 0 to 1')}
      {box('trimmer', 'trimmer cut, deep', 'Trimmer cut')}
      <td data-label="Closed off">
        <input
          type="checkbox"
          name={readingField(post, 'closed')}
          value="yes"
          checked={entry.closed}
          aria-label={`Post ${post}: closed off, dangerous`}
        />
      </td>
      {box('notes', 'notes', 'Notes')}
    </tr>
  );
};
