import type { FC } from 'hono/jsx';
import { verdictDay, verdictWhen } from '../../drawing/code-verdict-text.ts';
import type { DisplayUnits } from '../../drawing/speed-text.ts';
import { speedText } from '../../drawing/speed-text.ts';
import type { FenceForecast } from '../../forecast/fence-forecast.ts';
import { ScrollFrame } from '../frame/scroll-frame.tsx';

const met = (meets: boolean): string => (meets ? 'meets it' : 'does not meet it');

/** The verdict by allowable stress, as built and in the season at hand: information beside the standing, never part of it. */
export const CodeVerdicts: FC<{ readonly forecast: FenceForecast; readonly units: DisplayUnits }> = ({
  forecast,
  units,
}) => (
  <>
    <p>
      Information only: allowable stress and presumptive soil values, with the rot expected by then. It asks more than
      nature does, so many sound fences fail it.
    </p>
    <ScrollFrame label="As a checker would compute it">
      <table>
        <caption>By allowable stress (ASD), on the basis the design wind was entered in</caption>
        <thead>
          <tr>
            <th scope="col">When</th>
            <th scope="col" class="figure">
              Entered gust
            </th>
            <th scope="col" class="figure">
              Post holds
            </th>
            <th scope="col" class="figure">
              Footing holds
            </th>
            <th scope="col">Post</th>
            <th scope="col">Footing</th>
            <th scope="col">16 psf minimum</th>
          </tr>
        </thead>
        <tbody>
          {forecast.codeVerdicts.map((verdict) => (
            <tr>
              <th scope="row" class="when">
                {verdictWhen(verdict, forecast)}
                {verdictDay(verdict, forecast) !== null && (
                  <span class="small">{`on ${verdictDay(verdict, forecast)}`}</span>
                )}
              </th>
              <td class="figure">{speedText(verdict.enteredGustMps, units)}</td>
              <td class="figure">{speedText(verdict.snapMps, units)}</td>
              <td class="figure">{speedText(verdict.leanMps, units)}</td>
              <td>{met(verdict.postMeets)}</td>
              <td>{met(verdict.footingMeets)}</td>
              <td>
                {`post ${met(verdict.postMeetsMinimumPressure)}, footing ${met(verdict.footingMeetsMinimumPressure)}`}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </ScrollFrame>
  </>
);
