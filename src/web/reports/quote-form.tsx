import type { FC } from 'hono/jsx';
import { worksNameIn } from '../../drawing/what-if-words.ts';
import type { CatalogueKind } from '../../season/catalogue-entry.ts';
import { SHIPPED_CATALOGUE } from '../../season/works-catalogue.ts';
import { type WantedWorks, WHOLE_FENCE } from '../../service/fence-quote.ts';
import { ChoiceField, FormAlert, FormField, TickFields } from '../frame/form-field.tsx';
import type { PageFrame } from '../frame/page-frame.ts';
import { PageShell } from '../frame/page-shell.tsx';

const KINDS = Object.keys(SHIPPED_CATALOGUE) as readonly CatalogueKind[];
const MOST_POSTS = 2000;

/** What a quote is asked for in an address, or what is wrong with it. */
export interface QuoteQuery {
  readonly works: readonly WantedWorks[];
  readonly posts: string;
  readonly taxPercent: number;
  readonly validDays: number;
  readonly fault: string | null;
}

/** Numbers of posts from a text such as `3, 4, 7-9`; null where it is none. */
function postsOf(text: string): readonly number[] | null {
  const numbers = text
    .split(/[\s,]+/)
    .filter((part) => part !== '')
    .flatMap((part) => {
      const [, from = '', to = from] = /^(\d{1,4})(?:[-–](\d{1,4}))?$/.exec(part) ?? [];
      const [first, last] = [Number(from), Number(to)];
      if (from === '' || first < 1 || last < first || last > MOST_POSTS) return [Number.NaN];
      return Array.from({ length: last - first + 1 }, (_, index) => first + index);
    });
  return numbers.some(Number.isNaN) ? null : [...new Set(numbers)];
}

const numberFrom = (text: string | null, other: number): number =>
  text === null || text.trim() === '' ? other : Number(text);

/** Reads what is asked for. */
export function readQuoteQuery(params: URLSearchParams): QuoteQuery {
  const asked = params.getAll('works');
  const posts = params.get('posts')?.trim() ?? '';
  const numbers = postsOf(posts);
  const [taxPercent, validDays] = [numberFrom(params.get('tax'), 0), numberFrom(params.get('days'), 30)];
  const stray = asked.find((kind) => !(KINDS as readonly string[]).includes(kind));
  const faults = [
    ...(stray === undefined ? [] : [`There are no works called ${JSON.stringify(stray)}.`]),
    ...(numbers === null ? [`Posts: ${JSON.stringify(posts)} are no numbers of posts; write them as 3, 4, 7-9.`] : []),
    ...(taxPercent >= 0 && taxPercent <= 100 ? [] : ['Tax: write per cent from 0 to 100.']),
    ...(Number.isInteger(validDays) && validDays >= 0 && validDays <= 365
      ? []
      : ['Days: write a whole number from 0 to 365.']),
  ];
  return {
    works: KINDS.filter((kind) => asked.includes(kind)).map((kind) => ({
      kind,
      posts: WHOLE_FENCE.has(kind) || numbers === null || numbers.length === 0 ? 'all' : numbers,
    })),
    posts,
    taxPercent,
    validDays,
    fault: faults[0] ?? null,
  };
}

/** The page on which the works of a quote are chosen. */
export const QuoteForm: FC<{
  readonly fenceRef: string;
  readonly siteName: string;
  readonly query: QuoteQuery;
  readonly fault: string | null;
  readonly frame: PageFrame;
}> = ({ fenceRef, siteName, query, fault, frame }) => (
  <PageShell title={`Quote for fence ${fenceRef}`} section="documents" frame={frame} cautions={false}>
    <p class="back">
      <a href={`/documents?fence=${encodeURIComponent(fenceRef)}`}>Documents of fence {fenceRef}</a>
    </p>
    <h1>{`Quote for fence ${fenceRef}`}</h1>
    <p class="where">{siteName}</p>
    {fault && <FormAlert>{fault}</FormAlert>}
    <form class="tall" method="get" action={`/fences/${encodeURIComponent(fenceRef)}/quote`}>
      <TickFields
        name="works"
        legend="Works"
        ticked={query.works.map(({ kind }) => kind)}
        choices={KINDS.map((kind) => [kind, worksNameIn(kind, 'en')] as const)}
      />
      <FormField
        name="posts"
        label="Posts"
        value={query.posts}
        hint="As 3, 4, 7-9; empty for every post at which the works make sense."
        required={false}
      />
      <FormField name="tax" label="Tax, per cent" value={String(query.taxPercent)} required={false} />
      <FormField
        name="days"
        label="Days for which it may be accepted"
        value={String(query.validDays)}
        required={false}
      />
      <ChoiceField
        name="lang"
        label="Language"
        chosen=""
        choices={[
          ['', "The owner's"],
          ['en', 'English'],
          ['es', 'Español'],
        ]}
      />
      <button type="submit">Draw up the quote</button>
    </form>
  </PageShell>
);
