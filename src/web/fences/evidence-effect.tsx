import type { FC } from 'hono/jsx';
import type { ChartLanguage } from '../../drawing/chart-words.ts';
import { EVIDENCE_SENTENCES } from '../../drawing/evidence-sentences-es.ts';
import { latestFindings } from '../../drawing/finding-remarks.ts';
import { remarkInSpanish } from '../../drawing/spanish/forecast-remarks.ts';
import type { DisplayUnits } from '../../drawing/speed-text.ts';
import type { FenceFacts } from '../../forecast/fence-facts.ts';
import type { FenceForecast } from '../../forecast/fence-forecast.ts';
import { learnedVersion } from '../../forecast/reasons.ts';
import { FENCE_PART_WORDS } from './fence-part-words.ts';

/** What was found at the posts and not mended since: the first thing to know of a fence. */
export const PostFindings: FC<{
  readonly facts: FenceFacts;
  readonly forecast: FenceForecast;
  readonly language: ChartLanguage;
}> = ({ facts, forecast, language }) => {
  const findings = latestFindings(facts, forecast);
  if (findings.length === 0) return null;
  return (
    <ul class="findings" aria-label={FENCE_PART_WORDS[language].foundAtPosts}>
      {findings.map((finding) => (
        <li class={finding.includes('closed off') ? 'pressing' : undefined}>
          {language === 'es' ? remarkInSpanish(finding) : finding}
        </li>
      ))}
    </ul>
  );
};

/** What readings and storms changed. */
export const EvidenceEffect: FC<{
  readonly facts: FenceFacts;
  readonly forecast: FenceForecast;
  readonly units: DisplayUnits;
  readonly language: ChartLanguage;
}> = ({ facts, forecast, units, language }) => {
  const { evidence } = forecast;
  const sentences = EVIDENCE_SENTENCES[language];
  return (
    <>
      {evidence && (
        <p>
          {[
            sentences.count(evidence),
            ...sentences.changes(evidence, learnedVersion(facts), units),
            ...sentences.surprise(evidence),
          ].join(' ')}{' '}
          <a href={`/fences/${encodeURIComponent(forecast.fenceRef)}/reasons#seen`}>
            {FENCE_PART_WORDS[language].beforeAndAfter}
          </a>
        </p>
      )}
    </>
  );
};
