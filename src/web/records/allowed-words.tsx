import type { FC } from 'hono/jsx';
import { RECORD_FIELDS } from '../../register/csv/record-columns.ts';
import { RECORD_KINDS, type RecordKind } from '../../register/record-store.ts';
import { KIND_WORDS } from './kind-words.ts';

/** The columns of a kind whose cells hold one of a few words, with these. */
const wordColumns = (kind: RecordKind): readonly { readonly column: string; readonly words: readonly string[] }[] =>
  RECORD_FIELDS[kind].flatMap((field) => (field.choices ? [{ column: field.column('us'), words: field.choices }] : []));

/** Which words a cell may hold, column by column, for every kind of file that has such columns. */
export const AllowedWords: FC = () => (
  <>
    <h2 id="words">Words that a cell may hold</h2>
    <p>Some columns hold one of a few words, written as they stand here.</p>
    {RECORD_KINDS.map((kind) => ({ kind, columns: wordColumns(kind) }))
      .filter(({ columns }) => columns.length > 0)
      .map(({ kind, columns }) => (
        <details>
          <summary>{`${kind}.csv: ${KIND_WORDS[kind].several}`}</summary>
          <dl class="facts wide">
            {columns.map(({ column, words }) => (
              <div>
                <dt class="hash">{column}</dt>
                <dd>{words.join(', ')}</dd>
              </div>
            ))}
          </dl>
        </details>
      ))}
  </>
);
