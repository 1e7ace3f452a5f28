import { raw } from 'hono/html';
import type { FC } from 'hono/jsx';
import type { ChartLanguage } from '../../drawing/chart-words.ts';
import { sensitivityBarsSvg } from '../../drawing/sensitivity-bars.ts';
import { type RowEnd, sensitivityRows } from '../../drawing/sensitivity-rows.ts';
import { unknownFirst } from '../../drawing/sensitivity-sentences.ts';
import { SENSITIVITY_SENTENCES } from '../../drawing/sensitivity-sentences-es.ts';
import type { DisplayUnits } from '../../drawing/speed-text.ts';
import type { Reasons } from '../../forecast/reasons.ts';
import type { Sensitivity } from '../../forecast/sensitivity.ts';
import { ScrollFrame } from '../frame/scroll-frame.tsx';
import { REASONS_WORDS } from './reasons-words.ts';

/** Drawn for wide, middling (paper too) and narrow pages; the style sheet shows one. */
const WIDTHS = [
  { name: 'wide', widthPx: 1080 },
  { name: 'middle', widthPx: 680 },
  { name: 'narrow', widthPx: 358 },
] as const;

interface Weighed {
  readonly sensitivity: Sensitivity;
  readonly units: DisplayUnits;
  readonly language: ChartLanguage;
}

/** Which inputs decide when a fence goes short: in sentences, as bars, and as a table with what is not known first. */
export const WeighsMost: FC<{
  readonly sensitivity: Sensitivity;
  readonly unknowns: Reasons['unknowns'];
  readonly units: DisplayUnits;
  readonly language: ChartLanguage;
}> = ({ sensitivity, unknowns, units, language }) => (
  <>
    <h2 id="weighs">{REASONS_WORDS[language].weighs.heading}</h2>
    <p>{SENSITIVITY_SENTENCES[language].weighsMost(sensitivity, unknowns, units).join(' ')}</p>
    <figure class="chart">
      {WIDTHS.map(({ name, widthPx }) => (
        <div class={`chart-${name}`}>
          {raw(sensitivityBarsSvg(sensitivity, { units, language, widthPx, idPrefix: `weighs-${name}` }))}
        </div>
      ))}
      <figcaption>{REASONS_WORDS[language].weighs.caption}</figcaption>
    </figure>
    {sensitivity.bars.length > 0 && <WeighedTable sensitivity={sensitivity} units={units} language={language} />}
  </>
);

const endText = ({ value, year, note }: RowEnd, asRecorded: string): string =>
  `${value === '' ? asRecorded : value}: ${yearText(year, note)}`;

/** The year with what it does not say; the note alone where there is no year. */
const yearText = (year: number | null, note: string): string =>
  year === null ? note.replace(/^ \(|\)$/g, '') : `${Math.floor(year)}${note}`;

const WeighedTable: FC<Weighed> = ({ sensitivity, units, language }) => {
  const { rows, words } = sensitivityRows(sensitivity, units, language);
  const { weighs } = REASONS_WORDS[language];
  return (
    <details>
      <summary>{weighs.table}</summary>
      <ScrollFrame label={weighs.tableLabel}>
        <table class="stacked">
          <caption>{`${words.title}. ${words.middle}. ${words.without}`.trim()}</caption>
          <thead>
            <tr>
              {weighs.columns.map((heading) => (
                <th scope="col">{heading}</th>
              ))}
              <th scope="col" class="figure">
                {words.swing}
              </th>
            </tr>
          </thead>
          <tbody>
            {unknownFirst(rows).map(({ input, narrowedBy, sooner, later, swing }) => (
              <tr>
                <th scope="row">{input}</th>
                <td data-label={weighs.columns[1]}>{SENSITIVITY_SENTENCES[language].known({ narrowedBy })}</td>
                <td data-label={weighs.columns[2]}>{endText(sooner, weighs.asRecorded)}</td>
                <td data-label={weighs.columns[3]}>{endText(later, weighs.asRecorded)}</td>
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
