import type { CatalogueKind } from '../season/catalogue-entry.ts';
import type { VisitState } from '../season/visit/visit.ts';
import type { VisitReminder } from '../season/visit/visit-reminders.ts';
import type { CalendarDay } from '../units/calendar-day.ts';
import type { VisitMatter } from './matter-rules.ts';
import type { VisitDays, VisitToTell } from './visit-facts.ts';

/** What one language says of visits. */
export interface VisitWords {
  readonly works: Readonly<Record<CatalogueKind, string>>;
  /** Posts by their numbers: `posts 2–4`. */
  readonly posts: (numbers: string, count: number) => string;
  readonly morePosts: (count: number) => string;
  /** `on Wednesday, March 3, 2027`. */
  readonly when: (days: VisitDays) => string;
  readonly fences: (refs: readonly string[]) => string;
  readonly subject: Readonly<Record<VisitMatter, (visit: VisitToTell, fences: string, when: string) => string>>;
  /** The first two lines: the answer. */
  readonly answer: Readonly<Record<VisitMatter, (visit: VisitToTell, when: string) => readonly [string, string]>>;
  readonly covering: Readonly<Record<VisitMatter, string>>;
  readonly next: Readonly<Record<VisitMatter, (answerBy: CalendarDay) => string>>;
  readonly dayChoice: Readonly<Record<'choose' | 'mark', string>>;
  /** Of several visits in one message. */
  readonly several: {
    /** @param matter the matter of all of them; null where they are told of different things */
    readonly subject: (matter: VisitMatter | null, visits: number, first: CalendarDay, last: CalendarDay) => string;
    /** How many visits a matter is told of. */
    readonly counted: (matter: VisitMatter, visits: number) => string;
    readonly covering: string;
    readonly heading: string;
    readonly open: (visit: Pick<VisitToTell, 'siteName'>, when: string) => string;
    readonly openNote: string;
    readonly calendar: string;
  };
  readonly budget: string;
  readonly totalCost: (range: string) => string;
  readonly reminder: Readonly<Record<VisitReminder['kind'], string>>;
  readonly onTheDay: readonly string[];
  readonly calendar: {
    /** How an entry begins, by where the visit stands. */
    readonly state: Readonly<Record<VisitState, string>>;
    readonly request: string;
    readonly cancel: string;
  };
  readonly headings: {
    readonly works: string;
    readonly next: string;
    readonly onTheDay: string;
    readonly why: string;
  };
  readonly board: {
    readonly subject: (visits: number, sites: number, firstDay: CalendarDay, lastDay: CalendarDay) => string;
    readonly answer: (parts: {
      readonly visits: number;
      readonly fences: number;
      readonly sites: number;
      readonly firstDay: CalendarDay;
      readonly lastDay: CalendarDay;
      readonly total: string;
    }) => readonly [string, string];
    readonly nothingPlanned: readonly [string, string];
    readonly covering: string;
    readonly siteCost: (site: string, range: string, lastDay: CalendarDay) => string;
    readonly columns: readonly [string, string, string];
    readonly standing: { readonly proposed: string; readonly confirmed: string };
    readonly noLonger: string;
    readonly next: string;
    readonly csv: string;
    readonly more: (rows: number) => string;
    readonly headings: {
      readonly planned: string;
      readonly noLonger: string;
      readonly next: string;
      readonly why: string;
    };
  };
}
