import type { InspectionMethod } from '../../forecast/evidence/inspection.ts';
import type { CatalogueKind } from '../../season/catalogue-entry.ts';
import type { VisitState } from '../../season/visit/visit.ts';
import type { VisitReminder } from '../../season/visit/visit-reminders.ts';
import type { PageLanguage } from '../frame/page-language.ts';

/** What can be entered of a post: a column of readings each, without the unit in its name. */
export type EntryField =
  | 'depth'
  | 'sound_to'
  | 'soft_to'
  | 'residual_width'
  | 'residual_circumference'
  | 'broken'
  | 'cavity'
  | 'lean_degrees'
  | 'collar_cracked'
  | 'rail_connection'
  | 'trimmer_cut'
  | 'notes';

/** Words that the phone itself needs, with or without a signal; `{n}` stands for a number. */
interface PhoneWords {
  readonly locale: PageLanguage;
  readonly waitingOne: string;
  readonly waitingMany: string;
  readonly refusedOne: string;
  readonly refusedMany: string;
  readonly noSignal: string;
  readonly sending: string;
  readonly signIn: string;
  readonly signInLink: string;
  readonly otherAccount: string;
  readonly sent: string;
  readonly waiting: string;
  readonly refused: string;
  readonly again: string;
  readonly confirm: string;
  readonly throwAway: string;
  readonly throwAwaySure: string;
  readonly open: string;
  readonly holdsBack: string;
  readonly takeLevel: string;
  readonly levelAsk: string;
  readonly levelNone: string;
  readonly photoAdded: string;
  readonly kept: string;
  readonly notKept: string;
}

/** The words of the crew's pages. */
export interface CrewWords {
  readonly today: string;
  readonly crew: string;
  readonly allCrews: string;
  readonly chooseCrew: string;
  readonly show: string;
  readonly day: (day: string) => string;
  readonly shortDay: (day: string) => string;
  readonly visitsToday: (count: number) => string;
  readonly noCrews: string;
  readonly nothingToday: string;
  readonly nextOn: (day: string) => string;
  readonly leftOver: string;
  readonly leftOverWhy: string;
  readonly nextDays: string;
  readonly nothingAhead: string;
  readonly anyTime: string;
  readonly goesOn: string;
  readonly dayOf: (day: number, days: number) => string;
  readonly state: Readonly<Record<VisitState, string>>;
  readonly directions: string;
  readonly noPlace: string;
  readonly position: string;
  readonly firstThings: string;
  readonly reminder: (reminder: VisitReminder) => string;
  readonly works: Readonly<Record<CatalogueKind, string>>;
  readonly worksText: (kind: CatalogueKind, posts: string, postCount: number) => string;
  readonly gettingThere: string;
  readonly aboutIt: string;
  readonly officeSays: string;
  readonly owner: string;
  readonly materials: string;
  readonly noMaterials: string;
  readonly material: (name: string, unit: string) => string;
  readonly amount: (amount: number, unit: string) => string;
  readonly fences: string;
  readonly fence: (ref: string) => string;
  readonly postCount: (posts: number) => string;
  readonly entered: (read: number, posts: number) => string;
  readonly openFence: (ref: string) => string;
  readonly openVisit: string;
  readonly visitOf: (site: string) => string;
  readonly personHours: (hours: string) => string;
  readonly backToVisit: string;
  readonly backToToday: string;
  readonly consequence: Readonly<Record<string, string>>;
  readonly fenceInShort: (height: string, length: string) => string;
  readonly countedFrom: (end: string) => string;
  readonly finding: (kind: 'closedOff' | 'broken' | 'leaning' | 'crackedCollars' | 'hollow', posts: string) => string;
  readonly method: string;
  readonly methodHint: string;
  readonly useMethod: string;
  readonly methods: Readonly<Record<InspectionMethod, string>>;
  readonly methodFirst: string;
  readonly posts: string;
  readonly post: (post: number) => string;
  readonly along: (length: string) => string;
  readonly before: string;
  readonly neverRead: string;
  readonly believed: (range: string) => string;
  readonly now: string;
  readonly look: string;
  readonly newPostAfter: string;
  readonly asSet: (section: string) => string;
  readonly round: (figure: string) => string;
  readonly condition: Readonly<Record<'broken' | 'leaning' | 'closedOff' | 'collarCracked' | 'sleeved', string>>;
  readonly enter: string;
  readonly change: string;
  readonly field: Readonly<Record<EntryField, string>>;
  readonly fieldHint: Readonly<Partial<Record<EntryField, string>>>;
  /** Said of a length that the post does not have. */
  readonly tooDeep: (most: string) => string;
  readonly notLooked: string;
  readonly yes: string;
  readonly no: string;
  readonly rail: Readonly<Record<'1' | '0.5' | '0', string>>;
  readonly railHint: string;
  readonly save: (post: number) => string;
  readonly sure: string;
  readonly takeBack: string;
  readonly closeOff: string;
  readonly closedOffNow: string;
  readonly closedOffBefore: string;
  readonly undo: string;
  readonly photo: string;
  readonly photos: string;
  readonly addPhoto: string;
  readonly sendPhoto: string;
  readonly photoOf: (where: string, when: string, by: string) => string;
  readonly stored: string;
  readonly doubt: (doubt: string) => string;
  /** Why an entry is not taken, as the checks of the register say it. */
  readonly reason: (reason: string) => string;
  readonly notStored: string;
  readonly refusal: Readonly<
    Record<
      | 'noVisit'
      | 'anotherCrew'
      | 'off'
      | 'fenceNotOnIt'
      | 'noPicture'
      | 'tooLarge'
      | 'otherContent'
      | 'badForm'
      | 'form',
      string
    >
  >;
  readonly almostNothing: string;
  readonly notInspected: (fences: string) => string;
  readonly badPosts: (text: string) => string;
  readonly badHours: (text: string) => string;
  readonly finish: string;
  readonly finishLead: string;
  readonly doneAt: (ref: string) => string;
  readonly atPosts: string;
  readonly somethingElse: string;
  readonly nothingElse: string;
  readonly elseAtPosts: string;
  readonly hours: string;
  readonly hoursHint: (planned: string) => string;
  readonly doneOn: string;
  readonly remarks: string;
  readonly remarksHint: string;
  readonly finishButton: string;
  readonly sureHours: string;
  readonly isDone: string;
  readonly isOff: string;
  readonly doneText: (fence: string, text: string) => string;
  readonly returnedText: (fences: string) => string;
  readonly reading: ReadingWords;
  readonly phone: PhoneWords;
}

/** The parts of what was found at a post; numbers come with their units. */
export interface ReadingWords {
  readonly noRot: string;
  readonly depth: (figure: string) => string;
  readonly width: (figure: string) => string;
  readonly girth: (figure: string) => string;
  readonly soundTo: (figure: string) => string;
  readonly softTo: (figure: string) => string;
  readonly broken: string;
  readonly noHollow: string;
  readonly hollow: (figure: string) => string;
  readonly plumb: string;
  readonly lean: (degrees: string) => string;
  readonly collarCracked: string;
  readonly collarSound: string;
  readonly rail: (percent: number) => string;
  readonly noCut: string;
  readonly cut: (figure: string) => string;
  readonly closedOff: string;
}
