import { raw } from 'hono/html';
import type { FC } from 'hono/jsx';
import { sensitivityBarsSvg } from '../../drawing/sensitivity-bars.ts';
import { type RowEnd, sensitivityRows } from '../../drawing/sensitivity-rows.ts';
import { knownText, unknownFirst, weighsMostSentences } from '../../drawing/sensitivity-sentences.ts';
import type { DisplayUnits } from '../../drawing/speed-text.ts';
import type { Reasons } from '../../forecast/reasons.ts';
import type { Sensitivity } from '../../forecast/sensitivity.ts';
import { ScrollFrame } from '../frame/scroll-frame.tsx';

/** Drawn for wide, middling (paper too) and narrow pages; the style sheet shows one. */
const WIDTHS = [
  { name: 'wide', widthPx: 1080 },
  { name: 'middle', widthPx: 680 },
  { name: 'narrow', widthPx: 358 },
] as const;

interface Weighed {
  readonly sensitivity: Sensitivity;
  readonly units: DisplayUnits;
}

/** Which inputs decide when a fence goes short: in sentences, as bars, and as a table with what is not known first. */
export const WeighsMost: FC<{
  readonly sensitivity: Sensitivity;
  readonly unknowns: Reasons['unknowns'];
  readonly units: DisplayUnits;
}> = ({ sensitivity, unknowns, units }) => (
  <>
    <h2 id="weighs">What weighs most</h2>
    <p>{weighsMostSentences(sensitivity, unknowns, units).join(' ')}</p>
    <figure class="chart">
      {WIDTHS.map(({ name, widthPx }) => (
        <div class={`chart-${name}`}>
          {raw(sensitivityBarsSvg(sensitivity, { units, widthPx, idPrefix: `weighs-${name}` }))}
        </div>
      ))}
      <figcaption>
        When the fence goes short, with one input at a time moved and all others at their middle or as recorded. The
        short season of the forecast weighs all that is not known together, so it can lie a season or two beside “as it
        stands”. The picture looks at the posts as they stand; readings are not weighed anew for a moved input.
      </figcaption>
    </figure>
    {sensitivity.bars.length > 0 && <WeighedTable sensitivity={sensitivity} units={units} />}
  </>
);

const endText = ({ value, year, note }: RowEnd): string =>
  value === '' ? `as recorded: ${yearText(year, note)}` : `${value}: ${yearText(year, note)}`;

/** The year with what it does not say; the note alone where there is no year. */
const yearText = (year: number | null, note: string): string =>
  year === null ? note.replace(/^ \(|\)$/g, '') : `${Math.floor(year)}${note}`;

const WeighedTable: FC<Weighed> = ({ sensitivity, units }) => {
  const { rows, words } = sensitivityRows(sensitivity, units);
  return (
    <details>
      <summary>The same as a table, input by input</summary>
      <ScrollFrame label="What moves the short season">
        <table class="stacked">
          <caption>{`${words.title}. ${words.middle}. ${words.without}`.trim()}</caption>
          <thead>
            <tr>
              <th scope="col">Input</th>
              <th scope="col">Known</th>
              <th scope="col">Sooner</th>
              <th scope="col">Later</th>
              <th scope="col" class="figure">
                {words.swing}
              </th>
            </tr>
          </thead>
          <tbody>
            {unknownFirst(rows).map(({ input, narrowedBy, sooner, later, swing }) => (
              <tr>
                <th scope="row">{input}</th>
                <td data-label="Known">{knownText({ narrowedBy })}</td>
                <td data-label="Sooner">{endText(sooner)}</td>
                <td data-label="Later">{endText(later)}</td>
                <td data-label={words.swing} class="figure">
                  {swing}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </ScrollFrame>
    </details>
  );
};
