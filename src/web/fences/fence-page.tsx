import { raw } from 'hono/html';
import type { FC } from 'hono/jsx';
import type { ChartLanguage } from '../../drawing/chart-words.ts';
import { surpriseSentences } from '../../drawing/evidence-sentences.ts';
import { FENCE_SENTENCES } from '../../drawing/fence-sentences-es.ts';
import { drawFenceYears } from '../../drawing/fence-years.ts';
import { isFoundDangerous, remarksBesideFindings } from '../../drawing/finding-remarks.ts';
import { snapChanceSentence } from '../../drawing/snap-chance-sentence.ts';
import type { FenceFacts } from '../../forecast/fence-facts.ts';
import { type FenceForecast, judgedGroup, seasonOne } from '../../forecast/fence-forecast.ts';
import type { AccountRole } from '../../register/account-tables.ts';
import type { FenceMoney } from '../../season/money/fence-money.ts';
import type { PlanBesideMoney } from '../../service/plan-beside-money.ts';
import { CHART_SIZES } from '../frame/chart-sizes.ts';
import { Moment } from '../frame/moment.tsx';
import type { PageFrame } from '../frame/page-frame.ts';
import { PageShell } from '../frame/page-shell.tsx';
import { CodeVerdicts } from './code-verdicts.tsx';
import { PostFindings } from './evidence-effect.tsx';
import { EvidenceSeen } from './evidence-seen.tsx';
import { type FenceDetail, postsDrawn } from './fence-detail.ts';
import { FenceFactsList } from './fence-facts-list.tsx';
import { FenceMoneyPart } from './fence-money.tsx';
import { FENCE_PAGE_WORDS } from './fence-page-words.ts';
import { FenceWays } from './fence-ways.tsx';
import { fenceHistory } from './history.ts';
import { HistoryLine } from './history-line.tsx';
import { RunDrawn, SectionsDrawn } from './posts-drawn.tsx';
import { SeasonRows } from './season-rows.tsx';
import { Unknowns } from './unknowns.tsx';
import { Why } from './why.tsx';

/** Properties of the page of one fence. */
export interface FencePageProps {
  readonly detail: FenceDetail;
  /** Null where it is not shown, or cannot be planned. */
  readonly money: FenceMoney | null;
  /** What the season plan does; null where money does not say to replace the fence now. */
  readonly beside: PlanBesideMoney | null;
  /** Null for a program. */
  readonly role: AccountRole | null;
  readonly language: ChartLanguage;
  readonly frame: PageFrame;
}

/** The page of one fence. */
export const FencePageView: FC<FencePageProps> = ({ detail, money, beside, role, language, frame }) => {
  const { fence, site, swept } = detail;
  const words = FENCE_PAGE_WORDS[language];
  const { units } = site;
  const history = fenceHistory(
    {
      evidence: detail.evidence,
      works: detail.facts.works,
      standings: detail.standings,
      notices: role === 'office' ? detail.notices : [],
      visits: detail.visits,
    },
    { units, language, timeZone: frame.office.timeZone },
  );
  return (
    <PageShell title={words.title(fence.ref)} section="fences" frame={frame} cautions={true} language={language}>
      <p class="back">
        <a href="/fences">{words.back}</a>
      </p>
      <h1>{words.title(fence.ref)}</h1>
      <p class="where">
        {site.name}, {site.place}
      </p>
      {role !== null && <FenceWays fenceRef={fence.ref} role={role} language={language} />}
      {swept && <PostFindings facts={detail.facts} forecast={swept.forecast} language={language} />}
      {swept ? (
        <Swept detail={detail} swept={swept} language={language} />
      ) : (
        <NotSwept fenceRef={fence.ref} language={language} />
      )}
      {money && (
        <FenceMoneyPart
          money={money}
          fenceRef={fence.ref}
          isDangerous={swept !== null && isFoundDangerous(detail.facts, swept.forecast)}
          beside={beside}
          showsPrice={role !== 'board'}
          currency={frame.office.currency}
          language={language}
        />
      )}
      <HistoryLine entries={history} language={language} />
      {swept && <Checked detail={detail} swept={swept} language={language} />}
      <h2>{words.known}</h2>
      <FenceFactsList detail={detail} language={language} />
      {swept && <Unknowns forecast={besideEvidence(detail.facts, swept.forecast)} units={units} language={language} />}
      <EvidenceSeen detail={detail} isOutworn={money?.isOutworn ?? false} language={language} />
    </PageShell>
  );
};

/** The forecast without the remarks that stand with inspections and storms. */
function besideEvidence(facts: FenceFacts, forecast: FenceForecast): FenceForecast {
  const told = new Set(surpriseSentences(forecast.evidence));
  return { ...forecast, remarks: remarksBesideFindings(facts, forecast).filter((remark) => !told.has(remark)) };
}

const NotSwept: FC<{ readonly fenceRef: string; readonly language: ChartLanguage }> = ({ fenceRef, language }) =>
  language === 'es' ? (
    <p class="lead">{FENCE_PAGE_WORDS.es.notSwept}</p>
  ) : (
    <p class="lead">
      This fence has not been swept yet, so it has no numbers here. The next sweep fills them in;{' '}
      <code>stormpale sweep</code> does it now, and <code>stormpale forecast {fenceRef}</code> computes this fence
      alone.
    </p>
  );

interface SweptProps {
  readonly detail: FenceDetail;
  readonly swept: NonNullable<FenceDetail['swept']>;
  readonly language: ChartLanguage;
}

const Swept: FC<SweptProps> = ({ detail, swept, language }) => {
  const { forecast, stored } = swept;
  const { units } = detail.site;
  const words = FENCE_PAGE_WORDS[language];
  const sentences = FENCE_SENTENCES[language];
  const ends = sentences.ends(forecast, units, stored.endsStanding);
  const chance = snapChanceSentence(forecast, language);
  const posts = postsDrawn(detail);
  const { decidingPosts } = judgedGroup(seasonOne(forecast));
  const deciding = posts.filter(({ number }) => decidingPosts.includes(number));
  const shown = deciding.find(({ condition }) => !condition.broken) ?? deciding[0];
  const view = {
    fenceRef: detail.fence.ref,
    runLengthM: detail.fence.runLengthM,
    designGustMps: forecast.designGust.gustMps,
    posts,
    decidingPosts,
  };
  return (
    <>
      <p class="lead">{sentences.breaking(forecast, units)}</p>
      <p>{sentences.standing(forecast, units, stored.standing)}</p>
      {ends && <p>{ends}</p>}
      <figure class="chart">
        {CHART_SIZES.map(({ name, widthPx, heightPx }) => (
          <div class={`chart-${name}`}>
            {raw(drawFenceYears(forecast, { units, language, widthPx, heightPx, idPrefix: name }))}
          </div>
        ))}
        <figcaption>{words.chart}</figcaption>
      </figure>
      <p>{sentences.turnover(forecast, units)}</p>
      {chance !== null && <p>{chance}</p>}
      <details>
        <summary>{words.chartTable}</summary>
        <SeasonRows forecast={forecast} units={units} language={language} />
      </details>
      <Why forecast={forecast} units={units} language={language} />
      {posts.length > 0 && <RunDrawn view={view} units={units} language={language} />}
      {shown && <SectionsDrawn post={shown} alike={deciding.length} units={units} language={language} />}
    </>
  );
};

/** The verdict a checker would compute, and where every step is. */
const Checked: FC<SweptProps> = ({ detail, swept, language }) => {
  const { forecast, stored } = swept;
  const words = FENCE_PAGE_WORDS[language];
  const path = `/fences/${encodeURIComponent(detail.fence.ref)}`;
  return (
    <>
      <h2>{words.checker}</h2>
      <CodeVerdicts forecast={forecast} units={detail.site.units} language={language} />
      <h2>{words.computed}</h2>
      <p>
        <a href={`${path}/reasons`}>{words.reasons}</a>; <a href={`${path}.json`}>{words.json}</a>.
      </p>
      <p class="muted">
        {words.computedWith(stored.modelVersion)} <Moment at={stored.computedAt} />, {words.inputs}{' '}
        <code class="hash">{stored.inputHash.slice(0, 16)}</code>.
      </p>
    </>
  );
};
