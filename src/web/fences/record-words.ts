import { SPECIES } from '../../capacity/wood-strength.ts';
import { TREATMENT_CLASSES } from '../../decay/treatment-class.ts';
import { dayRangeText } from '../../drawing/day-range-text.ts';
import { depthFigure, depthUnit, lengthText } from '../../drawing/quantity-text.ts';
import type { DisplayUnits } from '../../drawing/speed-text.ts';
import type { Works } from '../../forecast/works.ts';
import type { FenceRecord } from '../../register/fence-record.ts';
import { feetFromMetres, inchesFromMm } from '../../units/length.ts';

const STYLES: Readonly<Record<FenceRecord['style'], string>> = {
  'solid-board': 'solid boards',
  'board-on-board': 'board on board',
  shadowbox: 'shadowbox',
  picket: 'picket',
  'open-rail': 'open rail',
};

const END_WORDS: Readonly<Record<FenceRecord['endAKind'], string>> = {
  return: 'a corner',
  building: 'a building',
  gate: 'a gate',
  free: 'a free end',
  unknown: 'not recorded',
};

const CONSEQUENCES: Readonly<Record<FenceRecord['consequence'], string>> = {
  ordinary: 'ordinary',
  'pool-barrier': 'pool barrier',
  'over-footpath': 'over a footpath',
  livestock: 'holds livestock',
  'other-high': 'high, see the note',
};

const WORKS_WORDS: Readonly<Record<Works['kind'], string>> = {
  'groundline-treatment': 'groundline treatment',
  liner: 'liner',
  drainage: 'drainage',
  'trimmer-guard': 'trimmer guard',
  'footing-reset': 'footing reset',
  'post-swap': 'post swap',
  'steel-sleeve': 'steel sleeve',
  'added-posts': 'added posts',
  rebuild: 'rebuild',
};

/** Style and, where air passes, the solid share. */
export const styleText = (fence: FenceRecord): string =>
  fence.solidity === 1 ? STYLES[fence.style] : `${STYLES[fence.style]}, ${Math.round(fence.solidity * 100)} % solid`;

/** What stands at one end, with the length of a return. */
export const endText = (kind: FenceRecord['endAKind'], returnM: number | null, units: DisplayUnits): string =>
  returnM === null ? END_WORDS[kind] : `${END_WORDS[kind]} with ${lengthText(returnM, units)} of return`;

/** What the fence is built over or holds back, in words. */
export const consequenceText = (fence: FenceRecord): string => CONSEQUENCES[fence.consequence];

/** A post's section as it is measured: `3.5 by 3.5 in`, `89 by 89 mm`, round by its diameter. */
function sectionText(fence: FenceRecord, units: DisplayUnits): string {
  const one = (mm: number): string => (units === 'us' ? String(Number(inchesFromMm(mm).toFixed(2))) : mm.toFixed(0));
  const unit = depthUnit(units);
  if (fence.sectionDepthMm === null) return `round, ${one(fence.sectionWidthMm)} ${unit}`;
  return `${one(fence.sectionWidthMm)} by ${one(fence.sectionDepthMm)} ${unit}`;
}

/** Species, grade and section of the posts. */
export function postsText(fence: FenceRecord, units: DisplayUnits): string {
  if (fence.treatmentClass === 'does-not-rot') return `steel, concrete or composite, ${sectionText(fence, units)}`;
  const grade = fence.grade === 'unknown' ? 'grade not known' : fence.grade.replace('no-', 'No. ');
  return `${SPECIES[fence.species].name}, ${grade}, ${sectionText(fence, units)}`;
}

/** Treatment class in words, with the retention where it was recorded. */
export function treatmentText(fence: FenceRecord): string {
  const { name } = TREATMENT_CLASSES[fence.treatmentClass];
  return fence.retentionKgM3 === null ? name : `${name}, retention ${fence.retentionKgM3.toFixed(1)} kg/m³`;
}

/** Embedment and footing in words; what is not recorded says so. */
export function groundText(fence: FenceRecord, units: DisplayUnits): string {
  const small = (m: number): string =>
    units === 'us' ? `${Number((feetFromMetres(m) * 12).toFixed(1))} in` : `${Math.round(m * 100)} cm`;
  const depth = fence.embedmentM === null ? 'depth not recorded' : `${small(fence.embedmentM)} deep`;
  if (fence.footing === null) return `${depth}, footing not recorded`;
  const diameter = fence.footingDiameterM === null ? '' : `, ${small(fence.footingDiameterM)} across`;
  return `${depth}, in ${fence.footing}${diameter}`;
}

/** Install date or range. */
export const installedText = (fence: FenceRecord): string =>
  dayRangeText(fence.installedEarliest, fence.installedLatest);

/** Works in words: kind, and the posts where it was not all of them. */
export const worksText = (works: Works): string =>
  works.posts === 'all' ? WORKS_WORDS[works.kind] : `${WORKS_WORDS[works.kind]}, posts ${works.posts.join(', ')}`;

/** Yearly cut by a trimmer in words. */
export function trimmerText(fence: FenceRecord, units: DisplayUnits): string {
  if (fence.trimmerGuards === 'yes') return 'guards fitted';
  const base = fence.trimmerGuards === 'no' ? 'no guards' : 'not recorded';
  if (fence.yearlyTrimmerCutMm === 0) return base;
  return `${base}, cut ${depthFigure(fence.yearlyTrimmerCutMm, units)} ${depthUnit(units)} a year`;
}
