import { evidenceRemarks } from '../forecast/evidence/evidence-remarks.ts';
import type { FenceFacts } from '../forecast/fence-facts.ts';
import { type FenceForecast, seasonOne } from '../forecast/fence-forecast.ts';
import { fenceStates, stateOn } from '../forecast/fence-state.ts';
import { foundRemarks } from '../forecast/found-posts.ts';

/** The forecast's remarks on what was found at the posts and not mended since, the most pressing first. */
export function findingRemarks(facts: FenceFacts, forecast: FenceForecast): readonly string[] {
  const found = new Set(foundRemarks(stateOn(fenceStates(facts), seasonOne(forecast).day)));
  return forecast.remarks.filter((remark) => found.has(remark));
}

/** The forecast's remarks that neither findings nor readings and storms gave rise to. */
export function otherRemarks(facts: FenceFacts, forecast: FenceForecast): readonly string[] {
  const told = new Set([...findingRemarks(facts, forecast), ...evidenceRemarks(forecast.evidence)]);
  return forecast.remarks.filter((remark) => !told.has(remark));
}
