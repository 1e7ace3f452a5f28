import type { PostSection } from '../capacity/post-section.ts';
import { postBreadthMm, shortestSideMm } from '../capacity/post-section.ts';
import { TREATMENT_CLASSES } from '../decay/treatment-class.ts';
import type { GroundlineReading, InspectionMethod } from '../forecast/evidence/inspection.ts';
import { INSPECTION_METHODS } from '../forecast/evidence/inspection.ts';
import { READING_METHODS } from '../forecast/evidence/reading-method.ts';
import { type fenceStates, stateBefore } from '../forecast/fence-state.ts';
import type { PostState } from '../forecast/post-state.ts';
import { namedPosts, numberedTo } from './evidence-post-list.ts';
import type { FenceRecord } from './fence-record.ts';
import type { InspectionRecord } from './inspection-record.ts';
import type { ReadingRecord } from './reading-record.ts';
import type { StormOutcomeRecord } from './storm-outcome-record.ts';
import type { Refuse } from './value-schemas.ts';

/** The states a fence has gone through by its works alone. */
export type States = ReturnType<typeof fenceStates>;

/** How much wider than its installed size a post may measure: wet wood, and sizes that are nominal [mm]; judgement. */
const WIDTH_ALLOWANCE_MM = 3;

const KIND_NAMES: Readonly<Record<GroundlineReading['kind'], string>> = {
  depth: 'depth lost',
  'residual-width': 'residual width',
  'residual-circumference': 'residual circumference',
  'sound-to': 'sound-to depth',
  'soft-to': 'soft-to depth',
  broken: 'broken',
};

/** A length of a post in both units, for a message. */
export const figure = (mm: number): string => `${Number(mm.toFixed(1))} mm (${Number((mm / 25.4).toFixed(2))} in)`;

const methodsThatGive = (kind: GroundlineReading['kind']): string =>
  INSPECTION_METHODS.filter((method) => READING_METHODS[method].gives.includes(kind)).join(' or ');

/** Refuses an inspection or an outcome of a day on which the fence did not stand yet. */
export function refuseEarlyDay(day: string, fence: FenceRecord, refuse: Refuse): void {
  if (day < fence.installedEarliest) {
    refuse(
      'day',
      `before fence ${fence.ref} was installed (${fence.installedEarliest} at the earliest); correct one of them`,
    );
  }
}

function refuseByMethod(reading: ReadingRecord, method: InspectionMethod, refuse: Refuse): void {
  const { groundlineKind: kind } = reading;
  const gives = READING_METHODS[method].gives;
  if (kind !== null && !gives.includes(kind)) {
    const numbers = gives.filter((each) => each !== 'broken').map((each) => KIND_NAMES[each]);
    const can = numbers.length === 0 ? 'gives no number at the groundline' : `gives ${numbers.join(', ')}`;
    refuse(
      'groundlineMm',
      `a ${KIND_NAMES[kind]}, but an inspection by ${method} ${can}; enter it with an inspection by ${methodsThatGive(kind)}, or correct the column`,
    );
  }
  if (reading.cavityMm !== null && method !== 'drill-resistance') {
    refuse(
      'cavityMm',
      `a hollow is measured by drill-resistance, not by ${method}; enter it with an inspection by drill-resistance`,
    );
  }
}

/** The width across which a residual width is measured [mm]: the diameter of a round post. */
export const installedWidthMm = (section: PostSection): number =>
  section.kind === 'round' ? section.diameterMm : section.widthMm;

const installedGirthMm = (section: PostSection): number =>
  section.kind === 'round' ? Math.PI * section.diameterMm : 2 * (section.widthMm + section.depthMm);

function refuseBySection(reading: ReadingRecord, section: PostSection, refuse: Refuse): void {
  const { groundlineKind: kind, groundlineMm: mm, cavityMm, trimmerCutMm } = reading;
  const narrow = shortestSideMm(section);
  const half = narrow / 2;
  const width = installedWidthMm(section);
  const girth = installedGirthMm(section);
  const girthAllowance = WIDTH_ALLOWANCE_MM * (section.kind === 'round' ? Math.PI : 4);
  if (kind === 'residual-width' && mm !== null && mm > width + WIDTH_ALLOWANCE_MM) {
    refuse('groundlineMm', `wider than the post as installed, ${figure(width)}; correct the number, or the section`);
  }
  if (kind === 'residual-circumference' && mm !== null && mm > girth + girthAllowance) {
    refuse(
      'groundlineMm',
      `longer than round the post as installed, ${figure(girth)}; correct the number, or the section`,
    );
  }
  if ((kind === 'depth' || kind === 'sound-to' || kind === 'soft-to') && mm !== null && mm > half) {
    const meant = kind === 'depth' ? 'did you mean the width left? that is a residual width' : 'measure from one face';
    refuse('groundlineMm', `deeper than half of the post as installed, ${figure(half)}; ${meant}`);
  }
  const lostMm = kind === 'depth' && mm !== null && mm <= half ? 2 * mm : 0;
  if (cavityMm !== null && cavityMm > 0 && cavityMm + lostMm >= narrow) {
    refuse(
      'cavityMm',
      `with ${figure(lostMm)} of width lost it leaves nothing of the post, ${figure(narrow)} as installed; correct it, or write broken`,
    );
  }
  if (trimmerCutMm !== null && trimmerCutMm > postBreadthMm(section)) {
    refuse('trimmerCutMm', `deeper than the post, ${figure(postBreadthMm(section))}; give the depth of the cut`);
  }
}

/** The post of that number on the eve of a day; refuses one that the fence did not have, or that was set later. */
function postOnDay(
  reading: ReadingRecord,
  day: string,
  fenceRef: string,
  states: States,
  refuse: Refuse,
): PostState | null {
  const { posts } = stateBefore(states, day);
  const post = posts.find(({ number }) => number === reading.post);
  if (!post) {
    refuse('post', `fence ${fenceRef} had ${numberedTo(posts.length)} on ${day}; correct the number, or the day`);
    return null;
  }
  if (post.installed.earliest > day) {
    refuse(
      'post',
      `post ${post.number} of fence ${fenceRef} was set on ${post.installed.earliest} at the earliest, after the inspection of ${day}; correct one of them`,
    );
    return null;
  }
  return post;
}

/** Refuses a reading that its inspection's method cannot give, or of a post that cannot have been found so. */
export function refuseReading(
  reading: ReadingRecord,
  inspection: InspectionRecord,
  states: States,
  refuse: Refuse,
): void {
  refuseByMethod(reading, inspection.method, refuse);
  const post = postOnDay(reading, inspection.day, inspection.fenceRef, states, refuse);
  if (!post) return;
  if (TREATMENT_CLASSES[post.wood.treatmentClass].rots) refuseBySection(reading, post.wood.section, refuse);
  else {
    for (const key of ['groundlineKind', 'cavityMm', 'trimmerCutMm'] as const) {
      if (reading[key] === null) continue;
      refuse(
        key,
        `post ${post.number} of fence ${inspection.fenceRef} does not rot, so its groundline tells nothing; leave it empty and give its lean, collar or rail connection`,
      );
    }
  }
}

/** Refuses an outcome of posts that the fence did not have on the eve of the storm. */
export function refuseOutcome(outcome: StormOutcomeRecord, states: States, refuse: Refuse): void {
  const { posts } = stateBefore(states, outcome.day);
  const numbers = new Set(posts.map(({ number }) => number));
  const stray = outcome.posts === 'all' ? [] : outcome.posts.filter((number) => !numbers.has(number));
  if (stray.length > 0) {
    refuse(
      'posts',
      `fence ${outcome.fenceRef} had ${numberedTo(posts.length)} on that day, and no ${namedPosts(stray)}; correct the numbers`,
    );
  }
}

/**
 * Refuses outcomes of one fence that contradict one another: a post with two results in one storm, or a storm with two
 * gusts or days.
 * @param outcomes all outcomes of the fence; `refuseOf` gives where to say it, null for outcomes not to be judged
 */
export function refuseContradictions(
  outcomes: readonly StormOutcomeRecord[],
  refuseOf: (each: StormOutcomeRecord) => Refuse | null,
): void {
  const earlier = new Map<string, StormOutcomeRecord[]>();
  const judgedLast = [...outcomes].sort((a, b) => Number(refuseOf(a) !== null) - Number(refuseOf(b) !== null));
  for (const outcome of judgedLast) {
    const known = earlier.get(outcome.storm) ?? [];
    const refuse = refuseOf(outcome);
    if (refuse) for (const other of known) refuseBeside(outcome, other, refuse);
    earlier.set(outcome.storm, [...known, outcome]);
  }
}

function refuseBeside(outcome: StormOutcomeRecord, other: StormOutcomeRecord, refuse: Refuse): void {
  const same = `storm ${JSON.stringify(outcome.storm)} at fence ${outcome.fenceRef}`;
  const { posts } = other;
  if (outcome.day !== other.day) {
    refuse(
      'day',
      `${other.ref} has ${same} on ${other.day}; correct the day, or give a storm of another day another name`,
    );
  }
  if (outcome.gustMps !== other.gustMps || outcome.gustSpread !== other.gustSpread) {
    const key = outcome.gustMps === other.gustMps ? 'gustSpread' : 'gustMps';
    refuse(key, `${other.ref} has ${same} with another gust; outcomes of one storm at one fence share its wind`);
  }
  if (outcome.posts === 'all') {
    if (posts === 'all')
      refuse('posts', `${other.ref} speaks of all posts of ${same} already; name the posts in one of them`);
    return;
  }
  const twice = posts === 'all' ? [] : outcome.posts.filter((number) => posts.includes(number));
  if (twice.length > 0) {
    refuse('posts', `${namedPosts(twice)}: ${other.ref} has the result ${other.result} of ${same} already; keep one`);
  }
}
