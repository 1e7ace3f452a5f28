import type { FC } from 'hono/jsx';
import type { ChartLanguage } from '../../drawing/chart-words.ts';
import { seasonTable } from '../../drawing/season-table.ts';
import type { DisplayUnits } from '../../drawing/speed-text.ts';
import type { FenceForecast } from '../../forecast/fence-forecast.ts';
import { ScrollFrame } from '../frame/scroll-frame.tsx';
import { FENCE_PART_WORDS } from './fence-part-words.ts';

/** The seasons of a forecast as a table that scrolls in its own frame. */
export const SeasonRows: FC<{
  readonly forecast: FenceForecast;
  readonly units: DisplayUnits;
  readonly language: ChartLanguage;
}> = ({ forecast, units, language }) => {
  const words = FENCE_PART_WORDS[language];
  const table = seasonTable(forecast, units, { language });
  return (
    <ScrollFrame label={words.seasons}>
      <table class="seasons">
        <caption>{words.seasonsCaption}</caption>
        <thead>
          <tr>
            {table.columns.map(({ heading, unit }, index) => (
              <th scope="col" class={index === 0 ? undefined : 'figure'}>
                {heading}
                {unit !== '' && <span class="unit">{unit}</span>}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {table.rows.map((row) => (
            <tr class={row.season === 1 ? 'season-one' : undefined}>
              <th scope="row">{row.label}</th>
              {row.cells.map((cell) => (
                <td class="figure">{cell}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </ScrollFrame>
  );
};
