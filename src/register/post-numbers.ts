import { z } from 'zod';
import { RANGES } from './value-ranges.ts';
import { type Refuse, wholeSchema } from './value-schemas.ts';

/** The posts that something was done or happened to: all of them, or their numbers. */
export const postNumbersSchema = z.union([z.literal('all'), z.array(wholeSchema(RANGES.postNumber)).min(1).max(2000)]);

export type PostNumbers = z.infer<typeof postNumbersSchema>;

/** Refuses a list that names a post twice. */
export function refuseRepeatedPosts(posts: PostNumbers, refuse: Refuse): void {
  if (posts !== 'all' && new Set(posts).size < posts.length) {
    refuse('posts', 'a post is named twice; name each once');
  }
}

/** The posts as the database holds them: the word `all`, or numbers parted by blanks. */
export const postsText = (posts: 'all' | readonly number[]): string => (posts === 'all' ? 'all' : posts.join(' '));

/** The posts that a stored text names. */
export const postsFromText = (text: string): PostNumbers => (text === 'all' ? 'all' : text.split(' ').map(Number));
