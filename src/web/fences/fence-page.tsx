import { raw } from 'hono/html';
import type { FC } from 'hono/jsx';
import { surpriseSentences } from '../../drawing/evidence-sentences.ts';
import { breakingSentence, endsSentence, standingSentence, turnoverSentence } from '../../drawing/fence-sentences.ts';
import { drawFenceYears } from '../../drawing/fence-years.ts';
import { remarksBesideFindings } from '../../drawing/finding-remarks.ts';
import type { FenceFacts } from '../../forecast/fence-facts.ts';
import { type FenceForecast, judgedGroup, seasonOne } from '../../forecast/fence-forecast.ts';
import { CHART_SIZES } from '../frame/chart-sizes.ts';
import { numberRanges } from '../frame/number-ranges.ts';
import type { PageFrame } from '../frame/page-frame.ts';
import { PageShell } from '../frame/page-shell.tsx';
import { CodeVerdicts } from './code-verdicts.tsx';
import { PostFindings } from './evidence-effect.tsx';
import { EvidenceSeen } from './evidence-seen.tsx';
import { type FenceDetail, postsDrawn } from './fence-detail.ts';
import { FenceFactsList } from './fence-facts-list.tsx';
import { NoticesSent } from './notices-sent.tsx';
import { RunDrawn, SectionsDrawn } from './posts-drawn.tsx';
import { SeasonRows } from './season-rows.tsx';
import { Unknowns } from './unknowns.tsx';
import { WorksDone } from './works-done.tsx';

/** The page of one fence. */
export const FencePageView: FC<{ readonly detail: FenceDetail; readonly frame: PageFrame }> = ({ detail, frame }) => {
  const { fence, site, swept } = detail;
  return (
    <PageShell title={`Fence ${fence.ref}`} section="fences" frame={frame} cautions={true}>
      <p class="back">
        <a href="/fences">All fences</a>
      </p>
      <h1>Fence {fence.ref}</h1>
      <p class="where">
        {site.name}, {site.place}
      </p>
      {swept && <PostFindings facts={detail.facts} forecast={swept.forecast} />}
      {swept ? <Swept detail={detail} swept={swept} /> : <NotSwept fenceRef={fence.ref} />}
      <h2>What the register knows</h2>
      <FenceFactsList detail={detail} />
      {swept && <Unknowns forecast={besideEvidence(detail.facts, swept.forecast)} units={site.units} />}
      <EvidenceSeen detail={detail} />
      <WorksDone works={detail.facts.works} />
      <NoticesSent notices={detail.notices} />
    </PageShell>
  );
};

/** The forecast without the remarks that stand with inspections and storms. */
function besideEvidence(facts: FenceFacts, forecast: FenceForecast): FenceForecast {
  const told = new Set(surpriseSentences(forecast.evidence));
  return { ...forecast, remarks: remarksBesideFindings(facts, forecast).filter((remark) => !told.has(remark)) };
}

const NotSwept: FC<{ readonly fenceRef: string }> = ({ fenceRef }) => (
  <p class="lead">
    This fence has not been swept yet, so it has no numbers here. The next sweep fills them in;{' '}
    <code>stormpale sweep</code> does it now, and <code>stormpale forecast {fenceRef}</code> computes this fence alone.
  </p>
);

const Swept: FC<{ readonly detail: FenceDetail; readonly swept: NonNullable<FenceDetail['swept']> }> = ({
  detail,
  swept,
}) => {
  const { forecast, stored } = swept;
  const { units } = detail.site;
  const path = `/fences/${encodeURIComponent(detail.fence.ref)}`;
  const ends = endsSentence(forecast, units, stored.endsStanding);
  return (
    <>
      <p class="lead">{breakingSentence(forecast, units)}</p>
      <p>{standingSentence(forecast, units, stored.standing)}</p>
      <p>{turnoverSentence(forecast, units)}</p>
      {ends && <p>{ends}</p>}
      <figure class="chart">
        {CHART_SIZES.map(({ name, widthPx, heightPx }) => (
          <div class={`chart-${name}`}>
            {raw(drawFenceYears(forecast, { units, language: 'en', widthPx, heightPx, idPrefix: name }))}
          </div>
        ))}
        <figcaption>
          Snap speed is the gust that breaks a post at the groundline, lean speed the one that turns its footing in the
          soil; both as 3-second gusts at 10 m in open terrain, as on a wind map. The lean speed is the less certain of
          the two.
        </figcaption>
      </figure>
      <details>
        <summary>The same as a table, season by season</summary>
        <SeasonRows forecast={forecast} units={units} />
      </details>
      <Decides forecast={forecast} />
      <Posts detail={detail} forecast={forecast} />
      <h2>As a checker would compute it</h2>
      <CodeVerdicts forecast={forecast} units={units} />
      <h2>How this was computed</h2>
      <p>
        <a href={`${path}/reasons`}>Every step with its equation and source</a>, and{' '}
        <a href={`${path}.json`}>the forecast as JSON</a>.
      </p>
      <p class="muted">
        Model {stored.modelVersion}, computed {stored.computedAt.slice(0, 16).replace('T', ' ')} UTC, inputs{' '}
        <code class="hash">{stored.inputHash.slice(0, 16)}</code>.
      </p>
    </>
  );
};

/** The run and a deciding post, drawn. */
const Posts: FC<{ readonly detail: FenceDetail; readonly forecast: FenceForecast }> = ({ detail, forecast }) => {
  const posts = postsDrawn(detail);
  const { decidingPosts } = judgedGroup(seasonOne(forecast));
  const deciding = posts.filter(({ number }) => decidingPosts.includes(number));
  const shown = deciding.find(({ condition }) => !condition.broken) ?? deciding[0];
  const drawn = { units: detail.site.units, language: 'en' as const };
  const view = {
    fenceRef: detail.fence.ref,
    runLengthM: detail.fence.runLengthM,
    designGustMps: forecast.designGust.gustMps,
    posts,
    decidingPosts,
  };
  return (
    <>
      {posts.length > 0 && <RunDrawn view={view} {...drawn} />}
      {shown && <SectionsDrawn post={shown} alike={deciding.length} {...drawn} />}
    </>
  );
};

const Decides: FC<{ readonly forecast: FenceForecast }> = ({ forecast }) => {
  const one = forecast.seasons.find((season) => season.season === 1);
  const { linePosts, endPosts } = forecast;
  const named = (posts: readonly number[]): string =>
    posts.length === 1 ? `post ${posts[0]}` : `posts ${numberRanges(posts)}`;
  return (
    <>
      <h2>Which posts decide</h2>
      <p>
        {`Of its ${forecast.postCount} posts, numbered from the named end, ${linePosts.length === 0 ? 'none are line posts' : `${named(linePosts)} ${linePosts.length === 1 ? 'is a line post' : 'are line posts'}`}`}
        {endPosts.length > 0 && `; ${named(endPosts)} ${endPosts.length === 1 ? 'stands' : 'stand'} in the end zones`}.
        {one?.line && ` The line posts' snap speed is decided by ${named(one.line.decidingPosts)}.`}
        {one?.ends && ` The ends' snap speed is decided by ${named(one.ends.decidingPosts)}.`}
      </p>
    </>
  );
};
