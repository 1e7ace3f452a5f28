import type { FC } from 'hono/jsx';
import type { DisplayUnits } from '../../drawing/speed-text.ts';
import { unknownSentence, wayToKnowSentence } from '../../drawing/unknown-sentence.ts';
import type { FenceForecast } from '../../forecast/fence-forecast.ts';

/** What the register does not know and what the forecast remarks. */
export const Unknowns: FC<{ readonly forecast: FenceForecast; readonly units: DisplayUnits }> = ({
  forecast,
  units,
}) => {
  const { fenceRef, unknowns } = forecast;
  return (
    <>
      <h2>What it does not know</h2>
      {unknowns.length === 0 ? (
        <p>Every input that can be recorded is.</p>
      ) : (
        <ul class="plain">
          {unknowns.map((unknown) => (
            <li>{`${unknownSentence(unknown, units)} ${wayToKnowSentence(unknown)}`}</li>
          ))}
        </ul>
      )}
      <p>
        What no record can say (how fast its wood rots, how strong its wood and its footings are, how much wind reaches
        it) the forecast carries as ranges:{' '}
        <a href={`/fences/${encodeURIComponent(fenceRef)}/reasons#weighs`}>what weighs most of all</a>, and what an
        inspection can narrow.
      </p>
      {forecast.remarks.length > 0 && (
        <ul class="plain">
          {forecast.remarks.map((remark) => (
            <li>{remark}</li>
          ))}
        </ul>
      )}
    </>
  );
};
