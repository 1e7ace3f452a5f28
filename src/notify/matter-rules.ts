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

/** What a notice to an owner may be about that a visit causes, and no sweep. */
export const VISIT_MATTERS = [
  'visit proposed',
  'visit confirmed',
  'visit changed',
  'visit missed',
  'visit cancelled',
] as const;
export type VisitMatter = (typeof VISIT_MATTERS)[number];

/** What an association is told where a season plan is accepted, in place of a message a visit. */
export const BOARD_MATTER = 'plan for the board';

/** Every matter that owners are told of. */
export const OWNER_MATTERS = [...MATTERS, ...VISIT_MATTERS, BOARD_MATTER] as const;
export type OwnerMatter = (typeof OWNER_MATTERS)[number];

/** Matters that are told to the office in its own list, beside or in place of the owner. */
export const OFFICE_MATTERS = ['dangerous', 'readings disagree'] as const;
export type OfficeMatter = (typeof OFFICE_MATTERS)[number];

/** What the office's daily mail names beside its list. */
export const OFFICE_MAIL_MATTERS = ['fence not forecast', 'message refused', 'notices held', 'not swept'] as const;
export type OfficeMailMatter = (typeof OFFICE_MAIL_MATTERS)[number];

export type RuledMatter = OwnerMatter | OfficeMatter | OfficeMailMatter;

/** What a matter is told once for. A build is a fence as built, or since the works that last renewed its posts. */
export type OncePer =
  | 'build'
  | 'build and season'
  | 'season'
  | 'finding'
  | 'works'
  | 'day of readings'
  | 'change of a visit'
  | 'season plan and visit'
  | 'sweep'
  | 'message'
  | 'notice'
  | 'outage';

/** The rule of one matter. The program decides by `to`, `oncePer` and `mayBeHeld`; the rest says in words what it does. */
export interface MatterRule {
  readonly tells: string;
  readonly when: string;
  /** Owners are those of the fence, the second one too, and only where they are enrolled. */
  readonly to: 'owner' | 'owner and office' | 'office' | 'association';
  readonly oncePer: OncePer;
  /** What makes a notice of it void before it is told. */
  readonly endedBy: string;
  /** True where the office may have the matter held until it releases it. */
  readonly mayBeHeld: boolean;
}

const mark = (tells: string): MatterRule => ({
  tells,
  when: 'the fence has crossed it by season 1; told of a fence short from new too',
  to: 'owner',
  oncePer: 'build',
  endedBy: 'the fence has not crossed it by the newest forecast',
  mayBeHeld: true,
});

const visit = (
  tells: string,
  when: string,
  endedBy = 'the visit has changed again, or its day is past',
): MatterRule => ({
  tells,
  when,
  to: 'owner',
  oncePer: 'change of a visit',
  endedBy,
  mayBeHeld: true,
});

const forOffice = (tells: string, when: string, oncePer: OncePer, endedBy: string): MatterRule => ({
  tells,
  when,
  to: 'office',
  oncePer,
  endedBy,
  mayBeHeld: false,
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
  },
  'short from new': {
    tells: 'it did not hold the design gust as built, with sound wood, and what would mend that',
    when: 'its standing becomes so',
    to: 'owner',
    oncePer: 'build',
    endedBy: 'another standing by the newest forecast',
    mayBeHeld: true,
  },
  short: {
    tells: 'it does not hold the design gust in season 1',
    when: 'its standing worsens to it',
    to: 'owner',
    oncePer: 'build and season',
    endedBy: 'another standing by the newest forecast',
    mayBeHeld: true,
  },
  closing: {
    tells: 'it goes short within the look-ahead',
    when: 'its standing worsens to it',
    to: 'owner',
    oncePer: 'build and season',
    endedBy: 'another standing by the newest forecast',
    mayBeHeld: true,
  },
  reminder: {
    tells: 'a season opens soon and it is still short',
    when: 'so many days before a season opens at its site (setting reminder-days), while its standing is short; not where its owner was told of a standing within the 90 days before; a fence short from new is told once and not reminded of',
    to: 'owner',
    oncePer: 'season',
    endedBy: 'it is not short any more, or the season has opened',
    mayBeHeld: true,
  },
  'ends short': {
    tells: 'its ends do not hold the design gust; its line posts are told of apart',
    when: 'the standing of its ends worsens to short',
    to: 'owner',
    oncePer: 'build and season',
    endedBy: 'its ends are not short by the newest forecast',
    mayBeHeld: true,
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
  },
  better: {
    tells: 'it stands clear again',
    when: 'its standing becomes clear, its ends hold, and no post is broken, leaning or closed off',
    to: 'owner',
    oncePer: 'build and season',
    endedBy: 'it is not so any more, or its owner was never told anything else',
    mayBeHeld: true,
  },
  'readings disagree': {
    tells: 'the readings are far from what was expected: treatment class, install date or a reading may be wrong',
    when: 'the sweep finds so. The owner is not written to: the office checks first',
    to: 'office',
    oncePer: 'day of readings',
    endedBy: 'the office settles it',
    mayBeHeld: false,
  },
  'visit proposed': visit(
    'a crew could come on a day',
    'a season plan is accepted that has the visit; not to an association, which is told of the plan. Or the office gives a fence another week before its owner was told of one',
  ),
  'visit confirmed': visit('a crew comes on a day', 'the office confirms the day'),
  'visit changed': visit(
    'a visit its owner knows of has another day, hour, crew or works',
    'the office or a new season plan changes it',
  ),
  'visit missed': visit(
    'the crew did not come, and what happens next',
    'the office notes it as missed, at most 30 days after its day; only to owners who knew of the visit',
    'nothing',
  ),
  'visit cancelled': visit(
    'the crew does not come',
    'the office or a new season plan calls it off, or leaves out the fences of this owner; only to owners who knew of the visit',
    'its day is past',
  ),
  'plan for the board': {
    tells: 'what is planned at its sites this season, by when, and what it costs a site',
    when: 'a season plan is accepted that changes visits at its fences. To owners of the kind association; board accounts have no mail address and see the same on their pages',
    to: 'association',
    oncePer: 'season plan and visit',
    endedBy: 'the visit has changed again, or its day is past',
    mayBeHeld: true,
  },
  'fence not forecast': forOffice(
    'a fence could not be forecast, and why',
    'the sweep cannot forecast it',
    'sweep',
    'a later sweep',
  ),
  'message refused': forOffice(
    'a message was refused for good, with the words of the server',
    'it is parked',
    'message',
    'it is sent again or cancelled',
  ),
  'notices held': forOffice('notices wait for its release', 'a notice is held', 'notice', 'it is released or void'),
  'not swept': forOffice(
    'the register was not swept to its end for two days or more',
    'the day is asked after and no sweep has finished',
    'outage',
    'a sweep finishes',
  ),
};

/** True for the name of a matter that owners are told of. */
export const isMatter = (text: string): text is OwnerMatter => (OWNER_MATTERS as readonly string[]).includes(text);

/** True for a matter that a visit causes, the plan for the board with it. */
export const isOfVisit = (matter: string): matter is VisitMatter | typeof BOARD_MATTER =>
  matter === BOARD_MATTER || (VISIT_MATTERS as readonly string[]).includes(matter);
