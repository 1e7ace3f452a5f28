import type { OwnerMatter } from './matter-rules.ts';
import type { MessageLanguage } from './message-facts.ts';

/** Kinds of news that an owner can turn off, each by itself, in the order in which they are shown. */
export const MATTER_GROUPS = ['danger', 'standing', 'reminders', 'marks', 'works', 'visits', 'plan'] as const;
export type MatterGroup = (typeof MATTER_GROUPS)[number];

/** The group of every matter. */
const GROUP_OF: Readonly<Record<OwnerMatter, MatterGroup>> = {
  dangerous: 'danger',
  'short from new': 'standing',
  short: 'standing',
  closing: 'standing',
  'ends short': 'standing',
  reminder: 'reminders',
  'once in 10': 'marks',
  'once in 25': 'marks',
  'once in 50': 'marks',
  'two thirds': 'marks',
  'works done': 'works',
  better: 'works',
  'visit proposed': 'visits',
  'visit confirmed': 'visits',
  'visit changed': 'visits',
  'visit missed': 'visits',
  'visit cancelled': 'visits',
  'plan for the board': 'plan',
};

/** What an owner does not want to be written about, and until when nothing but danger. */
export interface Wishes {
  /** Names of groups of matters. */
  readonly muted: readonly string[];
  /** Last day of a pause, as YYYY-MM-DD; null where there is none. */
  readonly pausedUntil: string | null;
}

/** The groups that an owner wants none of once a mail program was told to stop the list: all but danger. */
export const ORDINARY_GROUPS: readonly MatterGroup[] = MATTER_GROUPS.filter((group) => group !== 'danger');

/** The group of a matter by its name; null for one that nobody knows. */
export const groupOf = (matter: string): MatterGroup | null => GROUP_OF[matter as OwnerMatter] ?? null;

/** Whether a matter is told by an owner's wishes on a day: yes, not at all, or not before the pause is over. Danger is never paused. */
export function toldByWishes(matter: string, wishes: Wishes | null, today: string): 'yes' | 'no' | 'later' {
  if (!wishes) return 'yes';
  const group = groupOf(matter);
  if (group !== null && wishes.muted.includes(group)) return 'no';
  const isPaused = wishes.pausedUntil !== null && today <= wishes.pausedUntil;
  return isPaused && group !== 'danger' ? 'later' : 'yes';
}

/** What each group is called, as the end of the sentence "write to me about …". */
export const MATTER_GROUP_WORDS: Readonly<Record<MessageLanguage, Readonly<Record<MatterGroup, string>>>> = {
  en: {
    danger: 'danger now: posts found broken, leaning or closed off',
    standing: 'a fence or its ends no longer holding the design gust, or soon no longer',
    reminders: 'reminders before a storm season while a fence is short',
    marks: 'marks on the way down: two thirds of its strength, a gust that comes once in 50, 25 or 10 years',
    works: 'works done, and a fence that stands clear again',
    visits: 'visits of a crew: proposed, confirmed, changed, missed, called off',
    plan: 'the yearly plan of repair and replacement',
  },
  es: {
    danger: 'peligro ahora: postes rotos, inclinados o cerrados al paso',
    standing: 'una cerca o sus extremos que ya no aguantan la ráfaga de diseño, o pronto no la aguantarán',
    reminders: 'recordatorios antes de una temporada de tormentas mientras una cerca es insuficiente',
    marks: 'señales del desgaste: dos tercios de su resistencia, una ráfaga que llega una vez en 50, 25 o 10 años',
    works: 'obras hechas, y una cerca que vuelve a tener margen',
    visits: 'visitas de una cuadrilla: propuestas, confirmadas, cambiadas, fallidas, anuladas',
    plan: 'el plan anual de reparación y reemplazo',
  },
};
