import type { FC } from 'hono/jsx';
import type { ChartLanguage } from '../../drawing/chart-words.ts';
import type { FenceStanding } from '../../forecast/fence-forecast.ts';
import { LIST_WORDS } from './list-words.ts';

/** A standing as its word; weight and slant, not colour, tell the worse from the better. */
export const StandingWord: FC<{ readonly standing: FenceStanding; readonly language?: ChartLanguage }> = ({
  standing,
  language = 'en',
}) => <span class={`standing-${standing.replaceAll(' ', '-')}`}>{LIST_WORDS[language].standings[standing]}</span>;
