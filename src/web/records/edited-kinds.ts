import type { RecordKind } from '../../register/record-store.ts';

/** Where the pages of a kind lie, and what a form for it says first. */
interface EditedKind {
  /** The list that its records are in. */
  readonly list: string;
  /** What that list is called. */
  readonly listName: string;
  readonly note: string;
}

/** The kinds of records that are made and changed by a form. */
export const EDITED_KINDS: Readonly<Partial<Record<RecordKind, EditedKind>>> = {
  owners: {
    list: '/owners',
    listName: 'All owners',
    note: 'Who owns fences and hears of them. An owner who is not enrolled is not written to.',
  },
  sites: {
    list: '/sites',
    listName: 'All sites',
    note: 'A place where fences stand. Its wind, soil and season decide how its fences are judged, so the next sweep computes them anew.',
  },
  fences: {
    list: '/fences',
    listName: 'All fences',
    note: 'One straight run between corners, gates or ends. Posts are numbered from the named end.',
  },
  works: {
    list: '/fences',
    listName: 'All fences',
    note: 'Works count from their day on. Posts are all, or numbers parted by blanks, as 3 4 7-9. What is left empty is what works of this kind usually take.',
  },
  inspections: {
    list: '/fences',
    listName: 'All fences',
    note: 'Who looked at a fence, when and how. Its readings stay.',
  },
  outcomes: {
    list: '/fences',
    listName: 'All fences',
    note: 'What one storm was reported to have done to posts of a fence.',
  },
  'climate-zones': {
    list: '/climate-zones',
    listName: 'Climate zones',
    note: 'Rain, warmth and dry months give the pace of rot. What is empty is unknown, and forecasts are wider for it.',
  },
  'storm-seasons': {
    list: '/seasons',
    listName: 'Storm seasons',
    note: 'Days are month and day, as 06-01; a season may wrap the year end. The share is how much of the yearly wind falls in it.',
  },
  catalogue: {
    list: '/catalogue',
    listName: 'Works catalogue',
    note: 'Hours, price and rules of one kind of works. What is left empty is what comes with the program.',
  },
  materials: {
    list: '/catalogue',
    listName: 'Works catalogue',
    note: 'What one kind of works uses up, and what it costs.',
  },
  crews: {
    list: '/crews',
    listName: 'Crews',
    note: 'Where it starts from, how fast it drives, and the share of hours kept back for weather.',
  },
  'crew-members': {
    list: '/crews',
    listName: 'Crews',
    note: 'Skills are licensed-applicator and inspector, languages as you write them, each parted by blanks. Who has left gets a last day.',
  },
  'days-off': { list: '/crews', listName: 'Crews', note: 'Without a member, the whole crew is off.' },
};

/** Path of a record's own page. */
export function recordPath(kind: RecordKind, name: string): string {
  const ref = encodeURIComponent(name);
  return kind === 'owners' || kind === 'sites' ? `/${kind}/${ref}` : `/records/${kind}/${ref}`;
}

/** Path of the form that changes a record. */
export const editPath = (kind: RecordKind, name: string): string => `/records/${kind}/${encodeURIComponent(name)}/edit`;
