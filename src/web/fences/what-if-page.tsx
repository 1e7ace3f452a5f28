import { raw } from 'hono/html';
import type { FC } from 'hono/jsx';
import { heldText, isNextToNothing, NOTHING_LEFT } from '../../drawing/held-text.ts';
import { figureText, onceInWords, percentText } from '../../drawing/quantity-text.ts';
import { type DisplayUnits, speedText } from '../../drawing/speed-text.ts';
import { drawWhatIfLines } from '../../drawing/what-if-lines.ts';
import { whatIfSeasonsTable, whatIfTable } from '../../drawing/what-if-table.ts';
import { lifeSentence, optionLines, whatIfNotes, worksName } from '../../drawing/what-if-words.ts';
import type { WorksKind } from '../../forecast/works.ts';
import type { PostChoice } from '../../season/post-choice.ts';
import type { Prospect, WhatIf, WhatIfRow } from '../../season/what-if.ts';
import type { RecipePart } from '../../season/works-options.ts';
import type { WorksCompared } from '../../service/fence-ahead.ts';
import { CHART_SIZES } from '../frame/chart-sizes.ts';
import type { PageFrame } from '../frame/page-frame.ts';
import { PageShell } from '../frame/page-shell.tsx';
import { ScrollFrame } from '../frame/scroll-frame.tsx';
import { AT_WORDS, CHOICES, WORKS_KINDS } from './what-if-choice.ts';

/** Properties of the page that compares works at one fence with doing nothing. */
export interface WhatIfPageProps {
  readonly fenceRef: string;
  readonly siteName: string;
  readonly units: DisplayUnits;
  readonly choice: readonly RecipePart[];
  readonly compared: WorksCompared;
  /** Everything that could be done; null where it was not asked for. */
  readonly everything: WhatIf | null;
  readonly frame: PageFrame;
}

const money = (amount: number): string => figureText(Math.round(amount), 15);

/** The page that compares works at one fence with doing nothing. */
export const WhatIfPage: FC<WhatIfPageProps> = (props) => {
  const { fenceRef, siteName, units, compared, everything, choice, frame } = props;
  const path = `/fences/${encodeURIComponent(fenceRef)}`;
  return (
    <PageShell title={`What if, fence ${fenceRef}`} section="fences" frame={frame} cautions={true}>
      <p class="back">
        <a href={path}>Fence {fenceRef}</a>
      </p>
      <h1>What if something were done to fence {fenceRef}?</h1>
      <p class="where">{siteName}</p>
      <p class="lead">{leadSentence(compared, units)}</p>
      <ChoiceForm path={`${path}/what-if`} choice={choice} />
      {compared.refused && (
        <p class="alert">
          {`No ${worksName(compared.refused.kind)}: ${compared.refused.reason}. Choose other works or other posts.`}
        </p>
      )}
      {compared.chosen && <Compared {...props} chosen={compared.chosen} />}
      {everything ? (
        <Everything everything={everything} units={units} />
      ) : (
        <p>
          <a href={`${path}/what-if?all=yes`}>Compare everything that could be done to it</a>
        </p>
      )}
      <p class="muted">
        {lifeSentence(compared.lifeGust, units)} Works are thought to be done on {compared.day}. Prices before tax, from
        the works catalogue: where the office has not set its own, they are orders of magnitude.
      </p>
    </PageShell>
  );
};

function leadSentence({ nothing, chosen, designGustMps }: WorksCompared, units: DisplayUnits): string {
  const now = nothing.seasons[0]!;
  const before = `In season ${now.label}, as it is, ${isNextToNothing(now.snapMps, units) ? NOTHING_LEFT.en.replace(/^N/, 'n') : `it breaks in a gust of ${speedText(now.snapMps, units)}`}; its design gust is ${speedText(designGustMps, units)}.`;
  if (!chosen) return `${before} Choose what might be done, and see both side by side.`;
  return `${before} After the ${chosen.option.parts.map(({ kind }) => worksName(kind)).join(' and the ')} it would break at ${heldText(chosen.seasons[0]!.snapMps, units, 'en')}.`;
}

const ChoiceForm: FC<{ readonly path: string; readonly choice: readonly RecipePart[] }> = ({ path, choice }) => {
  const atOf = (kind: WorksKind): PostChoice | null => choice.find((part) => part.kind === kind)?.at ?? null;
  return (
    <form class="what-if" method="get" action={path}>
      <fieldset>
        <legend>Works from the catalogue, one or more</legend>
        <div class="works-choice">
          {WORKS_KINDS.map((kind) => (
            <div class="works-kind">
              <div class="tick">
                <input id={`do-${kind}`} name="do" type="checkbox" value={kind} checked={atOf(kind) !== null} />
                <label for={`do-${kind}`}>{worksName(kind)}</label>
              </div>
              {CHOICES[kind].length > 1 && (
                <select name={`at-${kind}`} aria-label={`Posts for the ${worksName(kind)}`}>
                  {CHOICES[kind].map((at) => (
                    <option value={at} selected={at === atOf(kind)}>
                      {AT_WORDS[at]}
                    </option>
                  ))}
                </select>
              )}
            </div>
          ))}
        </div>
      </fieldset>
      <button type="submit">Compare with doing nothing</button>
    </form>
  );
};

/** What is held side by side, one row each. */
function rowsOf(
  nothing: Prospect,
  after: WhatIfRow,
  units: DisplayUnits,
): readonly (readonly [string, string, string])[] {
  const first = (each: Prospect) => each.seasons[0]!;
  const once = (years: number | null): string => (years === null ? 'not known' : onceInWords(years, 'en'));
  const chance = (share: number | null): string => (share === null ? 'not known' : percentText(share, 'en'));
  const life = ({ life: { years, atLeast } }: Prospect): string =>
    atLeast ? `over ${Math.floor(years)} years` : `${years.toFixed(1)} years`;
  const ends = (each: Prospect): string => {
    const speed = first(each).endsSnapMps;
    return speed === null ? '–' : speedText(speed, units);
  };
  const both = (of: (each: Prospect) => string): readonly [string, string] => [of(nothing), of(after)];
  return [
    ['Standing', ...both((each) => each.standing)],
    ['Ends', ...both((each) => each.endsStanding ?? '–')],
    ['Snap speed', ...both((each) => heldText(first(each).snapMps, units, 'en'))],
    ['Snap speed, ends', ...both(ends)],
    ['Lean speed', ...both((each) => speedText(first(each).leanMps, units))],
    ['Short season', ...both((each) => each.shortSeason ?? 'not within 30')],
    ['A gust that breaks it comes', ...both((each) => once(each.onceInYears))],
    ['Snaps in this season', ...both((each) => chance(each.pSnap))],
    ['Posts expected short', ...both((each) => each.expectedPostsShort.toFixed(1))],
    ['Life left', ...both(life)],
    ['Price', '–', money(after.cost.price)],
    ['Hours of one person', '–', String(Number(after.cost.personHours.toFixed(1)))],
    ['A year of life gained costs', '–', after.costPerYear === null ? '–' : money(after.costPerYear)],
  ];
}

const Compared: FC<WhatIfPageProps & { readonly chosen: WhatIfRow }> = ({ compared, chosen, units }) => {
  const { nothing, designGustMps } = compared;
  return (
    <>
      <h2 id="side-by-side">Side by side</h2>
      <p>{`${optionLines(chosen.option).join(' ')}: ${money(chosen.cost.price)} for ${Number(chosen.cost.personHours.toFixed(1))} hours of work.`}</p>
      <ScrollFrame label="Now and after">
        <table class="stacked side-by-side">
          <caption class="visually-hidden">The fence as it is and after the works</caption>
          <thead>
            <tr>
              <th scope="col">{`Season ${nothing.seasons[0]!.label}`}</th>
              <th scope="col">As it is</th>
              <th scope="col">After the works</th>
            </tr>
          </thead>
          <tbody>
            {rowsOf(nothing, chosen, units).map(([what, before, after]) => (
              <tr>
                <th scope="row">{what}</th>
                <td data-label="As it is">{before}</td>
                <td data-label="After the works">{after}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </ScrollFrame>
      <figure class="chart">
        {CHART_SIZES.map(({ name, widthPx }) => (
          <div class={`chart-${name}`}>
            {raw(
              drawWhatIfLines(
                { nothing, after: chosen, designGustMps },
                { units, widthPx, heightPx: 340, idPrefix: `what-if-${name}` },
              ),
            )}
          </div>
        ))}
        <figcaption>Middle values, season by season. Thin: as it is. Heavy: after the works.</figcaption>
      </figure>
    </>
  );
};

const Everything: FC<{ readonly everything: WhatIf; readonly units: DisplayUnits }> = ({ everything, units }) => {
  const tables = [
    { name: 'Everything that could be done', table: whatIfTable(everything, units) },
    { name: 'Snap and lean speed season by season', table: whatIfSeasonsTable(everything, units) },
  ];
  return (
    <>
      <h2 id="everything">Everything that could be done</h2>
      {tables.map(({ name, table }) => (
        <ScrollFrame label={name}>
          <table class="everything">
            <caption>{name}</caption>
            <thead>
              <tr>
                {table.columns.map(({ heading, unit }, index) => (
                  <th scope="col" class={index === 1 ? undefined : 'figure'}>
                    {heading}
                    {unit !== '' && <span class="unit">{unit}</span>}
                  </th>
                ))}
              </tr>
            </thead>
            <tbody>
              {table.rows.map((row, index) => (
                <tr>
                  <td class="figure">{index}</td>
                  <th scope="row">{row.name.join(' ')}</th>
                  {row.cells.map((cell) => (
                    <td class="figure">{cell}</td>
                  ))}
                </tr>
              ))}
            </tbody>
          </table>
        </ScrollFrame>
      ))}
      <ul class="plain">
        {whatIfNotes(everything).map((note) => (
          <li>{note}</li>
        ))}
        {everything.leftOut.map(({ kind, reason }) => (
          <li>{`No ${worksName(kind)}: ${reason}.`}</li>
        ))}
      </ul>
    </>
  );
};
