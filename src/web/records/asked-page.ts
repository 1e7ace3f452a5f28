import type { PageContext } from '../access/visitor.ts';

const LONGEST_SEARCH = 100;

/** Which page of a list is asked for, and the text that narrows it; what makes no sense is the first page of all. */
export function askedPage(context: PageContext): { readonly text: string; readonly page: number } {
  const page = Number(context.req.query('page') ?? '1');
  return {
    text: (context.req.query('q') ?? '').trim().slice(0, LONGEST_SEARCH),
    page: Number.isInteger(page) && page > 0 ? page : 1,
  };
}
