import type { FC } from 'hono/jsx';
import { hoursWords, listWords } from '../../drawing/day-words.ts';
import { visitItemText } from '../../drawing/visit-words.ts';
import type { InspectionRecord } from '../../register/inspection-record.ts';
import type { Visit } from '../../season/visit/visit.ts';
import type { CalendarDay } from '../../units/calendar-day.ts';
import { ChoiceField, FormField, TokenField } from '../frame/form-field.tsx';
import type { SeasonNames } from '../frame/season-names.ts';
import { type SentForm, textField, textFields } from '../frame/text-field.ts';
import { fieldOf } from './done-form.ts';

/** The forms of a visit. */
export type VisitAction = 'confirm' | 'done' | 'miss' | 'cancel';

/** What the forms of a visit show. */
export interface FormsState {
  readonly formToken: string;
  /** The form that was sent and did not do, or was only looked at, with what it said; its part is open. */
  readonly asked: { readonly action: VisitAction; readonly form: SentForm; readonly mayBeSure: boolean } | null;
  /** Inspections of its fences, the newest first. */
  readonly inspections: readonly InspectionRecord[];
}

interface FormsProps extends FormsState, SeasonNames {
  readonly visit: Visit;
  readonly today: CalendarDay;
}

/** Everything that can become of an open visit, each a form of its own. */
export const VisitForms: FC<FormsProps> = (props) => (
  <section class="forms">
    <h2 id="act">What becomes of it</h2>
    <ConfirmForm {...props} />
    <DoneForm {...props} />
    <EndForm
      {...props}
      action="miss"
      summary="It was missed"
      says="Its fences go back to the plan, and calendars show it as called off."
      label="Why it was missed"
      button="Note that it was missed"
    />
    <EndForm
      {...props}
      action="cancel"
      summary="Cancel it"
      says="Its fences go back to the plan, and calendars show it as called off."
      label="Why it is cancelled"
      button="Cancel the visit"
    />
  </section>
);

const said = ({ asked }: FormsState, action: VisitAction): SentForm => (asked?.action === action ? asked.form : {});

/** The box that takes what speaks against it; there only where something was asked about. */
const SureField: FC<FormsState & { readonly action: VisitAction }> = ({ asked, action }) =>
  asked?.action === action && asked.mayBeSure ? (
    <div class="tick">
      <input id={`sure-${action}`} type="checkbox" name="sure" value="yes" />
      <label for={`sure-${action}`}>Take it all the same</label>
    </div>
  ) : null;

const Buttons: FC<{ readonly button: string; readonly look: string }> = ({ button, look }) => (
  <div class="act">
    <button type="submit">{button}</button>
    <button type="submit" name="step" value="look" class="quiet">
      {look}
    </button>
  </div>
);

const ConfirmForm: FC<FormsProps> = (props) => {
  const { visit, today, crewNames, formToken, asked } = props;
  const form = said(props, 'confirm');
  const value = (name: string, otherwise: string): string => (name in form ? textField(form, name) : otherwise);
  const day = visit.firstDay < today ? today : visit.firstDay;
  return (
    <details open={asked?.action === 'confirm'}>
      <summary>
        {visit.state === 'confirmed' ? 'Another day, hour or crew' : 'Confirm it, on this day or another'}
      </summary>
      <p>
        Its day is then promised, and no plan moves it. The owners of its fences are told, with an entry for their
        calendar, unless you hold the matter “visit confirmed” under <a href="/notices#hold">Notices</a>.
      </p>
      <form class="tall" method="post" action={`/visits/${encodeURIComponent(visit.uid)}/confirm`}>
        <TokenField token={formToken} />
        <FormField name="day" label="Day" value={value('day', day)} hint="As 2027-01-05." />
        <FormField
          name="at"
          label="Hour at which the crew comes"
          value={value('at', visit.startsAt ?? '')}
          hint="Local time at the site, as 08:30; empty: some time that day."
          required={false}
        />
        <ChoiceField name="crew" label="Crew" chosen={value('crew', visit.crewRef)} choices={[...crewNames]} />
        <FormField name="because" label="Why, if it is worth keeping" value={value('because', '')} required={false} />
        <SureField {...props} action="confirm" />
        <Buttons button="Confirm the visit" look="Only look what speaks against it" />
      </form>
    </details>
  );
};

const EndForm: FC<
  FormsProps & {
    readonly action: 'miss' | 'cancel';
    readonly summary: string;
    readonly says: string;
    readonly label: string;
    readonly button: string;
  }
> = (props) => {
  const { visit, formToken, asked, action, summary, says, label, button } = props;
  const name = `because`;
  return (
    <details open={asked?.action === action}>
      <summary>{summary}</summary>
      <p>{`${says} Fences: ${listWords(visit.items.map(({ fenceRef }) => fenceRef))}.`}</p>
      <form class="tall" method="post" action={`/visits/${encodeURIComponent(visit.uid)}/${action}`}>
        <TokenField token={formToken} />
        <div class="field">
          <label for={`${action}-because`}>{label}</label>
          <input
            id={`${action}-because`}
            name={name}
            value={textField(said(props, action), name)}
            autocomplete="off"
            required
            maxlength={2000}
          />
        </div>
        <button type="submit">{button}</button>
      </form>
    </details>
  );
};

const DoneForm: FC<FormsProps> = (props) => {
  const { visit, today, formToken, asked } = props;
  const form = said(props, 'done');
  const day = visit.firstDay > today ? today : visit.lastDay < today ? visit.lastDay : today;
  return (
    <details open={asked?.action === 'done'}>
      <summary>It was done</summary>
      <p>
        What was done enters the register as works, built as the works catalogue says, at the posts that the visit
        names; the next sweep takes it in. Fences that are not ticked go back to the plan.
      </p>
      <form class="tall" method="post" action={`/visits/${encodeURIComponent(visit.uid)}/done`}>
        <TokenField token={formToken} />
        <div class="field">
          <label for="done-day">Day on which it was done</label>
          <input
            id="done-day"
            name="day"
            value={'day' in form ? textField(form, 'day') : day}
            autocomplete="off"
            required
          />
        </div>
        {visit.items.map((item, index) => (
          <fieldset>
            <legend>{`Fence ${item.fenceRef}`}</legend>
            <div class="tick">
              <input
                id={`done-${index}`}
                type="checkbox"
                name="done"
                value={item.fenceRef}
                checked={asked?.action === 'done' ? textFields(form, 'done').includes(item.fenceRef) : true}
              />
              <label for={`done-${index}`}>{`Done: ${visitItemText(item)}`}</label>
            </div>
            <DoneText
              {...props}
              field="hours"
              fenceRef={item.fenceRef}
              label={`Hours used at ${item.fenceRef}`}
              hint={`All people together, without the way; ${hoursWords(item.personHours)} were planned.`}
            />
            <DoneText
              {...props}
              field="did"
              fenceRef={item.fenceRef}
              label={`Done otherwise at ${item.fenceRef}`}
              hint="Only where it was not as planned: post-swap: 4, 5 + liner: 4"
            />
            <InspectionField {...props} fenceRef={item.fenceRef} />
          </fieldset>
        ))}
        <div class="field">
          <label for="done-because">A word about it, if it is worth keeping</label>
          <input id="done-because" name="because" value={textField(form, 'because')} autocomplete="off" />
        </div>
        <SureField {...props} action="done" />
        <Buttons button="Enter what was done" look="Only look what would be entered" />
      </form>
    </details>
  );
};

const DoneText: FC<
  FormsProps & {
    readonly field: 'hours' | 'did';
    readonly fenceRef: string;
    readonly label: string;
    readonly hint: string;
  }
> = (props) => {
  const name = fieldOf(props.field, props.fenceRef);
  return (
    <FormField
      name={name}
      label={props.label}
      hint={props.hint}
      value={textField(said(props, 'done'), name)}
      required={false}
    />
  );
};

const InspectionField: FC<FormsProps & { readonly fenceRef: string }> = (props) => {
  const { fenceRef, inspections } = props;
  const name = fieldOf('inspection', fenceRef);
  const own = inspections.filter((inspection) => inspection.fenceRef === fenceRef);
  const needed = props.visit.items.some(
    (item) => item.fenceRef === fenceRef && item.works.some(({ kind }) => kind === 'inspect'),
  );
  if (own.length === 0) {
    return needed ? (
      <p class="hint">
        Its inspection is not in the register yet: enter what was found first, then say here that it was done.
      </p>
    ) : null;
  }
  return (
    <ChoiceField
      name={name}
      label={`Inspection made at ${fenceRef}`}
      chosen={textField(said(props, 'done'), name)}
      choices={[
        ['', 'none'],
        ...own.slice(0, 8).map(({ ref, day, inspector }) => [ref, `${day}, ${inspector} (${ref})`] as const),
      ]}
    />
  );
};
