import { onceInWords } from '../drawing/quantity-text.ts';
import { type FenceNews, worstOnly } from './fence-news.ts';

/** Which fence, and where: how subjects begin. */
export const at = (news: FenceNews): string => `Fence ${news.ref} at ${news.site}`;
/** What its posts are called. */
export const posts = (news: FenceNews): string => (news.judged === 'line' ? 'line posts' : 'posts');
/** How often a gust of that return period [a] comes. */
export const once = (years: number): string => onceInWords(years, 'en');

/** That an improvement is too small to count, from the speed it holds as a text. */
export const keptShort = (holds: string): string =>
  `holds ${holds}, less than 3 % above the design gust, and stays counted short`;

/** Texts as one list; empty ones are left out. */
export const listed = (parts: readonly string[]): string => {
  const told = parts.filter(Boolean);
  return told.length < 2 ? told.join('') : `${told.slice(0, -1).join(', ')} and ${told[told.length - 1]}`;
};

/** What was found at which posts: `posts 4 and 7 are broken, post 9 leans`. */
export const foundAt = ({ found }: Pick<FenceNews, 'found'>): string => {
  const at = (posts: readonly number[], one: string, many: string): string =>
    posts.length === 0
      ? ''
      : posts.length === 1
        ? `post ${posts[0]} ${one}`
        : `posts ${listed(posts.map(String))} ${many}`;
  const { broken, leaning, closedOff } = worstOnly(found);
  return listed([
    at(broken, 'is broken', 'are broken'),
    at(leaning, 'leans', 'lean'),
    at(closedOff, 'is closed off', 'are closed off'),
  ]);
};
