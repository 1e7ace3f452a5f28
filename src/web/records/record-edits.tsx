import type { FC } from 'hono/jsx';
import type { ExportUnits } from '../../register/csv/csv-field.ts';
import type { RecordEdit } from '../../register/record-edit-store.ts';
import { Moment } from '../frame/moment.tsx';
import { ScrollFrame } from '../frame/scroll-frame.tsx';
import { changedFields } from './changed-fields.ts';

/** Who changed a record on the pages, and what; nothing where nobody did. */
export const RecordEdits: FC<{ readonly edits: readonly RecordEdit[]; readonly units: ExportUnits }> = ({
  edits,
  units,
}) =>
  edits.length === 0 ? null : (
    <>
      <h2 id="edits">Changed on these pages</h2>
      <ScrollFrame label="Changed on these pages">
        <table class="stacked">
          <caption>The newest first; what an import changed is not listed here</caption>
          <thead>
            <tr>
              <th scope="col">When</th>
              <th scope="col">By</th>
              <th scope="col">What</th>
            </tr>
          </thead>
          <tbody>
            {edits.map((edit) => (
              <tr>
                <th scope="row">
                  <Moment at={edit.at} />
                </th>
                <td data-label="By">{edit.by}</td>
                <td data-label="What">
                  {edit.before === null
                    ? 'made'
                    : changedFields(edit.kind, edit.before, edit.after, units).map(({ label, before, after }) => (
                        <span class="change-line">{`${label}: ${before || 'empty'} → ${after || 'empty'}`}</span>
                      ))}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </ScrollFrame>
    </>
  );
