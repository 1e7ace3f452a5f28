import { raw } from 'hono/html';
import type { FC } from 'hono/jsx';
import { MEAN_BESIDE_RANGE } from '../../drawing/mean-beside-range.ts';
import {
  planDrawing,
  planFencesTable,
  planGround,
  planSentences,
  planYearsTable,
} from '../../drawing/report/plan-report.ts';
import { partHtml } from '../../drawing/report/report-html.ts';
import { refusalInSpanish } from '../../drawing/spanish/refusals.ts';
import type { PageFrame } from '../frame/page-frame.ts';
import type { PageLanguage } from '../frame/page-language.ts';
import { PageShell } from '../frame/page-shell.tsx';
import { ScrollFrame } from '../frame/scroll-frame.tsx';
import type { BoardSite } from './board-sites.ts';
import { BOARD_WORDS, type BoardWords } from './board-words.ts';

interface BoardProps {
  readonly sites: readonly BoardSite[];
  readonly years: number;
  readonly language: PageLanguage;
  readonly frame: PageFrame;
}

const YEARS = [10, 15, 20, 25, 30] as const;

const sumCounts = (sites: readonly BoardSite[]): BoardSite['counts'] =>
  sites.reduce(
    (sum, { counts }) => ({
      clear: sum.clear + counts.clear,
      closing: sum.closing + counts.closing,
      short: sum.short + counts.short,
      'short from new': sum['short from new'] + counts['short from new'],
    }),
    { clear: 0, closing: 0, short: 0, 'short from new': 0 },
  );

/** The first season in which any of the fences goes short, over all sites. */
function firstShort(sites: readonly BoardSite[]): BoardSite['next'] {
  const all = sites.flatMap(({ next }) => (next ? [next] : []));
  const season = all.map((each) => each.season).sort()[0];
  if (season === undefined) return null;
  return { season, refs: all.filter((each) => each.season === season).flatMap(({ refs }) => refs) };
}

/** The page on which a board begins: how its fences stand, what they will cost, what to print for the meeting. */
export const BoardPage: FC<BoardProps> = ({ sites, years, language, frame }) => {
  const words = BOARD_WORDS[language];
  const total = sites.reduce((sum, site) => sum + site.total, 0);
  const unswept = sites.reduce((sum, site) => sum + site.unswept, 0);
  const next = firstShort(sites);
  return (
    <PageShell title={words.title} section="board" frame={frame} cautions={total > 0} language={language}>
      <h1>{words.title}</h1>
      {total === 0 ? (
        <p class="lead">{words.none}</p>
      ) : (
        <>
          <p class="lead">{words.lead(total, unswept, sumCounts(sites))}</p>
          {next && <p>{words.next(next.season, next.refs)}</p>}
          <SitesTable sites={sites} words={words} />
          <p>
            <a href="/fences">{words.fences}</a>. {words.readOnly}
          </p>
          <form class="narrow" method="get" action="/board">
            <div class="field">
              <label for="years">{words.years}</label>
              <select id="years" name="years">
                {YEARS.map((each) => (
                  <option value={String(each)} selected={each === years}>
                    {each}
                  </option>
                ))}
              </select>
            </div>
            <button type="submit">{words.show}</button>
          </form>
          {sites.map((site) => (
            <SitePlan site={site} language={language} words={words} />
          ))}
          <Documents sites={sites} years={years} words={words} />
        </>
      )}
    </PageShell>
  );
};

const SitesTable: FC<{ readonly sites: readonly BoardSite[]; readonly words: BoardWords }> = ({ sites, words }) => {
  const [site, ...others] = words.columns;
  return (
    <>
      <h2>{words.sites}</h2>
      <ScrollFrame label={words.sitesCaption}>
        <table class="board-sites">
          <caption>{words.sitesCaption}</caption>
          <thead>
            <tr>
              <th scope="col">{site}</th>
              {others.map((heading) => (
                <th scope="col" class="figure">
                  {heading}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {sites.map(({ ref, name, total, unswept, counts, next }) => (
              <tr>
                <th scope="row">
                  <a href={`/fences?site=${encodeURIComponent(ref)}`}>{name}</a>
                </th>
                {[total, counts.clear, counts.closing, counts.short + counts['short from new'], unswept].map(
                  (count) => (
                    <td class="figure">{count}</td>
                  ),
                )}
                <td class="figure">{next?.season ?? words.never}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </ScrollFrame>
    </>
  );
};

const SitePlan: FC<{ readonly site: BoardSite; readonly language: PageLanguage; readonly words: BoardWords }> = ({
  site,
  language,
  words,
}) => {
  const { plan, ref, name } = site;
  if (plan?.kind !== 'plan') {
    const reason = plan?.kind === 'refused' ? plan.reason : (plan?.what ?? '');
    const why = language === 'es' ? refusalInSpanish(reason) : reason;
    return (
      <>
        <h2>{words.plan(name)}</h2>
        <p>{plan === null ? words.workedOut : words.noPlan(why)}</p>
      </>
    );
  }
  const { reported } = plan;
  const [first, ...rest] = planSentences(reported, language);
  return (
    <>
      <h2>{words.plan(name)}</h2>
      <p class="lead">{first}</p>
      {rest.map((sentence) => (
        <p>{sentence}</p>
      ))}
      {raw(partHtml(planDrawing(reported, language), `plan-${ref}`))}
      <details>
        <summary>{words.yearsTable}</summary>
        {raw(partHtml(planYearsTable(reported, language), ref))}
        <p class="muted">{MEAN_BESIDE_RANGE[language]}</p>
      </details>
      <details>
        <summary>{words.fencesTable}</summary>
        {raw(partHtml(planFencesTable(reported, language), ref))}
      </details>
      <details>
        <summary>{words.ground}</summary>
        <ul class="plain">
          {planGround(reported, language).map((sentence) => (
            <li>{sentence}</li>
          ))}
        </ul>
      </details>
    </>
  );
};

const Documents: FC<{ readonly sites: readonly BoardSite[]; readonly years: number; readonly words: BoardWords }> = ({
  sites,
  years,
  words,
}) => (
  <>
    <h2>{words.documents}</h2>
    <p>{words.documentsNote}</p>
    <ul class="documents">
      {sites
        .filter(({ plan }) => plan?.kind === 'plan')
        .flatMap(({ ref, name }) => {
          const site = encodeURIComponent(ref);
          const plan = words.planDocument(name);
          return [
            <li>
              <span class="what">{plan}</span>
              <span class="links">
                <a href={`/sites/${site}/plan?years=${years}`} aria-label={`${plan}, ${words.page}`}>
                  {words.page}
                </a>
                <a href={`/sites/${site}/plan.pdf?years=${years}`} aria-label={`${plan}, ${words.pdf}`}>
                  {words.pdf}
                </a>
              </span>
            </li>,
            <li>
              <span class="what">{words.csvYears(name)}</span>
              <a href={`/board/${site}/years.csv?years=${years}`} aria-label={`${words.csvYears(name)}, ${words.csv}`}>
                {words.csv}
              </a>
            </li>,
            <li>
              <span class="what">{words.csvFences(name)}</span>
              <a
                href={`/board/${site}/fences.csv?years=${years}`}
                aria-label={`${words.csvFences(name)}, ${words.csv}`}
              >
                {words.csv}
              </a>
            </li>,
          ];
        })}
      <li>
        <span class="what">
          <a href="/documents">{words.more}</a>
        </span>
      </li>
    </ul>
  </>
);
