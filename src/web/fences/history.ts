import { DateTime } from 'luxon';
import type { ChartLanguage } from '../../drawing/chart-words.ts';
import { heldText } from '../../drawing/held-text.ts';
import { foundAtPost, stormDid } from '../../drawing/report/seen-texts.ts';
import { type DisplayUnits, speedText } from '../../drawing/speed-text.ts';
import { visitItemText } from '../../drawing/visit-words.ts';
import type { Works } from '../../forecast/works.ts';
import type { FenceEvidence } from '../../register/evidence-store.ts';
import type { FenceVisit, ToldNotice } from '../../register/fence-history.ts';
import { readingFacts } from '../../register/reading-record.ts';
import type { StandingTurn } from '../../register/standing-history.ts';
import { dayInZone } from '../../service/clock.ts';
import { LIST_WORDS } from './list-words.ts';
import { worksText } from './record-words.ts';

/** What is known of the past of a fence, and of the visits ahead of it. */
export interface HistorySources {
  readonly evidence: FenceEvidence;
  readonly works: readonly Works[];
  readonly standings: readonly StandingTurn[];
  /** Empty for whoever is not shown them. */
  readonly notices: readonly ToldNotice[];
  readonly visits: readonly FenceVisit[];
}

/** One thing that happened to a fence. */
export interface HistoryEntry {
  readonly day: string;
  readonly kind: string;
  readonly what: string;
  readonly more: string;
}

/** The kinds of things in a history, by language. */
const KINDS = {
  en: {
    inspection: 'Inspection',
    storm: 'Storm',
    works: 'Works',
    standing: 'Standing',
    ends: 'Ends',
    notice: 'Notice',
    visit: 'Visit',
    nothing: 'nothing recorded',
    posts: (count: number): string => (count === 1 ? '1 post read' : `${count} posts read`),
    gust: 'gust',
    first: (standing: string): string => `${standing}, as first computed`,
    change: (before: string, after: string): string => `${before}, then ${after}`,
    held: (snap: string, gust: string): string => `it held ${snap}; its design gust was ${gust}`,
    visits: { proposed: 'proposed', confirmed: 'booked', done: 'done', missed: 'missed', cancelled: 'called off' },
  },
  es: {
    inspection: 'Inspección',
    storm: 'Tormenta',
    works: 'Trabajos',
    standing: 'Estado',
    ends: 'Extremos',
    notice: 'Aviso',
    visit: 'Visita',
    nothing: 'nada anotado',
    posts: (count: number): string => (count === 1 ? '1 poste medido' : `${count} postes medidos`),
    gust: 'ráfaga',
    first: (standing: string): string => `${standing}, al calcularse por primera vez`,
    change: (before: string, after: string): string => `${before}, después ${after}`,
    held: (snap: string, gust: string): string => `aguantaba ${snap}; su ráfaga de diseño era ${gust}`,
    visits: {
      proposed: 'propuesta',
      confirmed: 'acordada',
      done: 'hecha',
      missed: 'no se hizo',
      cancelled: 'anulada',
    },
  },
} as const;

function noticeState({ voidReason, held, message }: ToldNotice, dayOf: (moment: string) => string): string {
  if (voidReason !== null) return `not told: ${voidReason}`;
  if (message === null) return held ? 'held for the office' : 'not written yet';
  switch (message.state) {
    case 'sent':
      return message.sentAt === null ? 'sent' : `sent ${dayOf(message.sentAt)}`;
    case 'queued':
    case 'leased':
      return 'on its way';
    case 'parked':
      return 'refused by the mail server';
    case 'to print':
      return 'a letter to print';
    case 'cancelled':
      return 'taken out of the queue';
  }
}

/** Everything that is known to have happened to a fence, and what is booked, the newest first. */
export function fenceHistory(
  { evidence, works, standings, notices, visits }: HistorySources,
  {
    units,
    language,
    timeZone,
  }: { readonly units: DisplayUnits; readonly language: ChartLanguage; readonly timeZone: string },
): readonly HistoryEntry[] {
  const words = KINDS[language];
  const dayOf = (moment: string): string => dayInZone(DateTime.fromISO(moment), timeZone);
  const standingWord = (standing: StandingTurn['after']): string =>
    standing === null ? '–' : LIST_WORDS[language].standings[standing];
  const entries: readonly HistoryEntry[] = [
    ...evidence.inspections.map(({ record, readings }) => ({
      day: record.day,
      kind: words.inspection,
      what: readings.length === 0 ? words.nothing : words.posts(readings.length),
      more: [record.inspector, ...readings.map((reading) => foundAtPost(readingFacts(reading), units, language))].join(
        '; ',
      ),
    })),
    ...evidence.outcomes.map((outcome) => ({
      day: outcome.day,
      kind: words.storm,
      what: stormDid(
        outcome,
        evidence.outcomes.some(({ storm, posts }) => storm === outcome.storm && posts !== 'all'),
        language,
      ),
      more: `${outcome.storm}, ${words.gust} ${speedText(outcome.gustMps, units)}`,
    })),
    ...works.map((done) => ({ day: done.day, kind: words.works, what: worksText(done, language), more: '' })),
    ...standings.map(({ at, posts, before, after, snapMps, designGustMps }) => ({
      day: dayOf(at),
      kind: posts === 'ends' ? words.ends : words.standing,
      what:
        before === null ? words.first(standingWord(after)) : words.change(standingWord(before), standingWord(after)),
      more: words.held(heldText(snapMps, units, language), speedText(designGustMps, units)),
    })),
    ...notices.map((notice) => ({
      day: dayOf(notice.decidedAt),
      kind: words.notice,
      what: `${notice.matter}, to ${notice.ownerName}`,
      more: noticeState(notice, dayOf),
    })),
    ...visits.map((visit) => ({
      day: visit.firstDay,
      kind: words.visit,
      what: visitItemText(visit, language),
      more: `${words.visits[visit.state]}, ${visit.crewName}`,
    })),
  ];
  return entries
    .map((entry, index) => ({ entry, index }))
    .sort((a, b) => (a.entry.day < b.entry.day ? 1 : a.entry.day > b.entry.day ? -1 : b.index - a.index))
    .map(({ entry }) => entry);
}
