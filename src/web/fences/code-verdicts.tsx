import type { FC } from 'hono/jsx';
import type { ChartLanguage } from '../../drawing/chart-words.ts';
import { verdictDay, verdictWhen } from '../../drawing/code-verdict-text.ts';
import type { DisplayUnits } from '../../drawing/speed-text.ts';
import { speedText } from '../../drawing/speed-text.ts';
import type { FenceForecast } from '../../forecast/fence-forecast.ts';
import { ScrollFrame } from '../frame/scroll-frame.tsx';
import { FENCE_PART_WORDS } from './fence-part-words.ts';

/** The verdict by allowable stress, as built and in the season at hand: information beside the standing, never part of it. */
export const CodeVerdicts: FC<{
  readonly forecast: FenceForecast;
  readonly units: DisplayUnits;
  readonly language: ChartLanguage;
}> = ({ forecast, units, language }) => {
  const words = FENCE_PART_WORDS[language];
  const met = (meets: boolean): string => words.meets[meets ? 0 : 1];
  return (
    <>
      <p>{words.checkerNote}</p>
      <ScrollFrame label={words.checker}>
        <table>
          <caption>{words.checkerCaption}</caption>
          <thead>
            <tr>
              {words.checkerColumns.map((heading, index) => (
                <th scope="col" class={index >= 1 && index <= 3 ? 'figure' : undefined}>
                  {heading}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {forecast.codeVerdicts.map((verdict) => {
              const day = verdictDay(verdict, forecast);
              return (
                <tr>
                  <th scope="row" class="when">
                    {verdictWhen(verdict, forecast, language)}
                    {day !== null && <span class="small">{words.onDay(day)}</span>}
                  </th>
                  <td class="figure">{speedText(verdict.enteredGustMps, units)}</td>
                  <td class="figure">{speedText(verdict.snapMps, units)}</td>
                  <td class="figure">{speedText(verdict.leanMps, units)}</td>
                  <td>{met(verdict.postMeets)}</td>
                  <td>{met(verdict.footingMeets)}</td>
                  <td>{words.both(met(verdict.postMeetsMinimumPressure), met(verdict.footingMeetsMinimumPressure))}</td>
                </tr>
              );
            })}
          </tbody>
        </table>
      </ScrollFrame>
    </>
  );
};
