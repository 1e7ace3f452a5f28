import type { FC } from 'hono/jsx';
import { aboveGroundSentence } from '../../drawing/above-ground-sentence.ts';
import { methodText, outcomeText, readingText } from '../../drawing/evidence-text.ts';
import { type DisplayUnits, speedText } from '../../drawing/speed-text.ts';
import { aboveGroundFlag } from '../../forecast/above-ground.ts';
import type { FenceFacts } from '../../forecast/fence-facts.ts';
import { type FenceForecast, seasonOne } from '../../forecast/fence-forecast.ts';
import type { InspectionWithReadings } from '../../register/evidence-store.ts';
import { readingFacts } from '../../register/reading-record.ts';
import type { StormOutcomeRecord } from '../../register/storm-outcome-record.ts';
import { EvidenceEffect } from './evidence-effect.tsx';
import type { FenceDetail } from './fence-detail.ts';

/** What inspections and storms changed, inspections with their readings, and what storms were reported to have done, newest first. */
export const EvidenceSeen: FC<{ readonly detail: FenceDetail }> = ({ detail }) => {
  const { inspections, outcomes } = detail.evidence;
  const { units } = detail.site;
  return (
    <>
      <h2>Inspections and storms</h2>
      {detail.swept && <EvidenceEffect facts={detail.facts} forecast={detail.swept.forecast} units={units} />}
      {inspections.length + outcomes.length === 0 && <p>None recorded.</p>}
      {inspections.length > 0 && <Inspections inspections={inspections} units={units} />}
      {outcomes.length > 0 && <Storms outcomes={outcomes} units={units} />}
      {detail.swept && <RailsAndInfill facts={detail.facts} forecast={detail.swept.forecast} units={units} />}
    </>
  );
};

const RailsAndInfill: FC<{
  readonly facts: FenceFacts;
  readonly forecast: FenceForecast;
  readonly units: DisplayUnits;
}> = ({ facts, forecast, units }) => {
  const { day } = seasonOne(forecast);
  return <p class="after-tables">{aboveGroundSentence(aboveGroundFlag(facts, day), day, units)}</p>;
};

const Inspections: FC<{ readonly inspections: readonly InspectionWithReadings[]; readonly units: DisplayUnits }> = ({
  inspections,
  units,
}) => (
  <table>
    <caption class="visually-hidden">Inspections, newest first</caption>
    <thead>
      <tr>
        <th scope="col">Day</th>
        <th scope="col">Inspection</th>
        <th scope="col">What was found</th>
      </tr>
    </thead>
    <tbody>
      {inspections.toReversed().map(({ record, readings }) => (
        <tr>
          <td class="when">{record.day}</td>
          <td>
            {record.inspector}
            {record.qualification !== '' && `, ${record.qualification}`}
            <span class="small">
              {methodText(record.method)}
              {record.instrument !== '' && `, ${record.instrument}`}
            </span>
            {record.notes !== '' && <span class="small">{record.notes}</span>}
          </td>
          <td>
            {readings.length === 0 ? (
              'nothing recorded'
            ) : (
              <ul class="plain">
                {readings.map((reading) => (
                  <li>
                    post {reading.post}: {readingText(readingFacts(reading), units)}
                    {reading.notes !== '' && ` (${reading.notes})`}
                  </li>
                ))}
              </ul>
            )}
          </td>
        </tr>
      ))}
    </tbody>
  </table>
);

const Storms: FC<{ readonly outcomes: readonly StormOutcomeRecord[]; readonly units: DisplayUnits }> = ({
  outcomes,
  units,
}) => (
  <table>
    <caption class="visually-hidden">What storms did, newest first</caption>
    <thead>
      <tr>
        <th scope="col">Day</th>
        <th scope="col">Storm</th>
        <th scope="col">What it did</th>
      </tr>
    </thead>
    <tbody>
      {outcomes.toReversed().map((outcome) => (
        <tr>
          <td class="when">{outcome.day}</td>
          <td>
            {outcome.storm}, gust {speedText(outcome.gustMps, units)} ± {Math.round(outcome.gustSpread * 100)} %
            {outcome.gustSource !== '' && <span class="small">{outcome.gustSource}</span>}
          </td>
          <td>
            {outcomeText(
              outcome,
              outcomes.some(({ storm, posts }) => storm === outcome.storm && posts !== 'all'),
            )}
            <span class="small">
              reported by {outcome.reportedBy}
              {outcome.notes !== '' && `; ${outcome.notes}`}
            </span>
          </td>
        </tr>
      ))}
    </tbody>
  </table>
);
