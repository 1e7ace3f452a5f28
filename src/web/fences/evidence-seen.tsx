import type { FC } from 'hono/jsx';
import { aboveGroundSentence } from '../../drawing/above-ground-sentence.ts';
import type { ChartLanguage } from '../../drawing/chart-words.ts';
import { methodName } from '../../drawing/report/record-names.ts';
import { foundAtPost, stormDid } from '../../drawing/report/seen-texts.ts';
import { type DisplayUnits, speedText } from '../../drawing/speed-text.ts';
import { aboveGroundFlag } from '../../forecast/above-ground.ts';
import type { FenceFacts } from '../../forecast/fence-facts.ts';
import { type FenceForecast, seasonOne } from '../../forecast/fence-forecast.ts';
import type { InspectionWithReadings } from '../../register/evidence-store.ts';
import { readingFacts } from '../../register/reading-record.ts';
import type { StormOutcomeRecord } from '../../register/storm-outcome-record.ts';
import { EvidenceEffect } from './evidence-effect.tsx';
import type { FenceDetail } from './fence-detail.ts';
import { FENCE_PART_WORDS } from './fence-part-words.ts';

interface Told {
  readonly units: DisplayUnits;
  readonly language: ChartLanguage;
}

/** What inspections and storms changed, inspections with their readings, and what storms were reported to have done, newest first. */
export const EvidenceSeen: FC<{
  readonly detail: FenceDetail;
  /** True where the page says that rails and boards are worn out by their age. */
  readonly isOutworn: boolean;
  readonly language: ChartLanguage;
}> = ({ detail, isOutworn, language }) => {
  const { inspections, outcomes } = detail.evidence;
  const told = { units: detail.site.units, language };
  const words = FENCE_PART_WORDS[language];
  return (
    <>
      <h2>{words.seenHeading}</h2>
      {detail.swept && <EvidenceEffect facts={detail.facts} forecast={detail.swept.forecast} {...told} />}
      {inspections.length + outcomes.length === 0 && <p>{words.noneRecorded}</p>}
      {inspections.length > 0 && <Inspections inspections={inspections} {...told} />}
      {outcomes.length > 0 && <Storms outcomes={outcomes} {...told} />}
      {detail.swept && (
        <RailsAndInfill facts={detail.facts} forecast={detail.swept.forecast} isOutworn={isOutworn} {...told} />
      )}
    </>
  );
};

const RailsAndInfill: FC<
  { readonly facts: FenceFacts; readonly forecast: FenceForecast; readonly isOutworn: boolean } & Told
> = ({ facts, forecast, isOutworn, units, language }) => {
  const { day } = seasonOne(forecast);
  return (
    <p class="after-tables">{aboveGroundSentence(aboveGroundFlag(facts, day), day, { units, language, isOutworn })}</p>
  );
};

const Headings: FC<{ readonly names: readonly string[] }> = ({ names }) => (
  <thead>
    <tr>
      {names.map((name) => (
        <th scope="col">{name}</th>
      ))}
    </tr>
  </thead>
);

const Inspections: FC<{ readonly inspections: readonly InspectionWithReadings[] } & Told> = ({
  inspections,
  units,
  language,
}) => {
  const words = FENCE_PART_WORDS[language];
  return (
    <table>
      <caption class="visually-hidden">{words.inspectionsCaption}</caption>
      <Headings names={words.inspectionColumns} />
      <tbody>
        {inspections.toReversed().map(({ record, readings }) => (
          <tr>
            <td class="when">{record.day}</td>
            <td>
              {record.inspector}
              {record.qualification !== '' && `, ${record.qualification}`}
              <span class="small">
                {methodName(record.method, language)}
                {record.instrument !== '' && `, ${record.instrument}`}
              </span>
              {record.notes !== '' && <span class="small">{record.notes}</span>}
            </td>
            <td>
              {readings.length === 0 ? (
                words.nothingRecorded
              ) : (
                <ul class="plain">
                  {readings.map((reading) => (
                    <li>
                      {foundAtPost(readingFacts(reading), units, language)}
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
};

const Storms: FC<{ readonly outcomes: readonly StormOutcomeRecord[] } & Told> = ({ outcomes, units, language }) => {
  const words = FENCE_PART_WORDS[language];
  return (
    <table>
      <caption class="visually-hidden">{words.stormsCaption}</caption>
      <Headings names={words.stormColumns} />
      <tbody>
        {outcomes.toReversed().map((outcome) => (
          <tr>
            <td class="when">{outcome.day}</td>
            <td>
              {outcome.storm}, {words.gust} {speedText(outcome.gustMps, units)} ± {Math.round(outcome.gustSpread * 100)}{' '}
              %{outcome.gustSource !== '' && <span class="small">{outcome.gustSource}</span>}
            </td>
            <td>
              {stormDid(
                outcome,
                outcomes.some(({ storm, posts }) => storm === outcome.storm && posts !== 'all'),
                language,
              )}
              <span class="small">
                {words.reportedBy(outcome.reportedBy)}
                {outcome.notes !== '' && `; ${outcome.notes}`}
              </span>
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
};
