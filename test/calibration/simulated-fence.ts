import type { RandomGenerator } from 'pure-rand/types/RandomGenerator';
import { bendingMoment } from '../../src/capacity/post-resistance.ts';
import { NO_LOSS, sectionModulus } from '../../src/capacity/section-properties.ts';
import { medianBendingStrength } from '../../src/capacity/wood-strength.ts';
import { decayDepth } from '../../src/decay/decay-depth.ts';
import { medianDecayRate } from '../../src/decay/decay-rate.ts';
import { TREATMENT_CLASSES, type TreatmentClass } from '../../src/decay/treatment-class.ts';
import { MEDIAN_POINT } from '../../src/forecast/belief-points.ts';
import { failedDepth } from '../../src/forecast/evidence/failed-depth.ts';
import type { GroundlineReading } from '../../src/forecast/evidence/inspection.ts';
import type { StormOutcome, StormResult } from '../../src/forecast/evidence/storm-outcome.ts';
import type { FenceFacts } from '../../src/forecast/fence-facts.ts';
import { fenceStates } from '../../src/forecast/fence-state.ts';
import { normalQuantile } from '../../src/forecast/normal-distribution.ts';
import { stateModel } from '../../src/forecast/state-model.ts';
import { addDays, DAYS_PER_YEAR, dayFromNumber, dayNumber } from '../../src/units/calendar-day.ts';
import { mpsFromMph } from '../../src/units/speed.ts';
import { groundlineOf } from '../forecast/evidence/read-fence.ts';
import { EXAMPLE_FENCE } from '../forecast/example-fence.ts';

/** Spreads of the model, written down apart from the code under test. */
const SPREAD = {
  postPace: 0.54,
  postStrength: 0.32,
  fibre: 0.15,
  footing: 0.4,
  postFooting: 0.2,
  load: 0.17,
  storm: 0.18,
};
/** Square root of the directionality factor. */
const WORST_DIRECTION = Math.sqrt(0.85);

/** The four unknowns of a fence, as scores. */
export interface TrueScores {
  readonly pace: number;
  readonly 'fibre strength': number;
  readonly footing: number;
  readonly 'permanent load': number;
}

/** A made-up fence with what was seen of it, and the truth that was drawn. */
export interface SimulatedFence {
  readonly facts: FenceFacts;
  readonly truth: TrueScores;
}

const TODAY = '2026-03-01';
const CLASSES: readonly TreatmentClass[] = [
  'ground-contact',
  'above-ground-stock',
  'untreated-softwood',
  'redcedar-redwood-heartwood',
];

/** Uniform numbers between 0 and 1, both left out. */
export const uniform = (random: RandomGenerator): number => ((random.next() >>> 0) + 0.5) / 2 ** 32;
const normal = (random: RandomGenerator): number => normalQuantile(uniform(random));
const between = (random: RandomGenerator, low: number, high: number): number => low + (high - low) * uniform(random);
const whole = (random: RandomGenerator, low: number, high: number): number =>
  Math.floor(between(random, low, high + 1));

/** One post of the simulation: what it is made of, and what has become of it. */
interface TruePost {
  readonly number: number;
  readonly rate: number;
  readonly strength: number;
  readonly footing: number;
  broken: boolean;
  leaning: boolean;
}

/** What a crew reports of a post: by a measuring, a go-or-not, or a push test, chosen without looking at the post. */
function readingOf(random: RandomGenerator, depthMm: number, failedMm: number): GroundlineReading {
  const protocol = whole(random, 0, 2);
  if (protocol === 0) return { kind: 'depth', depthMm: depthMm + 2 * normal(random) };
  if (protocol === 1) return depthMm < 3 ? { kind: 'sound-to', depthMm: 3 } : { kind: 'soft-to', depthMm: 3 };
  return depthMm < failedMm ? { kind: 'sound-to', depthMm: failedMm } : { kind: 'broken' };
}

/**
 * Draws a fence from the model: its unknowns, its posts, some storms and inspections, and what they would have reported.
 * Forward only: nothing here knows how the program infers.
 */
export function simulatedFence(random: RandomGenerator): SimulatedFence {
  const truth: TrueScores = {
    pace: normal(random),
    'fibre strength': normal(random),
    footing: normal(random),
    'permanent load': normal(random),
  };
  const treatmentClass = CLASSES[whole(random, 0, CLASSES.length - 1)]!;
  const oldest = treatmentClass === 'ground-contact' ? 30 : 12;
  const built = dayFromNumber(dayNumber(TODAY) - between(random, 3, oldest) * DAYS_PER_YEAR);
  const embedmentM = between(random, 0.55, 1);
  const plain: FenceFacts = {
    ...EXAMPLE_FENCE,
    wood: { ...EXAMPLE_FENCE.wood, treatmentClass },
    installed: { earliest: built, latest: built },
    ground: { ...EXAMPLE_FENCE.ground, embedmentM },
  };
  const { section, species, grade } = plain.wood;
  const model = stateModel(plain.site, fenceStates(plain)[0]!.state, MEDIAN_POINT);
  const classOf = (number: number): number =>
    model.classes.classes.findIndex(({ numbers }) => numbers.includes(number));
  const load = Math.exp(SPREAD.load * truth['permanent load']);
  const posts = model.state.posts.map(
    ({ number }): TruePost => ({
      number,
      rate:
        medianDecayRate(treatmentClass, plain.site.climate) *
        Math.exp(TREATMENT_CLASSES[treatmentClass].paceSpread * truth.pace + SPREAD.postPace * normal(random)),
      strength:
        medianBendingStrength(species, grade, section) *
        Math.exp(SPREAD.fibre * truth['fibre strength'] + SPREAD.postStrength * normal(random)),
      footing: Math.exp(SPREAD.footing * truth.footing + SPREAD.postFooting * normal(random)),
      broken: false,
      leaning: false,
    }),
  );
  const depthOn = (post: TruePost, day: string): number =>
    Math.min(44.4, decayDepth((dayNumber(day) - dayNumber(built)) / DAYS_PER_YEAR, post.rate));

  const events = [
    ...Array.from({ length: whole(random, 0, 2) }, () => 'storm' as const),
    ...Array.from({ length: whole(random, 0, 2) }, () => 'inspection' as const),
  ]
    .map((kind) => ({ kind, at: between(random, 0.3, 1) }))
    .sort((a, b) => a.at - b.at);
  const outcomes: StormOutcome[] = [];
  const inspections: FenceFacts['inspections'][number][] = [];
  for (const [index, { kind, at }] of events.entries()) {
    const day = addDays(dayFromNumber(dayNumber(built) + at * (dayNumber(TODAY) - dayNumber(built))), index);
    if (kind === 'inspection') {
      const readings = posts
        .filter(({ broken }) => !broken && uniform(random) < 0.4)
        .map((post) => {
          const groundline = readingOf(random, depthOn(post, day), failedDepth(section));
          if (groundline.kind === 'broken') post.broken = true;
          return groundlineOf(post.number, groundline);
        });
      inspections.push({ ref: `I${index}`, day, method: 'awl-or-probe', readings });
      continue;
    }
    const reported = mpsFromMph(between(random, 45, 85));
    const gust = reported * Math.exp(0.1 * normal(random));
    const wind = (gust / WORST_DIRECTION) * Math.exp((SPREAD.storm / 2) * normal(random));
    for (const post of posts) {
      if (post.broken || uniform(random) < 0.2) continue;
      const { momentPerV2 } = model.classes.classes[classOf(post.number)]!;
      const modulus = sectionModulus(section, { ...NO_LOSS, depthMm: depthOn(post, day) });
      const snap = Math.sqrt(bendingMoment(post.strength, modulus) / (momentPerV2 * load));
      const lean = model.leanMps[classOf(post.number)]![0]! * Math.sqrt(post.footing / load);
      let result: StormResult = 'stood';
      if (post.leaning) result = snap <= wind ? 'snapped' : 'stood';
      else if (snap <= wind && snap <= lean) result = 'snapped';
      else if (lean <= wind) result = 'leaned';
      if (result === 'snapped') post.broken = true;
      if (result === 'leaned') post.leaning = true;
      outcomes.push({
        ref: `O${index} ${post.number}`,
        storm: `S${index}`,
        day,
        gustMps: reported,
        gustSpread: 0.1,
        posts: [post.number],
        result,
      });
    }
  }
  return { facts: { ...plain, inspections, outcomes }, truth };
}
