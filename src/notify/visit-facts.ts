import type { BudgetRange } from '../season/money/budget-range.ts';
import type { Visit, VisitState, VisitWorks } from '../season/visit/visit.ts';
import type { VisitReminder } from '../season/visit/visit-reminders.ts';
import type { CalendarDay } from '../units/calendar-day.ts';
import type { VisitMatter } from './matter-rules.ts';
import type { NoticedFence } from './message-facts.ts';

/** When a visit is: whole days, or from an hour (local time at the site) on its first. */
export type VisitDays = Pick<Visit, 'firstDay' | 'lastDay' | 'startsAt'>;

/** What a visit does at one fence of the owner, and what that may come to. */
export interface ToldItem {
  readonly fenceRef: string;
  readonly works: readonly VisitWorks[];
  readonly cost: BudgetRange;
}

/** A visit that an owner is told of: only the owner's fences are in it. */
export interface ToldVisitFacts extends VisitDays {
  readonly uid: string;
  readonly state: VisitState;
  readonly siteName: string;
  readonly place: string;
  readonly crewName: string;
  readonly items: readonly ToldItem[];
  /** When it was, by what the owner was last told; null where nothing was told. */
  readonly before: VisitDays | null;
}

/** What a message about one visit is made from. */
export interface VisitToTell extends ToldVisitFacts {
  readonly matter: VisitMatter;
  readonly currency: string;
  /** Last day on which an answer is of use. */
  readonly answerBy: CalendarDay;
  readonly reminders: readonly VisitReminder['kind'][];
  /**
   * What the owner can do about the day of a proposed visit on the owner's pages: choose it, or, where it goes to fences of others
   * too, mark the days that suit; null where no day is open, or the message leads to no pages.
   */
  readonly dayChoice: 'choose' | 'mark' | null;
  /** The owner's fences of the visit as they stand now; empty where none has a forecast. */
  readonly fences: readonly NoticedFence[];
}
