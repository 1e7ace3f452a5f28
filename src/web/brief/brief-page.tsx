import { raw } from 'hono/html';
import type { FC } from 'hono/jsx';
import { longDay } from '../../drawing/day-sheet-words.ts';
import { countWords, listWords, numberWords, sentenceCase } from '../../drawing/day-words.ts';
import { drawPartsBar } from '../../drawing/parts-bar.ts';
import { drawSeasonStrip } from '../../drawing/season-strip.ts';
import type { RegionBrief, SeasonBrief } from '../../service/season-brief.ts';
import type { SweepStatus } from '../../service/service-view.ts';
import { Moment } from '../frame/moment.tsx';
import type { PageFrame } from '../frame/page-frame.ts';
import { PageShell } from '../frame/page-shell.tsx';
import { ScrollFrame } from '../frame/scroll-frame.tsx';
import { causeClause, changesSentence, changeWords } from './change-sentences.ts';
import { DangerPart } from './danger-part.tsx';
import { HoursPart } from './hours-part.tsx';
import { OwnerDaysPart } from './owner-days-part.tsx';
import { openingSentence, regionName, seasonClause, stripSeasons, windowWords } from './season-sentences.ts';
import { VisitsPart, WaitingPart } from './waiting-part.tsx';

/** Length of the bar of a region [px]. */
const BAR_PX = 160;

/** Properties of the page with which the office begins. */
export interface BriefPageProps {
  readonly brief: SeasonBrief;
  readonly sweep: SweepStatus;
  readonly lookAheadSeasons: number;
  readonly frame: PageFrame;
}

/** The page with which the office begins: where the season stands, in sentences, each leading to where one acts. */
export const BriefPage: FC<BriefPageProps> = (props) => {
  const { brief, frame } = props;
  const { regions, today } = brief;
  return (
    <PageShell title="Season brief" section="brief" frame={frame} cautions={true}>
      <div class="brief">
        <h1>Season brief</h1>
        <p class="dateline">{longDay(today)}</p>
        <DangerPart danger={brief.danger} isSwept={props.sweep.lastFinished !== null} />
        <p class="lead">{openingSentence(regions, today)}</p>
        {regions.length === 0 ? <Nothing /> : <FencesPart {...props} />}
        <ChangesPart {...props} />
        <WaitingPart brief={brief} catchesMail={frame.catchesMail} />
        <OwnerDaysPart said={brief.ownerDays} today={today} />
        <VisitsPart brief={brief} />
        <HoursPart brief={brief} />
      </div>
    </PageShell>
  );
};

const Nothing: FC = () => (
  <p>
    <a href="/import">Import files</a> of the sites, owners and fences that you look after; the{' '}
    <a href="/fences">list of fences</a> then shows them.
  </p>
);

const sumOf = (regions: readonly RegionBrief[], of: (region: RegionBrief) => number): number =>
  regions.reduce((sum, region) => sum + of(region), 0);

/** How the fences of a region stand, in a cell; what is not computed yet is not said to hold. */
function standsWords({ fences, unswept, short, closing }: RegionBrief): string {
  if (unswept === fences) return `${numberWords(fences)}, not computed yet`;
  const counted = `${short} short, ${closing} closing, of ${numberWords(fences - unswept)}`;
  return unswept === 0 ? counted : `${counted}; ${numberWords(unswept)} not computed yet`;
}

const FencesPart: FC<BriefPageProps> = ({ brief, lookAheadSeasons }) => {
  const { regions, today } = brief;
  const fences = sumOf(regions, (each) => each.fences);
  const unswept = sumOf(regions, (each) => each.unswept);
  const short = sumOf(regions, (each) => each.short);
  const closing = sumOf(regions, (each) => each.closing);
  const within = lookAheadSeasons === 1 ? 'within one season' : `within ${lookAheadSeasons} seasons`;
  const behind = regions.filter(({ shortUnvisited }) => shortUnvisited > 0);
  return (
    <section>
      <h2 id="regions">Where the fences stand</h2>
      {unswept > 0 && (
        <p>
          {`${sentenceCase(countWords(unswept, 'fence is', 'fences are'))} not computed yet, so nothing ${unswept === fences ? 'can be said' : 'below speaks'} of `}
          <a href="/fences">{unswept === 1 ? 'it' : 'them'}</a>.
        </p>
      )}
      {unswept < fences && (
        <p>
          {`Of ${countWords(fences - unswept, 'fence')}, `}
          <a href="/fences?standing=any-short">{`${short === 0 ? 'none' : numberWords(short)} ${short === 1 ? 'is' : 'are'} short`}</a>
          {` of the design gust now, at the line or at the ends, and `}
          <a href="/fences?standing=any-closing">{`${countWords(closing, 'more goes', 'more go')} short ${within}`}</a>.{' '}
          {behind.length === 0 ? (
            short > 0 && 'Each short fence has a visit.'
          ) : (
            <>
              {`${sentenceCase(listWords(behind.slice(0, 3).map((each) => `${regionName(each)} (${each.shortUnvisited} of ${each.short})`)))} ${behind.length === 1 ? 'is' : 'are'} behind: so many short fences have no visit yet. `}
              {brief.plan.inForce ? (
                <>
                  <a href={`/plan/${brief.plan.inForce.number}#left-out`}>{`Plan ${brief.plan.inForce.number}`}</a>
                  {' says what it left out and why.'}
                </>
              ) : (
                <>
                  <a href="/plan">A season plan</a> looks for one.
                </>
              )}
            </>
          )}
        </p>
      )}
      <ScrollFrame label="The regions and their seasons">
        <table class="stacked">
          <caption>
            The regions, the next to open first. In the strip a thick part is a storm season and the upright is today;
            in the bar the full part is short, the half part goes short {within}.
          </caption>
          <thead>
            <tr>
              <th scope="col">Region</th>
              <th scope="col">Storm season</th>
              <th scope="col">The year ahead</th>
              <th scope="col">Fences</th>
            </tr>
          </thead>
          <tbody>
            {regions.map((region) => (
              <tr>
                <th scope="row">
                  <a
                    href={`/fences?${region.sites === 1 ? `site=${encodeURIComponent(region.siteRef)}` : 'sort=standing'}`}
                  >
                    {regionName(region)}
                  </a>
                  <span class="small">{countWords(region.sites, 'site')}</span>
                </th>
                <td data-label="Storm season">
                  {sentenceCase(seasonClause(region, today))}
                  <span class="small">{windowWords(region)}</span>
                </td>
                <td data-label="The year ahead">
                  {region.season.kind === 'all year'
                    ? 'all of it'
                    : raw(drawSeasonStrip(today, stripSeasons(region, today)))}
                </td>
                <td data-label="Fences">
                  {standsWords(region)}
                  {region.unswept < region.fences &&
                    raw(
                      drawPartsBar(
                        [
                          { amount: region.short, ink: 'full' },
                          { amount: region.closing, ink: 'half' },
                          { amount: region.fences - region.short - region.closing, ink: 'rest' },
                        ],
                        region.fences,
                        BAR_PX,
                      ),
                    )}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </ScrollFrame>
    </section>
  );
};

const ChangesPart: FC<BriefPageProps> = ({ brief, sweep }) => {
  const { counts, named, isFirstSweep, betterButDangerous } = brief.changes;
  const { lastFinished, progress, failures, nextAt } = sweep;
  const fences = counts.reduce((sum, each) => sum + each.fences, 0);
  return (
    <section>
      <h2 id="changes">Since the last sweep</h2>
      <p>
        {progress ? `A sweep is at work: ${countWords(progress.done, 'fence')} done so far. ` : ''}
        {lastFinished?.finishedAt ? (
          <>
            {'The register was swept '}
            <Moment at={lastFinished.finishedAt} />
            {`: ${countWords(lastFinished.computed, 'fence')} computed anew, ${countWords(lastFinished.unchanged, 'fence')} unchanged. The next sweep is due `}
          </>
        ) : (
          'The register has not been swept yet; the first sweep is due '
        )}
        <Moment at={nextAt} />.
        {failures.length > 0 && (
          <>
            {' '}
            <a href="/fences">{sentenceCase(countWords(failures.length, 'fence'))}</a>
            {` could not be computed (${listWords(failures.slice(0, 3).map(({ ref }) => ref))}${failures.length > 3 ? ' and more' : ''}).`}
          </>
        )}
      </p>
      {lastFinished && (
        <p>
          {!isFirstSweep
            ? changesSentence(counts, betterButDangerous)
            : lastFinished.computed + lastFinished.unchanged === 0
              ? `${failures.length > 0 ? 'It computed no fence' : 'Nothing was there to sweep'}; once a sweep has computed fences, the next says here which of them stand otherwise.`
              : 'It was the first sweep, so there is nothing to compare it with; from the next on this part says which fences stand otherwise.'}
        </p>
      )}
      {named.length > 0 && (
        <>
          <ul class="plain">
            {named.map((change) => (
              <li>
                <a href={`/fences/${encodeURIComponent(change.fenceRef)}`}>{change.fenceRef}</a>
                {` at ${change.siteName}: ${changeWords(change)}. In between ${causeClause(change)}.`}
              </li>
            ))}
          </ul>
          {fences > named.length && (
            <p>
              {`And ${countWords(fences - named.length, 'more', 'more')}: `}
              <a href="/fences?sort=standing">the list of fences</a> has them all.
            </p>
          )}
        </>
      )}
    </section>
  );
};
