import type { ChartLanguage } from '../../drawing/chart-words.ts';
import { dayRangeText } from '../../drawing/day-range-text.ts';
import { depthFigure, depthUnit, lengthText } from '../../drawing/quantity-text.ts';
import type { FenceReportWords } from '../../drawing/report/fence-report-words.ts';
import { fenceReportWords } from '../../drawing/report/fence-words-in.ts';
import {
  consequenceName,
  endName,
  footingName,
  gradeName,
  speciesName,
  styleName,
  treatmentName,
} from '../../drawing/report/record-names.ts';
import type { DisplayUnits } from '../../drawing/speed-text.ts';
import { worksNameIn } from '../../drawing/what-if-words.ts';
import type { Works } from '../../forecast/works.ts';
import type { FenceRecord } from '../../register/fence-record.ts';
import { feetFromMetres, inchesFromMm } from '../../units/length.ts';

/** In what a fence's record is told. */
export interface Told {
  readonly units: DisplayUnits;
  readonly language: ChartLanguage;
}

/** Style and, where air passes, the solid share. */
export function styleText(fence: FenceRecord, language: ChartLanguage): string {
  const style = styleName(fence.style, language);
  return fence.solidity === 1
    ? style
    : `${style}, ${fenceReportWords(language).solid(Math.round(fence.solidity * 100))}`;
}

/** What stands at one end, with the length of a return. */
export function endText(kind: FenceRecord['endAKind'], returnM: number | null, { units, language }: Told): string {
  const name = endName(kind, language);
  return returnM === null ? name : fenceReportWords(language).returnOf(name, lengthText(returnM, units));
}

/** What the fence is built over or holds back, in words. */
export function consequenceText({ consequence }: FenceRecord, language: ChartLanguage): string {
  const name = consequenceName(consequence, language);
  if (consequence !== 'other-high') return name;
  return language === 'es' ? `${name}, vea la nota` : `${name}, see the note`;
}

/** A post's section as it is measured: `3.5 by 3.5 in`, `89 by 89 mm`, round by its diameter. */
function sectionText(fence: FenceRecord, units: DisplayUnits, words: FenceReportWords): string {
  const one = (mm: number): string => (units === 'us' ? String(Number(inchesFromMm(mm).toFixed(2))) : mm.toFixed(0));
  const unit = depthUnit(units);
  return fence.sectionDepthMm === null
    ? words.round(`${one(fence.sectionWidthMm)} ${unit}`)
    : `${words.by(one(fence.sectionWidthMm), one(fence.sectionDepthMm))} ${unit}`;
}

/** Species, grade and section of the posts. */
export function postsText(fence: FenceRecord, { units, language }: Told): string {
  const words = fenceReportWords(language);
  const section = sectionText(fence, units, words);
  if (fence.treatmentClass === 'does-not-rot') return `${words.noRot}, ${section}`;
  return `${speciesName(fence.species, language)}, ${gradeName(fence.grade, language)}, ${section}`;
}

/** Treatment class in words, with the retention where it was recorded. */
export function treatmentText(fence: FenceRecord, language: ChartLanguage): string {
  const name = treatmentName(fence.treatmentClass, language);
  if (fence.retentionKgM3 === null) return name;
  return `${name}, ${language === 'es' ? 'retención' : 'retention'} ${fence.retentionKgM3.toFixed(1)} kg/m³`;
}

/** Embedment and footing in words; what is not recorded says so. */
export function groundText(fence: FenceRecord, { units, language }: Told): string {
  const words = fenceReportWords(language);
  const small = (m: number): string =>
    units === 'us' ? `${Number((feetFromMetres(m) * 12).toFixed(1))} in` : `${Math.round(m * 100)} cm`;
  const depth = fence.embedmentM === null ? words.depthUnknown : words.deep(small(fence.embedmentM));
  if (fence.footing === null) return `${depth}, ${words.footingUnknown}`;
  const diameter = fence.footingDiameterM === null ? null : small(fence.footingDiameterM);
  return `${depth}, ${words.inFooting(footingName(fence.footing, language), diameter)}`;
}

/** Install date or range. */
export const installedText = (fence: FenceRecord, language: ChartLanguage): string =>
  dayRangeText(fence.installedEarliest, fence.installedLatest, language);

/** Works in words: kind, and the posts where it was not all of them. */
export function worksText({ kind, posts }: Works, language: ChartLanguage): string {
  const name = worksNameIn(kind, language);
  if (posts === 'all') return name;
  const post = language === 'es' ? 'poste' : 'post';
  return `${name}, ${post}${posts.length === 1 ? '' : 's'} ${posts.join(', ')}`;
}

/** Yearly cut by a trimmer in words. */
export function trimmerText(fence: FenceRecord, { units, language }: Told): string {
  const words = fenceReportWords(language);
  const [fitted, none, unknown] = words.guards;
  if (fence.trimmerGuards === 'yes') return fitted;
  const base = fence.trimmerGuards === 'no' ? none : unknown;
  if (fence.yearlyTrimmerCutMm === 0) return base;
  return `${base}, ${words.yearlyCut(`${depthFigure(fence.yearlyTrimmerCutMm, units)} ${depthUnit(units)}`)}`;
}
