import type { FC } from 'hono/jsx';
import type { DisplayUnits } from '../drawing/speed-text.ts';
import { unknownSentence } from '../drawing/unknown-sentence.ts';
import type { FenceForecast } from '../forecast/fence-forecast.ts';

/** What the register does not know and what the forecast remarks. */
export const Unknowns: FC<{ readonly forecast: FenceForecast; readonly units: DisplayUnits }> = ({
  forecast,
  units,
}) => {
  const unknowns = forecast.unknowns.toSorted((a, b) => b.swingMps - a.swingMps);
  return (
    <>
      <h2>What it does not know</h2>
      {unknowns.length === 0 ? (
        <p>Every input of the forecast is recorded.</p>
      ) : (
        <ul class="plain">
          {unknowns.map((unknown) => (
            <li>{unknownSentence(unknown, units)}</li>
          ))}
        </ul>
      )}
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
