import type { FC } from 'hono/jsx';
import type { FenceStanding } from '../../forecast/fence-forecast.ts';

/** A standing as its word; weight and slant, not colour, tell the worse from the better. */
export const StandingWord: FC<{ readonly standing: FenceStanding }> = ({ standing }) => (
  <span class={`standing-${standing.replaceAll(' ', '-')}`}>{standing}</span>
);
