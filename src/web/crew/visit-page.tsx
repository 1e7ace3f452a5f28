import type { FC } from 'hono/jsx';
import { ownerText } from '../../drawing/calendar-words.ts';
import { postNumbersText } from '../../drawing/what-if-words.ts';
import type { CatalogueKind } from '../../season/catalogue-entry.ts';
import type { VisitItem } from '../../season/visit/visit.ts';
import { SHIPPED_CATALOGUE } from '../../season/works-catalogue.ts';
import { WHOLE_FENCE } from '../../service/fence-quote.ts';
import type { VisitSheet } from '../../service/visit-sheet.ts';
import { FormAlert } from '../frame/form-field.tsx';
import { type SentForm, textField, textFields } from '../frame/text-field.ts';
import { CrewPage, type CrewVisitor, EntryForm } from './crew-frame.tsx';
import { fencePath, visitPath, worksWords } from './crew-marks.ts';
import type { CrewWords } from './crew-words.ts';
import { CREW_WORDS } from './crew-words-of.ts';
import { FenceLinks, Reminders, SiteHead } from './stop-parts.tsx';
import { LoadList } from './today-page.tsx';

/** A form that was refused, with why. */
export interface RefusedForm {
  readonly form: SentForm;
  readonly reasons: readonly string[];
  /** True where it is taken once it is confirmed. */
  readonly question: boolean;
}

/** Properties of the page of one visit. */
export interface VisitPageProps {
  readonly visitor: CrewVisitor;
  readonly sheet: VisitSheet;
  /** Posts entered so far, by fence. */
  readonly entered: ReadonlyMap<string, number>;
  readonly refused: RefusedForm | null;
  readonly returned: readonly string[];
}

const KINDS = Object.keys(SHIPPED_CATALOGUE) as readonly CatalogueKind[];

/** One visit: where, what first, its fences, and what was done of it. */
export const VisitPage: FC<VisitPageProps> = (props) => {
  const { visitor, sheet, entered } = props;
  const words = CREW_WORDS[visitor.account.language];
  const { stop, visit } = sheet;
  const isOpen = visit.state === 'proposed' || visit.state === 'confirmed';
  return (
    <CrewPage title={words.visitOf(stop.site.name)} visitor={visitor}>
      <p class="back">
        <a class="big-back" href="/today">
          {words.backToToday}
        </a>
      </p>
      <h1>{stop.site.name}</h1>
      <p class="lead">{words.day(visit.firstDay)}</p>
      <SiteHead stop={stop} words={words} href={null} />
      {visit.state === 'done' && <p class="done">{words.isDone}</p>}
      {!isOpen && visit.state !== 'done' && <FormAlert>{words.isOff}</FormAlert>}
      {props.returned.length > 0 && <p>{words.returnedText(props.returned.join(', '))}</p>}
      {stop.note !== '' && (
        <p class="said">
          <b>{words.officeSays}:</b> {stop.note}
        </p>
      )}
      {isOpen && <Reminders reminders={stop.reminders} words={words} />}
      <h2>{words.fences}</h2>
      <FenceLinks
        fences={stop.fences.map(({ ref, works, accessNote, posts }) => ({
          ref,
          href: fencePath(visit.uid, ref),
          text: worksWords(works, words),
          accessNote,
          small: words.entered(entered.get(ref) ?? 0, posts.length),
        }))}
        words={words}
      />
      {stop.owners.map((owner) => (
        <p>
          <b>
            {words.owner} {owner.fenceRefs.join(', ')}:
          </b>{' '}
          {ownerText(owner)}
        </p>
      ))}
      {isOpen && sheet.load.length > 0 && <LoadList load={sheet.load} words={words} />}
      {isOpen && <FinishForm {...props} words={words} />}
    </CrewPage>
  );
};

const FinishForm: FC<VisitPageProps & { readonly words: CrewWords }> = ({
  visitor,
  sheet,
  entered,
  refused,
  words,
}) => {
  const { visit, stop, today } = sheet;
  const said = refused?.form;
  return (
    <section id="finish" class="finish">
      <h2>{words.finish}</h2>
      <p>{words.finishLead}</p>
      {refused && (
        <FormAlert>
          {words.notStored} {refused.reasons.join(' ')}
        </FormAlert>
      )}
      <EntryForm
        visitor={visitor}
        action={`${visitPath(visit.uid)}/done`}
        title={`${words.visitOf(stop.site.name)}: ${words.finishButton}`}
        kind="visit-done"
        class="tall crew-form"
      >
        {visit.items.map((item) => (
          <DoneAtFence
            uid={visit.uid}
            item={item}
            said={said}
            isEntered={(entered.get(item.fenceRef) ?? 0) > 0}
            words={words}
          />
        ))}
        <div class="field">
          <label for="hours">{words.hours}</label>
          <input
            id="hours"
            name="hours"
            inputmode="decimal"
            autocomplete="off"
            value={said && textField(said, 'hours')}
            aria-describedby="hours-hint"
          />
          <p class="hint" id="hours-hint">
            {words.hoursHint(String(Number(stop.personHours.toFixed(1))))}
          </p>
        </div>
        <div class="field">
          <label for="day">{words.doneOn}</label>
          <input id="day" name="day" type="date" value={(said && textField(said, 'day')) || today} max={today} />
        </div>
        <div class="field">
          <label for="remarks">{words.remarks}</label>
          <textarea id="remarks" name="remarks" rows={3} maxlength={2000} aria-describedby="remarks-hint">
            {said ? textField(said, 'remarks') : ''}
          </textarea>
          <p class="hint" id="remarks-hint">
            {words.remarksHint}
          </p>
        </div>
        {refused?.question && (
          <label class="big-tick">
            <input type="checkbox" name="sure" value="yes" />
            <span>{words.sureHours}</span>
          </label>
        )}
        <button class="primary" type="submit">
          {words.finishButton}
        </button>
      </EntryForm>
    </section>
  );
};

const DoneAtFence: FC<{
  readonly uid: string;
  readonly item: VisitItem;
  readonly said: SentForm | undefined;
  readonly isEntered: boolean;
  readonly words: CrewWords;
}> = ({ uid, item: { fenceRef, works }, said, isEntered, words }) => {
  // a fence to be inspected of which nothing is entered was hardly done; what waits on the phone ticks it there
  const isOpen = !isEntered && works.some(({ kind }) => kind === 'inspect');
  const ticked = said ? textFields(said, `did/${fenceRef}`) : isOpen ? [] : works.map(({ kind }) => kind as string);
  return (
    <fieldset>
      <legend>{words.doneAt(fenceRef)}</legend>
      {works.map(({ kind, posts }) => {
        const name = `posts/${fenceRef}/${kind}`;
        return (
          <>
            <label class="big-tick">
              <input
                type="checkbox"
                name={`did/${fenceRef}`}
                value={kind}
                checked={ticked.includes(kind)}
                data-once-entered={isOpen && !said ? fencePath(uid, fenceRef) : undefined}
              />
              <span>{words.works[kind]}</span>
            </label>
            {!WHOLE_FENCE.has(kind) && (
              <div class="field at-posts">
                <label for={name}>{words.atPosts}</label>
                <input
                  id={name}
                  name={name}
                  autocomplete="off"
                  value={said ? textField(said, name) : postNumbersText(posts).replaceAll('–', '-')}
                />
              </div>
            )}
          </>
        );
      })}
      <details>
        <summary>{words.somethingElse}</summary>
        <div class="field">
          <label for={`else/${fenceRef}`}>{words.somethingElse}</label>
          <select id={`else/${fenceRef}`} name={`else/${fenceRef}`}>
            <option value="">{words.nothingElse}</option>
            {KINDS.filter((kind) => !works.some((each) => each.kind === kind)).map((kind) => (
              <option value={kind} selected={said ? textField(said, `else/${fenceRef}`) === kind : false}>
                {words.works[kind]}
              </option>
            ))}
          </select>
        </div>
        <div class="field">
          <label for={`else-posts/${fenceRef}`}>{words.elseAtPosts}</label>
          <input
            id={`else-posts/${fenceRef}`}
            name={`else-posts/${fenceRef}`}
            autocomplete="off"
            value={said && textField(said, `else-posts/${fenceRef}`)}
          />
        </div>
      </details>
    </fieldset>
  );
};
