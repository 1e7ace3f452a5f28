import type { FC } from 'hono/jsx';
import type { ChartLanguage } from '../../drawing/chart-words.ts';
import { remarkInSpanish } from '../../drawing/spanish/forecast-remarks.ts';
import type { DisplayUnits } from '../../drawing/speed-text.ts';
import { unknownSentence, wayToKnowSentence } from '../../drawing/unknown-sentence.ts';
import type { FenceForecast } from '../../forecast/fence-forecast.ts';
import { FENCE_PART_WORDS } from './fence-part-words.ts';

/** What the register does not know and what the forecast remarks. */
export const Unknowns: FC<{
  readonly forecast: FenceForecast;
  readonly units: DisplayUnits;
  readonly language: ChartLanguage;
}> = ({ forecast, units, language }) => {
  const words = FENCE_PART_WORDS[language];
  const { fenceRef, unknowns } = forecast;
  return (
    <>
      <h2>{words.unknownHeading}</h2>
      {unknowns.length === 0 ? (
        <p>{words.allRecorded}</p>
      ) : (
        <ul class="plain">
          {unknowns.map((unknown) => (
            <li>{`${unknownSentence(unknown, units, language)} ${wayToKnowSentence(unknown, language)}`}</li>
          ))}
        </ul>
      )}
      <p>
        {words.carried} <a href={`/fences/${encodeURIComponent(fenceRef)}/reasons#weighs`}>{words.weighsLink}</a>
        {words.carriedEnd}
      </p>
      {forecast.remarks.length > 0 && (
        <ul class="plain">
          {forecast.remarks.map((remark) => (
            <li>{language === 'es' ? remarkInSpanish(remark) : remark}</li>
          ))}
        </ul>
      )}
    </>
  );
};
