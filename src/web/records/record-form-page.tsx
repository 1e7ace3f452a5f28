import type { FC } from 'hono/jsx';
import { FormAlert, TokenField } from '../frame/form-field.tsx';
import type { PageFrame } from '../frame/page-frame.ts';
import { PageShell } from '../frame/page-shell.tsx';
import type { ChangedField } from './changed-fields.ts';
import { FieldTable } from './changed-table.tsx';
import { EDITED_KINDS, recordPath } from './edited-kinds.ts';
import { KIND_WORDS } from './kind-words.ts';
import { loneFaults, RecordFields, type RecordFieldsProps } from './record-fields.tsx';

/** Properties of the page with a record's form. */
export interface RecordFormProps extends Omit<RecordFieldsProps, 'isNew'> {
  readonly frame: PageFrame;
  readonly formToken: string;
  /** Null where a new one is made. */
  readonly name: string | null;
  /** Print of the record that the form is filled with; null for a new one. */
  readonly opened: string | null;
  /** What somebody else made of the record meanwhile, beside what was sent; null where nobody did. */
  readonly clash: readonly ChangedField[] | null;
}

/** The page with the form that makes or changes one record. */
export const RecordFormPage: FC<RecordFormProps> = (props) => {
  const { frame, formToken, kind, name, opened, clash, faults } = props;
  const { one } = KIND_WORDS[kind];
  const about = EDITED_KINDS[kind];
  const title = name === null ? `New ${one}` : `Change ${one} ${name}`;
  const alone = loneFaults(props);
  const asked = faults.some(({ question }) => question === true);
  return (
    <PageShell title={title} section="records" frame={frame} cautions={false}>
      <p class="back">
        {name === null ? (
          <a href={about?.list}>{about?.listName}</a>
        ) : (
          <a href={recordPath(kind, name)}>{`Back to ${one} ${name}`}</a>
        )}
      </p>
      <h1>{title}</h1>
      <p>{about?.note}</p>
      {faults.length > 0 && (
        <FormAlert>
          Nothing was changed.{' '}
          {alone.length > 0 ? alone.map(({ reason }) => reason).join(' · ') : 'See below what to correct.'}
        </FormAlert>
      )}
      {clash && (
        <>
          <FormAlert>
            {name === null
              ? `Nothing was changed: there is a record of that name already. To change it, save again; else give this one another name.`
              : 'Nothing was changed: somebody changed this record since you opened the form. What you wrote is still below. To put it in place of theirs, save again.'}
          </FormAlert>
          <FieldTable
            fields={clash}
            caption="Where the two differ"
            headings={['In the register now', 'What you wrote']}
          />
        </>
      )}
      <form class="tall" method="post">
        <TokenField token={formToken} />
        <input type="hidden" name="opened_print" value={opened ?? ''} />
        <RecordFields {...props} isNew={name === null} />
        {asked && (
          <div class="tick">
            <input id="confirmed" type="checkbox" name="confirmed" value="yes" />
            <label for="confirmed">It is so: take it as it stands</label>
          </div>
        )}
        <button type="submit">{name === null ? `Add the ${one}` : 'Save'}</button>
      </form>
    </PageShell>
  );
};
