import { bromsClayForce, bromsSandForce, pivotSandForce } from '../../src/capacity/footing.ts';
import { aboveGroundLaw, aboveGroundRate } from '../../src/decay/above-ground-depth.ts';
import { TREATMENT_CLASS_KEYS, TREATMENT_CLASSES } from '../../src/decay/treatment-class.ts';
import { ALL_CHECKS } from './all-checks.ts';
import { ANCHOR_YEARS } from './anchor-years.ts';
import { CLASS_CHECKS, LIMIT_STATES, STATE_CHECKS } from './coverage.ts';
import { fieldResiduals } from './field-lives.ts';
import { FIELD_ROWS, predictedYears } from './field-rows.ts';
import { alternativeRatio } from './local-rules.checks.ts';
import { table } from './page-table.ts';
import { firstTwoThirdsYears } from './pole-practice.checks.ts';

const ZONES = [1, 2, 3, 4, 5] as const;

const NO_CHECK: readonly string[] = [
  'Lean speeds as such. The formulas reproduce published footing examples, but nobody has measured the gust at which a fence leans; expected lean speeds are the weakest part of the model.',
  'The gust that breaks a fence. No survey gives one: spotter guides of weather services list limbs, shingles and barns, and none of the 28 damage indicators of the tornado scale is a fence. No bending test of a 4x4 in concrete or soil was found.',
  'Force coefficients of a full-size wood fence. The figure is for walls; shadowbox and board-on-board count as solid for want of a measurement.',
  'The bursting of a concrete collar: a formula of our own, re-computed but never tested; the trade says only that thin rings break.',
  'Rot of modern copper treatments beyond 10 to 12 years. All treatment factors were set by the trials listed here, so those rows are calibration.',
  'Drainage, trimmer cuts and guards: trade experience only. Liners and bandages: short tests.',
  'Storm seasons and their shares of the yearly hazard are data.',
  'Continuity of boards over posts (factor 1.0), hills (the factor Kzt is taken as entered), steel sleeves, round posts in wind, bending that peaks below ground in direct-buried posts.',
  'Design wind speeds of places: none is shipped; each is entered with its source.',
];

const quantities = (ids: readonly string[]): string =>
  ids.length === 0
    ? '**none**'
    : ids.map((id) => ALL_CHECKS.find((check) => check.id === id)?.quantity ?? id).join('; ');

/** What has no published check: classes and limit states by the checks that touch them, and what nothing touches. */
export function gapsSection(): string {
  const classes = TREATMENT_CLASS_KEYS.map((key) => [TREATMENT_CLASSES[key].name, quantities(CLASS_CHECKS[key])]);
  const states = LIMIT_STATES.map((state) => [state, quantities(STATE_CHECKS[state])]);
  const bare = [
    ...TREATMENT_CLASS_KEYS.filter((key) => CLASS_CHECKS[key].length === 0).map((key) => TREATMENT_CLASSES[key].name),
    ...LIMIT_STATES.filter((state) => STATE_CHECKS[state].length === 0),
  ];
  return `Checks against outside numbers (read, read at second hand, or common practice) that touch each limit state and treatment class. **${bare.length} have none**: ${bare.join('; ')}.

${table(['limit state', 'touched by'], states)}

${table(['treatment class', 'touched by'], classes)}

Nor is there a published check of:

${NO_CHECK.map((line) => `- ${line}`).join('\n')}`;
}

/** Least and most of pivot statics over Broms for posts whose arm is from nothing to ten depths [-]. */
function pivotShares(): { readonly least: number; readonly most: number } {
  const sand = { frictionAngleDeg: 32, unitWeightNPerM3: 18_000 };
  const shares = [0, 0.1, 0.25, 0.5, 1, 2, 5, 10].map((arm) => {
    const post = { embedmentM: 1, widthM: 0.25, armM: arm };
    return pivotSandForce(post, sand) / bromsSandForce(post, sand);
  });
  return { least: Math.min(...shares), most: Math.max(...shares) };
}

/** Lean speed of a post two feet deep in clay with a footing so wide, over one with a nine-inch footing [-]. */
const widthInClay = (inches: number): number => {
  const force = (wide: number): number =>
    bromsClayForce({ embedmentM: 0.61, widthM: (wide * 25.4) / 1000, armM: 1 }, 50_000);
  return Math.sqrt(force(inches) / force(9));
};

/** Years until heartwood above ground reaches 5 mm where the climate factor in the ground is 2.5 [a]. */
function aboveGroundYears(heartwood: 1 | 2 | 3 | 4): string {
  const climate = { kind: 'measured', rainMmPerYear: 1600, meanTemperatureC: 21, dryMonths: 0 } as const;
  const rate = aboveGroundRate(`heartwood-class-${heartwood}`, climate);
  return rate === null ? '-' : aboveGroundLaw(rate).startEndsYears.toFixed(0);
}

/** Where the program and the world, or two sources, do not agree. */
export function disagreementSection(): string {
  const anchors = ANCHOR_YEARS.map(({ quantity, published, years }) => [
    quantity,
    String(published),
    years('at the medians').toFixed(1),
    years('over the belief').toFixed(1),
  ]);
  const residuals = fieldResiduals();
  const bias = Math.exp(residuals.reduce((sum, value) => sum + value, 0) / residuals.length);
  const { least, most } = pivotShares();
  const osage = FIELD_ROWS.find((row) => row.id === 'osage')!;
  return `**Field lives are ${bias.toFixed(2)} times the forecast** on average over the eight untreated rows, with single rows from 0.58 to 2.23. The program applies no such factor: it depends on the line taken for failure, which is ours.

**The cold end is flat.** The climate factor falls too little where it is cold: Madison's stakes lived 2.2 times as long as forecast. Fences at cold sites are told too early, not too late.

**Osage-orange** is forecast ${predictedYears(osage, 0).toFixed(0)} years at Corvallis; none had failed in 52 years, and the report thinks of more than 60. The class is a bound, on the safe side.

**Broms and pivot statics.** Broms' formula for sand lets the post turn about its toe; true statics with the same earth pressure gives ${least.toFixed(2)} to ${most.toFixed(2)} of it, by the length of the arm. The program takes 0.8 of Broms for \`expected\`, by judgement, which is
on the hopeful side of it.

**The code formula for footings rejects what places prescribe.** A 4x4 fence by the rule of a hurricane region, in a hole of 10 in by 2 ft, holds about six times less by IBC 1807 than its post does (2.1 against 13.2 psf for the 6 ft row), and its own state accepts it. This is why standing is judged on \`expected\`
and the code verdict stands beside it.

**Two alternatives of one rule.** Two feet in a cubic foot of concrete or three feet without: in sand the program finds their lean speeds about equal (${alternativeRatio('medium-sand').toFixed(2)}), in clay it does not (${alternativeRatio('firm-clay').toFixed(2)}), because Broms gives nothing to the top one and a half widths, which for a wide short
footing is most of it.

**A wider footing in clay.** For the same reason a 12 in footing two feet deep leans at ${widthInClay(12).toFixed(2)} of the speed of a 9 in one by Broms in clay, a 7 in one at ${widthInClay(7).toFixed(2)}: nobody would expect a wider one to hold less. The formula is meant for long piles.

**Inspection cycles by another reading.** The checks take the first inspection of poles as the time when a tenth of creosoted poles have 5 mm of rot, a reading chosen because it suits poles. By the time when a tenth of sawn ground-contact 4x4 posts are at two thirds of their strength, zones 1 to 5 give ${ZONES.map((zone) => firstTwoThirdsYears(zone).toFixed(1)).join(', ')} years, against first inspections at 12 to 15, 10 to 12, 10 to 12, 8 to 10 and 8 to 10: fence posts are forecast to need a look sooner than poles in the warm, wet zones.

**Above ground.** The law for rails reaches 5 mm in ${[1, 2, 3, 4].map((each) => aboveGroundYears(each as 1 | 2 | 3 | 4)).join(', ')} years for heartwood classes 1 to 4 in a warm wet climate, where AS 5604 (read) gives lives of over 40, 15 to 40, 7 to 15 and under 7. Classes 3 and 4 come out longer. It moves a flag only, never a speed.

**Spread of strength.** Poles are taken to scatter by 20 % (FPL-GTR-158, read) and clear wood by 12 to 16 % (read); the program takes ${(0.35).toFixed(2)} for graded posts, pith and knots included.

**ASD and LRFD.** For wind on wood in bending, allowable stress (1.6 Fb / 0.6) is 23 % stronger in force than LRFD (2.16 Fb), 11 % in speed. The \`code\` verdict is ASD, the lenient one, and says so.

**One cell of the force coefficients.** Three public codings of ASCE 7-16 Figure 29.3-1 have Cf = 1.60 at s/h 0.7, B/s 4; a fourth has 1.55. The program has 1.60. The figure itself was not opened.

**Southern pine No.1 4x4.** The published row (104 / 86 mph) leaves out the wet service factor that the same table's note asks for above 1,150 psi. The program applies it: 96 / 79 mph. The check is run dry.

**Heart rot.** By the formula a 4x4 with a 3 in cavity keeps 68 % of its modulus. The program counts a shell thinner than an eighth of the width as failed, on the safe side.

**Lateral bearing of dense sand.** The table gives 200 psf/ft to gravel and 150 to every sand. The class "dense sand or gravel" has 200, which is the lenient reading for sand without gravel.

**A wall by a consultant.** Its author takes Cf from the column B/s = 1; interpolated to B/s = 20/18 the pressure is 0.4 % lower.

**SI and customary constants.** 0.613 in SI against 0.00256 in customary units differ by 0.05 % in pressure; every speed here is 0.03 % above the customary one.

**The five-year gust.** The formula gives 0.77 of the 50-year gust where the commentary of ASCE 7-05 prints 0.78.

**Median of the belief, and value at the medians.** The anchors are worked out with every unknown at its median; a forecast shows the p50 over the whole belief. Once a post rots, speed is skewed: a fast pace takes more than a slow one spares, so the p50 goes short a little earlier.

${table(['line posts, exposure B, Gulf-like climate [a]', 'anchor', 'at the medians', 'p50 of the belief'], anchors)}`;
}
