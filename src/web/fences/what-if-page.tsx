import { raw } from 'hono/html';
import type { FC } from 'hono/jsx';
import type { ChartLanguage } from '../../drawing/chart-words.ts';
import { heldText, isNextToNothing } from '../../drawing/held-text.ts';
import { figureText, onceInWords, percentText } from '../../drawing/quantity-text.ts';
import { standingName } from '../../drawing/report/record-names.ts';
import { worksReasonInSpanish } from '../../drawing/spanish/works-reasons.ts';
import { type DisplayUnits, speedText } from '../../drawing/speed-text.ts';
import { drawWhatIfLines } from '../../drawing/what-if-lines.ts';
import { whatIfSeasonsTable, whatIfTable } from '../../drawing/what-if-table.ts';
import { lifeSentence, optionLines, whatIfNotes, worksNameIn } from '../../drawing/what-if-words.ts';
import type { WorksKind } from '../../forecast/works.ts';
import type { PostChoice } from '../../season/post-choice.ts';
import type { Prospect, WhatIf, WhatIfRow } from '../../season/what-if.ts';
import type { RecipePart } from '../../season/works-options.ts';
import type { WorksCompared } from '../../service/fence-ahead.ts';
import { CHART_SIZES } from '../frame/chart-sizes.ts';
import type { PageFrame } from '../frame/page-frame.ts';
import { PageShell } from '../frame/page-shell.tsx';
import { ScrollFrame } from '../frame/scroll-frame.tsx';
import { CHOICES, WORKS_KINDS } from './what-if-choice.ts';
import { WHAT_IF_PAGE_WORDS, type WhatIfPageWords } from './what-if-page-words.ts';

/** Properties of the page that compares works at one fence with doing nothing. */
export interface WhatIfPageProps {
  readonly fenceRef: string;
  readonly siteName: string;
  readonly units: DisplayUnits;
  readonly choice: readonly RecipePart[];
  readonly compared: WorksCompared;
  /** Everything that could be done; null where it was not asked for. */
  readonly everything: WhatIf | null;
  readonly language: ChartLanguage;
  readonly frame: PageFrame;
}

const money = (amount: number): string => figureText(Math.round(amount), 15);

/** The page that compares works at one fence with doing nothing. */
export const WhatIfPage: FC<WhatIfPageProps> = (props) => {
  const { fenceRef, siteName, units, compared, everything, choice, language, frame } = props;
  const words = WHAT_IF_PAGE_WORDS[language];
  const path = `/fences/${encodeURIComponent(fenceRef)}`;
  return (
    <PageShell title={words.title(fenceRef)} section="fences" frame={frame} cautions={true} language={language}>
      <p class="back">
        <a href={path}>{words.fence(fenceRef)}</a>
      </p>
      <h1>{words.heading(fenceRef)}</h1>
      <p class="where">{siteName}</p>
      <p class="lead">{leadSentence(compared, units, language)}</p>
      <ChoiceForm path={`${path}/what-if`} choice={choice} language={language} />
      {compared.refused && (
        <p class="alert">
          {refusedText(compared.refused, language)} {words.refusedWayOut}
        </p>
      )}
      {compared.chosen && <Compared {...props} chosen={compared.chosen} />}
      {everything ? (
        <Everything everything={everything} currency={frame.office.currency} units={units} language={language} />
      ) : (
        <p>
          <a href={`${path}/what-if?all=yes`}>{words.compareAll}</a>
        </p>
      )}
      <p class="muted">
        {lifeSentence(compared.lifeGust, units, language)} {words.note(compared.day)}
      </p>
    </PageShell>
  );
};

/** Why works make no sense at the fence. */
function refusedText({ kind, reason }: NonNullable<WorksCompared['refused']>, language: ChartLanguage): string {
  const why = language === 'es' ? worksReasonInSpanish(reason) : reason;
  return WHAT_IF_PAGE_WORDS[language].refused(worksNameIn(kind, language), why);
}

function leadSentence(
  { nothing, chosen, designGustMps }: WorksCompared,
  units: DisplayUnits,
  language: ChartLanguage,
): string {
  const words = WHAT_IF_PAGE_WORDS[language];
  const now = nothing.seasons[0]!;
  const before = words.before(
    now.label,
    isNextToNothing(now.snapMps, units) ? null : speedText(now.snapMps, units),
    speedText(designGustMps, units),
  );
  if (!chosen) return `${before} ${words.choose}`;
  const works = chosen.option.parts.map(({ kind }) => worksNameIn(kind, language));
  return `${before} ${words.after(works, heldText(chosen.seasons[0]!.snapMps, units, language))}`;
}

const ChoiceForm: FC<{
  readonly path: string;
  readonly choice: readonly RecipePart[];
  readonly language: ChartLanguage;
}> = ({ path, choice, language }) => {
  const words = WHAT_IF_PAGE_WORDS[language];
  const atOf = (kind: WorksKind): PostChoice | null => choice.find((part) => part.kind === kind)?.at ?? null;
  return (
    <form class="what-if" method="get" action={path}>
      <fieldset>
        <legend>{words.legend}</legend>
        <div class="works-choice">
          {WORKS_KINDS.map((kind) => (
            <div class="works-kind">
              <div class="tick">
                <input id={`do-${kind}`} name="do" type="checkbox" value={kind} checked={atOf(kind) !== null} />
                <label for={`do-${kind}`}>{worksNameIn(kind, language)}</label>
              </div>
              {CHOICES[kind].length > 1 && (
                <select name={`at-${kind}`} aria-label={words.postsFor(worksNameIn(kind, language))}>
                  {CHOICES[kind].map((at) => (
                    <option value={at} selected={at === atOf(kind)}>
                      {words.at[at]}
                    </option>
                  ))}
                </select>
              )}
            </div>
          ))}
        </div>
      </fieldset>
      <button type="submit">{words.compare}</button>
    </form>
  );
};

/** What is held side by side, one row each. */
function rowsOf(
  nothing: Prospect,
  after: WhatIfRow,
  {
    units,
    language,
    currency,
  }: { readonly units: DisplayUnits; readonly language: ChartLanguage; readonly currency: string },
): readonly (readonly [string, string, string])[] {
  const words: WhatIfPageWords = WHAT_IF_PAGE_WORDS[language];
  const { rows } = words;
  const first = (each: Prospect) => each.seasons[0]!;
  const once = (years: number | null): string => (years === null ? words.notKnown : onceInWords(years, language));
  const chance = (share: number | null): string => (share === null ? words.notKnown : percentText(share, language));
  const life = ({ life: { years, atLeast } }: Prospect): string =>
    atLeast ? words.over(Math.floor(years)) : words.years(years.toFixed(1));
  const ends = (each: Prospect): string => {
    const speed = first(each).endsSnapMps;
    return speed === null ? '–' : speedText(speed, units);
  };
  const endsStanding = ({ endsStanding: standing }: Prospect): string =>
    standing === null ? '–' : standingName(standing, language);
  const inCurrency = (amount: number): string => `${money(amount)} ${currency}`;
  const both = (of: (each: Prospect) => string): readonly [string, string] => [of(nothing), of(after)];
  return [
    [rows.standing, ...both((each) => standingName(each.standing, language))],
    [rows.ends, ...both(endsStanding)],
    [rows.snap, ...both((each) => heldText(first(each).snapMps, units, language))],
    [rows.snapEnds, ...both(ends)],
    [rows.lean, ...both((each) => speedText(first(each).leanMps, units))],
    [rows.short, ...both((each) => each.shortSeason ?? words.notWithin)],
    [rows.once, ...both((each) => once(each.onceInYears))],
    [rows.snaps, ...both((each) => chance(each.pSnap))],
    [rows.postsShort, ...both((each) => each.expectedPostsShort.toFixed(1))],
    [rows.life, ...both(life)],
    [rows.price, '–', inCurrency(after.cost.price)],
    [rows.hours, '–', String(Number(after.cost.personHours.toFixed(1)))],
    [rows.year, '–', after.costPerYear === null ? '–' : inCurrency(after.costPerYear)],
  ];
}

const Compared: FC<WhatIfPageProps & { readonly chosen: WhatIfRow }> = ({
  compared,
  chosen,
  units,
  language,
  frame,
}) => {
  const words = WHAT_IF_PAGE_WORDS[language];
  const { nothing, designGustMps } = compared;
  return (
    <>
      <h2 id="side-by-side">{words.sideBySide}</h2>
      <p>
        {words.costs(
          optionLines(chosen.option, language).join(' '),
          `${money(chosen.cost.price)} ${frame.office.currency}`,
          Number(chosen.cost.personHours.toFixed(1)),
        )}
      </p>
      <ScrollFrame label={words.nowAndAfter}>
        <table class="stacked side-by-side">
          <caption class="visually-hidden">{words.tableCaption}</caption>
          <thead>
            <tr>
              <th scope="col">{words.season(nothing.seasons[0]!.label)}</th>
              <th scope="col">{words.asItIs}</th>
              <th scope="col">{words.afterWorks}</th>
            </tr>
          </thead>
          <tbody>
            {rowsOf(nothing, chosen, { units, language, currency: frame.office.currency }).map(
              ([what, before, after]) => (
                <tr>
                  <th scope="row">{what}</th>
                  <td data-label={words.asItIs}>{before}</td>
                  <td data-label={words.afterWorks}>{after}</td>
                </tr>
              ),
            )}
          </tbody>
        </table>
      </ScrollFrame>
      <figure class="chart">
        {CHART_SIZES.map(({ name, widthPx }) => (
          <div class={`chart-${name}`}>
            {raw(
              drawWhatIfLines(
                { nothing, after: chosen, designGustMps },
                { units, language, widthPx, heightPx: 340, idPrefix: `what-if-${name}` },
              ),
            )}
          </div>
        ))}
        <figcaption>{words.chart}</figcaption>
      </figure>
    </>
  );
};

const Everything: FC<{
  readonly everything: WhatIf;
  readonly currency: string;
  readonly units: DisplayUnits;
  readonly language: ChartLanguage;
}> = ({ everything, currency, units, language }) => {
  const words = WHAT_IF_PAGE_WORDS[language];
  const tables = [
    { name: words.everything, table: whatIfTable(everything, units, language) },
    { name: words.seasonsTable, table: whatIfSeasonsTable(everything, units, language) },
  ];
  return (
    <>
      <h2 id="everything">{words.everything}</h2>
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
      <p class="muted">{words.columns(currency)}</p>
      <ul class="plain">
        {whatIfNotes(everything, language).map((note) => (
          <li>{note}</li>
        ))}
        {everything.leftOut.map((leftOut) => (
          <li>{refusedText(leftOut, language)}</li>
        ))}
      </ul>
    </>
  );
};
