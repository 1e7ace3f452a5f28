import type { FenceStanding, UnknownInput } from '../forecast/fence-forecast.ts';
import type { FenceNews } from './fence-news.ts';
import type { Matter } from './matter-rules.ts';
import type { OfficeFacts } from './message-facts.ts';
import type { OfferedWorks, OfferKind } from './works-offer.ts';

/** What one language says of each matter. */
export interface MatterWords {
  readonly subject: Readonly<Record<Matter, (news: FenceNews) => string>>;
  readonly changed: Readonly<Record<Matter, (news: FenceNews) => string>>;
  readonly suggestion: Readonly<Record<Matter, (by: string, strengthFell: boolean) => string>>;
  /** In a cell of a digest's table. */
  readonly inShort: Readonly<Record<Matter, string>>;
}

/** The words of one language: every sentence that an owner reads. */
export interface MessageWords {
  readonly standing: Readonly<Record<FenceStanding, string>>;
  readonly unknown: Readonly<Record<UnknownInput['input'], string>>;
  readonly matter: MatterWords;
  /** When a further suggestion of the same message is due. */
  readonly sameTime: string;
  /** What was found that makes a fence dangerous, and to keep away; null where nothing was. */
  readonly danger: (news: FenceNews) => string | null;
  /** The sentence after the greeting, where the office has not written its own. */
  readonly covering: (fences: number) => string;
  readonly greeting: (name: string) => string;
  readonly about: (news: FenceNews) => string;
  readonly answer: (news: FenceNews) => readonly [string, string];
  readonly ends: (news: FenceNews) => string | null;
  readonly by: (news: FenceNews) => string;
  readonly nothingDone: (news: FenceNews) => readonly string[];
  /** What works may cost: one line a kind, and what such a figure is. */
  readonly offered: (works: OfferedWorks, range: string) => string;
  readonly budget: string;
  /** What to do, by when and at what cost, in one line of the answer. */
  readonly wayOut: (by: string, offers: readonly { readonly kind: OfferKind; readonly range: string }[]) => string;
  /** What a snap costs more than works in good time, from an amount in words. */
  readonly waiting: (extra: string) => string;
  readonly sureness: (news: FenceNews) => readonly string[];
  /** What all speeds rest on. */
  readonly basis: string;
  /** Where a design gust comes from. */
  readonly designGust: (news: Pick<FenceNews, 'shouldHold' | 'shouldHoldYears'>) => string;
  readonly unknowns: (inputs: readonly string[]) => string;
  readonly leanAt: (news: FenceNews) => string | null;
  /** What leaning means, after the speeds at which it comes. */
  readonly leanMeans: string;
  readonly quote: string;
  readonly call: (office: OfficeFacts, byMail: boolean) => string;
  readonly pictureAlt: (news: FenceNews) => string;
  readonly why: (office: OfficeFacts, byMail: boolean) => string;
  readonly headings: {
    readonly changed: string;
    readonly suggestion: string;
    readonly nothingDone: string;
    readonly sureness: string;
    readonly basis: string;
    readonly ground: string;
    readonly cost: string;
    readonly call: string;
    readonly cautions: string;
    readonly table: string;
    readonly worst: string;
  };
  readonly digest: {
    readonly subject: (fences: number, short: number) => string;
    readonly answer: (
      fences: number,
      counts: Readonly<Record<FenceStanding, number>>,
      furthest: FenceNews,
    ) => readonly [string, string];
    readonly columns: readonly [string, string, string, string, string, string, string];
    readonly notShort: string;
    /** Since when a fence is short that has no year ahead: short from new, and short. */
    readonly sinceBuilt: string;
    readonly now: string;
    readonly noCurve: string;
    readonly csv: string;
    /** That a list or table goes on in the file. */
    readonly more: (count: number) => string;
    readonly moreFences: (count: number) => string;
    readonly total: (fences: number, range: string) => string;
    readonly waiting: (extra: string) => string;
    /** The fences of a digest at which something dangerous was found. */
    readonly danger: (fences: readonly FenceNews[], all: number) => string;
  };
}
