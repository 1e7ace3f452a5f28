import type { FC } from 'hono/jsx';
import { countWords, dayWords, listWords, sentenceCase } from '../../drawing/day-words.ts';
import type { StoredPlan } from '../../register/plan-store.ts';
import type { AcceptedVisits } from '../../season/visit/accept-plan.ts';
import { fenceMoves, type VisitPlace } from '../../season/visit/fence-moves.ts';
import type { Visit } from '../../season/visit/visit.ts';
import { mondayOf } from '../../season/visit/week-of-day.ts';
import type { CalendarDay } from '../../units/calendar-day.ts';
import { FormField, TokenField } from '../frame/form-field.tsx';
import type { PageFrame } from '../frame/page-frame.ts';
import { PageShell } from '../frame/page-shell.tsx';
import { daysWords } from '../visits/visits-page.tsx';

/** Properties of the page that asks before a plan is accepted. */
export interface AcceptPageProps {
  readonly plan: StoredPlan;
  readonly changes: AcceptedVisits;
  readonly siteNames: ReadonlyMap<string, string>;
  readonly crewNames: ReadonlyMap<string, string>;
  readonly today: CalendarDay;
  /** Enrolled owners of the fences of visits that are new, move or are cancelled. */
  readonly ownersToTell: number;
  readonly formToken: string;
  readonly frame: PageFrame;
}

/** The page that says what accepting a plan would change, and asks. */
export const AcceptPage: FC<AcceptPageProps> = (props) => {
  const { plan, changes, siteNames, today, ownersToTell, formToken, frame } = props;
  const { kept, moved, created, cancelled, withoutDays } = changes;
  const named = (visits: readonly Visit[]): string =>
    `${listWords(
      visits
        .slice(0, 8)
        .map(({ siteRef, firstDay }) => `${siteNames.get(siteRef) ?? siteRef} on ${dayWords(firstDay, today)}`),
    )}${visits.length > 8 ? ' and more' : ''}`;
  const line = (visits: readonly Visit[], one: string, several: string) =>
    visits.length > 0 && <li>{`${sentenceCase(countWords(visits.length, one, several))}: ${named(visits)}.`}</li>;
  return (
    <PageShell title={`Accept plan ${plan.number}`} section="plan" frame={frame} cautions={false}>
      <p class="back">
        <a href={`/plan/${plan.number}`}>{`Back to plan ${plan.number}`}</a>
      </p>
      <h1>{`Accept plan ${plan.number}?`}</h1>
      <p class="lead">
        Its visits become proposed ones, laid out on days.{' '}
        {ownersToTell === 0
          ? 'No owner is told anything by that.'
          : `${sentenceCase(countWords(ownersToTell, 'owner'))} ${ownersToTell === 1 ? 'is' : 'are'} told of what changes for them, an association of all of it in one message.`}
      </p>
      {ownersToTell > 0 && (
        <p>
          To read the messages before they leave, hold the matters “visit proposed” and “plan for the board” first,
          under <a href="/notices#hold">Notices</a>. Whoever's first notices still wait there hears of visits only after
          them.
        </p>
      )}
      <ul class="plain">
        {line(created, 'visit is new', 'visits are new')}
        {line(cancelled, 'visit is cancelled', 'visits are cancelled')}
        {kept.length > 0 && (
          <li>{`${sentenceCase(countWords(kept.length, 'visit stays', 'visits stay'))} as ${kept.length === 1 ? 'it is' : 'they are'}.`}</li>
        )}
        {withoutDays.map(({ week, siteRef }) => (
          <li>{`No days in the week of ${dayWords(week, today)} hold the visit to ${siteNames.get(siteRef) ?? siteRef}: it is not proposed, and its fences come back in the next plan.`}</li>
        ))}
        {moved.length > 0 && (
          <li>{`${sentenceCase(countWords(moved.length, 'visit moves or changes', 'visits move or change'))}, as below.`}</li>
        )}
        {created.length + moved.length + cancelled.length + kept.length === 0 && <li>It proposes no visit.</li>}
      </ul>
      <Moves {...props} />
      <p>Visits that you confirmed or gave a week are not touched.</p>
      <form class="tall" method="post" action={`/plan/${plan.number}/accept`}>
        <TokenField token={formToken} />
        <FormField name="because" label="Why, if it is worth keeping" required={false} />
        <button type="submit">{`Accept plan ${plan.number}`}</button>
      </form>
    </PageShell>
  );
};

/** Fences that go elsewhere: from the old days and crew to the new, every one named. */
const Moves: FC<AcceptPageProps> = ({ changes, siteNames, crewNames, today }) => {
  const moves = fenceMoves(changes);
  if (moves.length === 0) return null;
  const crew = ({ crewRef }: VisitPlace): string => crewNames.get(crewRef) ?? crewRef;
  const place = (at: VisitPlace): string =>
    `the week of ${dayWords(mondayOf(at.firstDay), today)} (${daysWords({ ...at, startsAt: null }, today)}, ${crew(at)})`;
  return (
    <section>
      <h2 id="moves">From which week to which</h2>
      <ul class="plain">
        {moves.map(({ siteRef, fenceRefs, from, to }) => (
          <li>
            {`${siteNames.get(siteRef) ?? siteRef}, `}
            {fenceRefs.map((ref, index) => (
              <>
                {index > 0 && ', '}
                <a href={`/fences/${encodeURIComponent(ref)}`}>{ref}</a>
              </>
            ))}
            {isSame(from, to)
              ? `: stays in ${place(to)}; what is done changes.`
              : `: from ${place(from)} to ${place(to)}.`}
          </li>
        ))}
      </ul>
    </section>
  );
};

const isSame = (a: VisitPlace, b: VisitPlace): boolean =>
  a.crewRef === b.crewRef && a.firstDay === b.firstDay && a.lastDay === b.lastDay;
