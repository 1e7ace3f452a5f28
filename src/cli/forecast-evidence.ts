import { aboveGroundSentence } from '../drawing/above-ground-sentence.ts';
import { changeSentences, evidenceCountSentence } from '../drawing/evidence-sentences.ts';
import { heldText } from '../drawing/held-text.ts';
import { aboveGroundFlag } from '../forecast/above-ground.ts';
import { type FenceForecast, judgedGroup, seasonOne } from '../forecast/fence-forecast.ts';
import { forecastFence } from '../forecast/forecast-fence.ts';
import { learnedVersion } from '../forecast/reasons.ts';
import type { FenceInRegister } from './fence-in-register.ts';

/** What the fence would break at had nothing been read, found or reported; middle values of season 1. */
function withoutSentence(fence: FenceInRegister, forecast: FenceForecast): string {
  const unseen = forecastFence({ ...fence.facts, inspections: [], outcomes: [] }, fence.seasonOneYear, fence.settings);
  const [seen, without] = [forecast, unseen].map((each) => judgedGroup(seasonOne(each)).snapMps.p50) as [
    number,
    number,
  ];
  const shown = (speedMps: number): string => heldText(speedMps, fence.units, 'en');
  return shown(seen) === shown(without)
    ? `Without them it would break at ${shown(without)} just the same.`
    : `Without them it would break at ${shown(without)} instead of ${shown(seen)}.`;
}

/** What was read and reported of a fence and what it moved, and rails and infill that are due for a look; as lines. */
export function forecastEvidenceLines(fence: FenceInRegister, forecast: FenceForecast): readonly string[] {
  const { facts, units } = fence;
  const { evidence } = forecast;
  const { day } = seasonOne(forecast);
  const flag = aboveGroundFlag(facts, day);
  return [
    ...(evidence
      ? [
          [
            evidenceCountSentence(evidence),
            withoutSentence(fence, forecast),
            ...changeSentences(evidence, learnedVersion(facts), units),
          ].join(' '),
        ]
      : []),
    ...(flag.look ? [aboveGroundSentence(flag, day, { units })] : []),
  ];
}
