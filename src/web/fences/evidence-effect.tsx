import type { FC } from 'hono/jsx';
import { changeSentences, evidenceCountSentence, surpriseSentences } from '../../drawing/evidence-sentences.ts';
import { latestFindings } from '../../drawing/finding-remarks.ts';
import type { DisplayUnits } from '../../drawing/speed-text.ts';
import type { FenceFacts } from '../../forecast/fence-facts.ts';
import type { FenceForecast } from '../../forecast/fence-forecast.ts';
import { learnedVersion } from '../../forecast/reasons.ts';

/** What was found at the posts and not mended since: the first thing to know of a fence. */
export const PostFindings: FC<{ readonly facts: FenceFacts; readonly forecast: FenceForecast }> = ({
  facts,
  forecast,
}) => {
  const findings = latestFindings(facts, forecast);
  if (findings.length === 0) return null;
  return (
    <ul class="findings" aria-label="What was found at the posts">
      {findings.map((finding) => (
        <li class={finding.includes('closed off') ? 'pressing' : undefined}>{finding}</li>
      ))}
    </ul>
  );
};

/** What readings and storms changed. */
export const EvidenceEffect: FC<{
  readonly facts: FenceFacts;
  readonly forecast: FenceForecast;
  readonly units: DisplayUnits;
}> = ({ facts, forecast, units }) => {
  const { evidence } = forecast;
  return (
    <>
      {evidence && (
        <p>
          {[
            evidenceCountSentence(evidence),
            ...changeSentences(evidence, learnedVersion(facts), units),
            ...surpriseSentences(evidence),
          ].join(' ')}{' '}
          <a href={`/fences/${encodeURIComponent(forecast.fenceRef)}/reasons#seen`}>Before and after</a>
        </p>
      )}
    </>
  );
};
