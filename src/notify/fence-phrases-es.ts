import { onceInWords } from '../drawing/quantity-text.ts';
import { type FenceNews, worstOnly } from './fence-news.ts';

/** Which fence, and where: how subjects begin. */
export const at = (news: FenceNews): string => `Cerca ${news.ref} en ${news.site}`;
/** What its posts are called. */
export const posts = (news: FenceNews): string => (news.judged === 'line' ? 'postes de línea' : 'postes');
/** How often a gust of that return period [a] comes. */
export const once = (years: number): string => onceInWords(years, 'es');

/** That an improvement is too small to count, from the speed it holds as a text. */
export const keptShort = (holds: string): string =>
  `aguanta ${holds}, menos del 3 % por encima de la ráfaga de diseño, y sigue contando como insuficiente`;

/** Texts as one list; empty ones are left out. */
export const listed = (parts: readonly string[]): string => {
  const told = parts.filter(Boolean);
  return told.length < 2 ? told.join('') : `${told.slice(0, -1).join(', ')} y ${told[told.length - 1]}`;
};

/** What was found at which posts. */
export const foundAt = ({ found }: Pick<FenceNews, 'found'>): string => {
  const at = (posts: readonly number[], one: string, many: string): string =>
    posts.length === 0
      ? ''
      : posts.length === 1
        ? `el poste ${posts[0]} ${one}`
        : `los postes ${listed(posts.map(String))} ${many}`;
  const { broken, leaning, closedOff } = worstOnly(found);
  return listed([
    at(broken, 'está roto', 'están rotos'),
    at(leaning, 'está inclinado', 'están inclinados'),
    at(closedOff, 'está acordonado', 'están acordonados'),
  ]);
};
