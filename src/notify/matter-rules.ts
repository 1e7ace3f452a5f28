/** What a notice to an owner may be about, the weightiest first: a message with several opens with the first of them. */
export const MATTERS = [
  'dangerous',
  'short from new',
  'short',
  'closing',
  'reminder',
  'ends short',
  'once in 10',
  'once in 25',
  'once in 50',
  'two thirds',
  'works done',
  'better',
] as const;
export type Matter = (typeof MATTERS)[number];

/** Matters that are told to the office in its own list, beside or in place of the owner. */
export const OFFICE_MATTERS = ['dangerous', 'readings disagree'] as const;
export type OfficeMatter = (typeof OFFICE_MATTERS)[number];

/** Matters whose rule is laid down and that no part of the program decides yet. */
export const MATTERS_TO_COME = [
  'visit proposed',
  'visit confirmed',
  'visit changed',
  'visit missed',
  'plan for the board',
] as const;

export type RuledMatter = Matter | OfficeMatter | (typeof MATTERS_TO_COME)[number];

/** What a matter is told once for. A build is a fence as built, or since the works that last renewed its posts. */
export type OncePer =
  | 'build'
  | 'build and season'
  | 'season'
  | 'finding'
  | 'works'
  | 'day of readings'
  | 'change of a visit'
  | 'season plan';

/** The rule of one matter. The program decides by `to`, `oncePer` and `mayBeHeld`; the rest says in words what it does. */
export interface MatterRule {
  readonly tells: string;
  readonly when: string;
  /** Owners are those of the fence, the second one too, and only where they are enrolled. */
  readonly to: 'owner' | 'owner and office' | 'office';
  readonly oncePer: OncePer;
  /** What makes a notice of it void before it is told. */
  readonly endedBy: string;
  /** True where the office may have the matter held until it releases it. */
  readonly mayBeHeld: boolean;
  /** False where nothing decides it yet. */
  readonly told: boolean;
}

const mark = (tells: string): MatterRule => ({
  tells,
  when: 'the fence has crossed it by season 1; told of a fence short from new too',
  to: 'owner',
  oncePer: 'build',
  endedBy: 'the fence has not crossed it by the newest forecast',
  mayBeHeld: true,
  told: true,
});

const visit = (tells: string, when: string): MatterRule => ({
  tells,
  when,
  to: 'owner',
  oncePer: 'change of a visit',
  endedBy: 'the visit has changed again, or is over',
  mayBeHeld: true,
  told: false,
});

/** The rule of every matter. */
export const MATTER_RULES: Readonly<Record<RuledMatter, MatterRule>> = {
  dangerous: {
    tells: 'posts were found broken, leaning or closed off',
    when: 'the first sweep after the finding was entered; it goes out at once and opens its message',
    to: 'owner and office',
    oncePer: 'finding',
    endedBy: 'nothing is broken, leaning or closed off any more',
    mayBeHeld: false,
    told: true,
  },
  'short from new': {
    tells: 'it did not hold the design gust as built, with sound wood, and what would mend that',
    when: 'its standing becomes so',
    to: 'owner',
    oncePer: 'build',
    endedBy: 'another standing by the newest forecast',
    mayBeHeld: true,
    told: true,
  },
  short: {
    tells: 'it does not hold the design gust in season 1',
    when: 'its standing worsens to it',
    to: 'owner',
    oncePer: 'build and season',
    endedBy: 'another standing by the newest forecast',
    mayBeHeld: true,
    told: true,
  },
  closing: {
    tells: 'it goes short within the look-ahead',
    when: 'its standing worsens to it',
    to: 'owner',
    oncePer: 'build and season',
    endedBy: 'another standing by the newest forecast',
    mayBeHeld: true,
    told: true,
  },
  reminder: {
    tells: 'a season opens soon and it is still short',
    when: 'so many days before a season opens at its site (setting reminder-days), while its standing is short; not where its owner was told of a standing within the 90 days before; a fence short from new is told once and not reminded of',
    to: 'owner',
    oncePer: 'season',
    endedBy: 'it is not short any more, or the season has opened',
    mayBeHeld: true,
    told: true,
  },
  'ends short': {
    tells: 'its ends do not hold the design gust; its line posts are told of apart',
    when: 'the standing of its ends worsens to short',
    to: 'owner',
    oncePer: 'build and season',
    endedBy: 'its ends are not short by the newest forecast',
    mayBeHeld: true,
    told: true,
  },
  'once in 10': mark('the gust that snaps it comes once in 10 years or more often'),
  'once in 25': mark('the gust that snaps it comes once in 25 years or more often'),
  'once in 50': mark('the gust that snaps it comes once in 50 years or more often'),
  'two thirds': mark('less than two thirds of its built strength is left'),
  'works done': {
    tells: 'what works have gained: snap and lean speed without them and with them',
    when: 'the first sweep after works of the last 365 days were entered at a fence that was forecast before',
    to: 'owner',
    oncePer: 'works',
    endedBy: 'nothing',
    mayBeHeld: true,
    told: true,
  },
  better: {
    tells: 'it stands clear again',
    when: 'its standing becomes clear, its ends hold, and no post is broken, leaning or closed off',
    to: 'owner',
    oncePer: 'build and season',
    endedBy: 'it is not so any more, or its owner was never told anything else',
    mayBeHeld: true,
    told: true,
  },
  'readings disagree': {
    tells: 'the readings are far from what was expected: treatment class, install date or a reading may be wrong',
    when: 'the sweep finds so. The owner is not written to: the office checks first',
    to: 'office',
    oncePer: 'day of readings',
    endedBy: 'the office settles it',
    mayBeHeld: false,
    told: true,
  },
  'visit proposed': visit('a crew could come on a day', 'a season plan is accepted'),
  'visit confirmed': visit('a crew comes on a day', 'the office confirms the day'),
  'visit changed': visit('a confirmed visit has another day or crew', 'the office or a new season plan moves it'),
  'visit missed': visit('the crew did not come, and what happens next', 'the office notes it as missed'),
  'plan for the board': {
    tells: 'the replacement plan of all fences of an association, year by year',
    when: 'once a year, before the board meets',
    to: 'owner',
    oncePer: 'season plan',
    endedBy: 'a newer plan',
    mayBeHeld: true,
    told: false,
  },
};

/** True for the name of a matter that owners are told of. */
export const isMatter = (text: string): text is Matter => (MATTERS as readonly string[]).includes(text);
