import type { DisplayUnits } from '../drawing/speed-text.ts';
import type { FenceForecast, FenceStanding } from '../forecast/fence-forecast.ts';
import type { CalendarDay } from '../units/calendar-day.ts';
import type { Renewal } from './generation.ts';
import type { Matter } from './matter-rules.ts';
import type { WorksGain } from './works-gain.ts';
import type { WorksOffer } from './works-offer.ts';

/** Languages in which owners are written to. */
export type MessageLanguage = 'en' | 'es';

/** The office that writes: who to call, and where an answer goes. */
export interface OfficeFacts {
  /** Null where the office gave no name. */
  readonly name: string | null;
  /** Null where the office gave no number: the mail then names the address only. */
  readonly phone: string | null;
  readonly email: string;
  /** Where it is found; null where it did not say. */
  readonly postalAddress: string | null;
}

/** Where a message leads. */
export interface MessageLinks {
  /** Address of the owner's pages, without a slash at its end. */
  readonly pages: string;
  /** Last day on which the links open, in words. */
  readonly until: string;
}

/** The owner who is written to. */
export interface RecipientFacts {
  readonly name: string;
  readonly language: MessageLanguage;
  /** Where a printed letter goes and the day it is dated; null for a mail. */
  readonly letter: { readonly postalAddress: string; readonly day: CalendarDay } | null;
  /** The sentence after the greeting, in the office's own words; null for the usual one. */
  readonly covering: string | null;
  /** Where the owner can answer; left out where nowhere, as in a letter. */
  readonly links?: MessageLinks;
}

/** One fence that a message is about. */
export interface NoticedFence {
  readonly forecast: FenceForecast;
  /** Standings after the margin an improvement has to pass. */
  readonly standing: FenceStanding;
  readonly endsStanding: FenceStanding | null;
  readonly siteName: string;
  readonly place: string;
  readonly units: DisplayUnits;
  readonly matters: readonly Matter[];
  /** True where this is the first the owner hears of the fence: only then is the lean speed mentioned. */
  readonly first: boolean;
  /** The calendar day at the site. */
  readonly today: CalendarDay;
  /** Last day of the site's season, `MM-DD`. */
  readonly seasonCloses: string;
  /** The works that last renewed its posts; null where it is as built. */
  readonly renewal: Renewal | null;
  /** Label of the season that a reminder is about; null where there is none. */
  readonly remindedSeason: string | null;
  /** What works gained; null where none are told. */
  readonly gain: WorksGain | null;
  /** What works may cost here; null where that is not known. */
  readonly offer: WorksOffer | null;
}

/** A picture that a message shows inline. */
export interface MessagePicture {
  /** Content id, unique within the message. */
  readonly cid: string;
  readonly svg: string;
  /** What the picture shows, in words. */
  readonly alt: string;
  /** Width at which it is shown [px]. */
  readonly widthPx: number;
}

/** A file that a message carries. */
export interface MessageFile {
  readonly name: string;
  readonly contentType: string;
  readonly text: string;
}

/** A finished message, before it becomes bytes. */
export interface OwnerMessage {
  readonly subject: string;
  readonly text: string;
  readonly html: string;
  readonly pictures: readonly MessagePicture[];
  readonly files: readonly MessageFile[];
}
