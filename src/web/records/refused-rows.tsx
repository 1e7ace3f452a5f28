import type { FC } from 'hono/jsx';
import type { ImportRemark } from '../../register/csv/import-report.ts';
import type { FirstOf } from '../../service/import-look.ts';
import { numberRanges } from '../frame/number-ranges.ts';
import { ScrollFrame } from '../frame/scroll-frame.tsx';

/** Longest part of a value that is repeated [characters]. */
const LONGEST_VALUE = 80;

const shown = (value: string): string => (value.length > LONGEST_VALUE ? `${value.slice(0, LONGEST_VALUE)}…` : value);

/** A reason parted from the way out of it, which the program puts after the first semicolon. */
function reasonAndWayOut(reason: string): { readonly reason: string; readonly wayOut: string } {
  const [why = '', ...rest] = reason.split('; ');
  return { reason: why, wayOut: rest.join('; ') };
}

/** Remarks about rows, one a line: where, what it says, why, and the way out. */
export const RemarkTable: FC<{ readonly remarks: FirstOf<ImportRemark>; readonly caption: string }> = ({
  remarks,
  caption,
}) => (
  <ScrollFrame label={caption}>
    <table class="stacked remarks">
      <caption>
        {caption}
        {remarks.total > remarks.first.length && `, the first ${remarks.first.length} of ${remarks.total}`}
      </caption>
      <thead>
        <tr>
          <th scope="col">Where</th>
          <th scope="col">Field</th>
          <th scope="col">It says</th>
          <th scope="col">Why not</th>
          <th scope="col">Way out</th>
        </tr>
      </thead>
      <tbody>
        {remarks.first.map((remark) => {
          const { reason, wayOut } = reasonAndWayOut(remark.reason);
          return (
            <tr>
              <th scope="row">
                {`${remark.file}, line ${remark.line}`}
                {remark.lines && remark.lines.length > 1 && (
                  <span class="small">{`lines ${shown(numberRanges(remark.lines))}`}</span>
                )}
              </th>
              <td data-label="Field">{remark.column || 'the whole row'}</td>
              <td data-label="It says">{shown(remark.value) || <span class="muted">nothing</span>}</td>
              <td data-label="Why not">{reason}</td>
              <td data-label="Way out">{wayOut || '–'}</td>
            </tr>
          );
        })}
      </tbody>
    </table>
  </ScrollFrame>
);
