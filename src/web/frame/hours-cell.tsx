import { raw } from 'hono/html';
import type { FC } from 'hono/jsx';
import { hoursWords } from '../../drawing/day-words.ts';
import { drawPartsBar } from '../../drawing/parts-bar.ts';
import type { LedgerCell } from '../../season/visit/hours-ledger.ts';

/** Length of the bar of a week [px]. */
const BAR_PX = 116;

/** One cell of hours: what is left in words, what is taken as a bar. */
export const HoursCell: FC<{ readonly cell: LedgerCell }> = ({ cell }) => {
  const { thereAre, confirmed, proposed, left } = cell;
  if (thereAre <= 0 && confirmed + proposed <= 0) return <span class="muted">does not go out</span>;
  return (
    <>
      {left < -0.05
        ? `${hoursWords(-left)} h too many`
        : `${hoursWords(Math.max(0, left))} h of ${hoursWords(thereAre)}`}
      {raw(
        drawPartsBar(
          [
            { amount: confirmed, ink: 'full' },
            { amount: proposed, ink: 'half' },
            ...(left > 0 ? [{ amount: left, ink: 'rest' as const }] : []),
          ],
          thereAre,
          BAR_PX,
        ),
      )}
    </>
  );
};
