import type { FC } from 'hono/jsx';
import { seasonTable } from '../../drawing/season-table.ts';
import type { DisplayUnits } from '../../drawing/speed-text.ts';
import type { FenceForecast } from '../../forecast/fence-forecast.ts';
import { ScrollFrame } from '../frame/scroll-frame.tsx';

/** The seasons of a forecast as a table that scrolls in its own frame. */
export const SeasonRows: FC<{ readonly forecast: FenceForecast; readonly units: DisplayUnits }> = ({
  forecast,
  units,
}) => {
  const table = seasonTable(forecast, units);
  return (
    <ScrollFrame label="Seasons of this fence">
      <table class="seasons">
        <caption>
          Middle value, and in brackets the range that holds it in 8 cases of 10. The ruled season is the one running or
          next to open.
        </caption>
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
