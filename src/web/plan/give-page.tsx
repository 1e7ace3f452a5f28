import type { FC } from 'hono/jsx';
import { dayWords, hoursWords, listWords, sentenceCase } from '../../drawing/day-words.ts';
import { wholeMoney } from '../../drawing/plan-table.ts';
import { visitItemText } from '../../drawing/visit-words.ts';
import type { WeekBar } from '../../season/plan/plan-problem.ts';
import type { WeekChoice } from '../../season/plan/week-choices.ts';
import type { Visit } from '../../season/visit/visit.ts';
import type { GivenWeek } from '../../service/give-week.ts';
import type { WeekChoices } from '../../service/week-choices-of.ts';
import type { CalendarDay } from '../../units/calendar-day.ts';
import { FormField, TokenField } from '../frame/form-field.tsx';
import { givePath } from '../frame/give-path.ts';
import type { PageFrame } from '../frame/page-frame.ts';
import { PageShell } from '../frame/page-shell.tsx';
import { ScrollFrame } from '../frame/scroll-frame.tsx';

const BARS: Readonly<Record<WeekBar, string>> = {
  'locate-notice': 'too soon to have buried lines marked',
  'cure-time': 'a footing would not have its strength when the season opens',
  'frozen-ground': 'the ground counts as frozen',
  closed: 'the season has opened by then',
};

interface GiveNames {
  readonly siteNames: ReadonlyMap<string, string>;
  readonly crewNames: ReadonlyMap<string, string>;
  readonly today: CalendarDay;
  readonly currency: string;
  readonly frame: PageFrame;
}

/** What a choice costs, in a few words: `costs 41`, `saves 12`, `costs nothing`. */
function costWords(amount: number, currency: string): string {
  const whole = Math.round(amount);
  if (whole === 0) return 'costs nothing';
  return `${whole > 0 ? 'costs' : 'saves'} ${wholeMoney(Math.abs(whole))} ${currency}`;
}

/** What the cost is made of. */
function partsWords({ worthLost, moreTravelCost }: WeekChoice): string {
  const worth = Math.round(worthLost);
  const way = Math.round(moreTravelCost);
  const parts = [
    ...(worth === 0
      ? []
      : [`${wholeMoney(Math.abs(worth))} ${worth > 0 ? 'more' : 'less'} in expected loss and waiting`]),
    ...(way === 0 ? [] : [`${wholeMoney(Math.abs(way))} ${way > 0 ? 'more' : 'less'} for ways`]),
  ];
  return listWords(parts);
}

/** The page that shows every week to which a fence can be given, each with what it costs. */
export const GivePage: FC<GiveNames & { readonly found: WeekChoices }> = (props) => {
  const { found, siteNames, crewNames, today, currency, frame } = props;
  const { visit, item, choices } = found;
  const all = [...new Set(choices.map(({ crewRef }) => crewRef))];
  // a crew that has not the hours in any week, for it is too far away or too small, would fill a column with nothing else
  const crews = all.filter((crew) =>
    choices.some((each) => each.crewRef === crew && (each.isNow || each.hoursLeft >= 0)),
  );
  const never = all.filter((crew) => !crews.includes(crew)).map((crew) => crewNames.get(crew) ?? crew);
  const weeks = [...new Set(choices.map(({ week }) => week))];
  const open = choices.filter((choice) => isOpen(choice));
  const best = open.reduce<WeekChoice | null>((low, each) => (low === null || each.cost < low.cost ? each : low), null);
  return (
    <PageShell title={`Give fence ${item.fenceRef} a week`} section="plan" frame={frame} cautions={true}>
      <p class="back">
        <a href={`/visits/${encodeURIComponent(visit.uid)}`}>Back to its visit</a>
      </p>
      <h1>{`Give fence ${item.fenceRef} a week`}</h1>
      <p class="where">
        <a href={`/fences/${encodeURIComponent(item.fenceRef)}`}>{item.fenceRef}</a>
        {` at ${siteNames.get(visit.siteRef) ?? visit.siteRef}: ${visitItemText(item)}; ${hoursWords(item.personHours)} hours. Now ${dayWords(visit.firstDay, today)}, ${crewNames.get(visit.crewRef) ?? visit.crewRef}.`}
      </p>
      <p class="lead">
        {best === null
          ? 'No other week has the hours and is allowed by the rules of these works.'
          : `${open.length === 1 ? 'One other week can take it' : `${open.length} other places can take it`}; the best is the week of ${dayWords(best.week, today)} with ${crewNames.get(best.crewRef) ?? best.crewRef}, which ${costWords(best.cost, currency)}.`}
      </p>
      {best === null && (
        <p>
          <a href="/plan/hours">Hours left</a> shows under each week what takes them, with the hours of every fence:
          give one of those another week first.
        </p>
      )}
      <p>
        Each week says what it costs beside where the fence is now, everything else left where it is, counted as the
        season plan counts: expected loss that the works no longer take away, what each week of waiting takes off, and
        the ways. Rules and hours are those of today.
        {never.length > 0 &&
          ` ${listWords(never)} ${never.length === 1 ? 'lacks' : 'lack'} the hours for it and the way there in every week.`}
      </p>
      <ScrollFrame label="Weeks that could take the fence">
        <table class="stacked">
          <caption>{`What each week costs, in ${currency}`}</caption>
          <thead>
            <tr>
              <th scope="col">Week of</th>
              {crews.map((crew) => (
                <th scope="col">{crewNames.get(crew) ?? crew}</th>
              ))}
            </tr>
          </thead>
          <tbody>
            {weeks.map((week) => {
              const ofWeek = choices.filter((each) => each.week === week);
              return (
                <tr class={ofWeek.some(({ isNow }) => isNow) ? 'now' : undefined}>
                  <th scope="row" class="when">
                    {dayWords(week, today)}
                  </th>
                  {crews.map((crew) => (
                    <td data-label={crewNames.get(crew) ?? crew}>
                      <Choice choice={ofWeek.find(({ crewRef }) => crewRef === crew)} {...props} />
                    </td>
                  ))}
                </tr>
              );
            })}
          </tbody>
        </table>
      </ScrollFrame>
    </PageShell>
  );
};

const isOpen = ({ isNow, bars, hoursLeft }: WeekChoice): boolean => !isNow && bars.length === 0 && hoursLeft >= 0;

const Choice: FC<GiveNames & { readonly found: WeekChoices; readonly choice: WeekChoice | undefined }> = ({
  choice,
  found,
  currency,
}) => {
  if (!choice) return <span class="muted">does not go there</span>;
  if (choice.isNow) return <b>it is here now</b>;
  if (choice.bars.length > 0) return <span class="muted">{listWords(choice.bars.map((bar) => BARS[bar]))}</span>;
  if (choice.hoursLeft < 0) return <span class="muted">{`${hoursWords(-choice.hoursLeft)} hours are missing`}</span>;
  return (
    <>
      <a href={givePath(found.visit.uid, found.item.fenceRef, choice)}>
        {sentenceCase(costWords(choice.cost, currency))}
      </a>
      <span class="small">{`${[partsWords(choice), `leaves ${hoursWords(choice.hoursLeft)} h`].filter((text) => text !== '').join('; ')}`}</span>
    </>
  );
};

const dayAndCrew = (visit: Visit, { crewNames, today }: GiveNames): string =>
  `${dayWords(visit.firstDay, today)}${visit.lastDay === visit.firstDay ? '' : ` to ${dayWords(visit.lastDay, today)}`}, ${crewNames.get(visit.crewRef) ?? visit.crewRef}`;

/** The page that says what giving the week would make of the visits, and asks. */
export const GivenPreview: FC<
  GiveNames & { readonly uid: string; readonly fenceRef: string; readonly given: GivenWeek; readonly formToken: string }
> = (props) => {
  const { uid, fenceRef, given, currency, frame, today, formToken } = props;
  const { choice, visit, rest } = given;
  const parts = partsWords(choice);
  return (
    <PageShell title={`Give fence ${fenceRef} a week`} section="plan" frame={frame} cautions={false}>
      <p class="back">
        <a href={givePath(uid, fenceRef)}>Other weeks</a>
      </p>
      <h1>{`Give fence ${fenceRef} the week of ${dayWords(choice.week, today)}?`}</h1>
      <p class="lead">
        {`It ${costWords(choice.cost, currency)}${parts === '' ? '' : `: ${parts}`}. The crew has ${hoursWords(choice.hoursLeft)} ${hoursWords(choice.hoursLeft) === '1' ? 'hour' : 'hours'} left that week.`}
      </p>
      <ul class="plain">
        <li>
          {rest
            ? `Fence ${fenceRef} gets a visit of its own: ${dayAndCrew(visit, props)}.`
            : `The visit moves to ${dayAndCrew(visit, props)}.`}
        </li>
        {rest && (
          <li>{`The other fences of the visit stay: ${listWords(rest.items.map((item) => item.fenceRef))}, ${dayAndCrew(rest, props)}.`}</li>
        )}
        <li>
          No plan moves it from then on, until you leave it to the plans again. Its day is not promised to the owner.
        </li>
      </ul>
      <form class="tall" method="post" action="/plan/give">
        <TokenField token={formToken} />
        <input type="hidden" name="visit" value={uid} />
        <input type="hidden" name="fence" value={fenceRef} />
        <input type="hidden" name="week" value={choice.week} />
        <input type="hidden" name="crew" value={choice.crewRef} />
        <FormField name="because" label="Why, if it is worth keeping" required={false} />
        <button type="submit">Give it this week</button>
      </form>
    </PageShell>
  );
};
