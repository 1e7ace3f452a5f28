import type { FC } from 'hono/jsx';
import type { ChartLanguage } from '../../drawing/chart-words.ts';
import { FENCE_PAGE_WORDS } from './fence-page-words.ts';
import type { HistoryEntry } from './history.ts';

/** What happened to a fence and what is booked, in one line of time, the newest first. */
export const HistoryLine: FC<{ readonly entries: readonly HistoryEntry[]; readonly language: ChartLanguage }> = ({
  entries,
  language,
}) => {
  const words = FENCE_PAGE_WORDS[language];
  return (
    <>
      <h2 id="history">{words.history}</h2>
      {entries.length === 0 ? (
        <p>{words.noHistory}</p>
      ) : (
        <ol class="history">
          {entries.map(({ day, kind, what, more }) => (
            <li>
              <time class="day" datetime={day}>
                {day}
              </time>{' '}
              <span class="kind">{kind}:</span> {what}
              {more !== '' && <span class="small">{more}</span>}
            </li>
          ))}
        </ol>
      )}
    </>
  );
};
