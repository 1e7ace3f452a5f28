import type { EndFacts } from '../../forecast/fence-facts.ts';
import { seasonOne } from '../../forecast/fence-forecast.ts';
import { inchesFromMm } from '../../units/length.ts';
import type { ChartLanguage } from '../chart-words.ts';
import { depthFigure, depthUnit, lengthText } from '../quantity-text.ts';
import { type DisplayUnits, speedText } from '../speed-text.ts';
import type { FenceReportWords } from './fence-report-words.ts';
import { fenceReportWords } from './fence-words-in.ts';
import {
  consequenceName,
  endName,
  footingName,
  gradeName,
  soilName,
  speciesName,
  styleName,
  treatmentName,
} from './record-names.ts';
import type { ReportFact } from './report.ts';
import { writtenDay } from './report-words.ts';
import type { ReportedFence } from './reported-fence.ts';

const MM_PER_M = 1000;

/** A small length of the ground, `24 in` or `61 cm`. */
const groundLength = (m: number, units: DisplayUnits): string =>
  units === 'us' ? `${Number(inchesFromMm(m * MM_PER_M).toFixed(1))} in` : `${Math.round(m * 100)} cm`;

function sectionSize({ facts }: ReportedFence, words: FenceReportWords, units: DisplayUnits): string {
  const size = (mm: number): string => (units === 'us' ? String(Number(inchesFromMm(mm).toFixed(2))) : mm.toFixed(0));
  const { section } = facts.wood;
  const unit = depthUnit(units);
  return section.kind === 'round'
    ? words.round(`${size(section.diameterMm)} ${unit}`)
    : `${words.by(size(section.widthMm), size(section.depthMm))} ${unit}`;
}

function postsValue(fence: ReportedFence, words: FenceReportWords, language: ChartLanguage): string {
  const { wood } = fence.facts;
  const size = sectionSize(fence, words, fence.units);
  if (wood.treatmentClass === 'does-not-rot') return `${words.noRot}, ${size}`;
  return `${speciesName(wood.species, language)}, ${gradeName(wood.grade, language)}, ${size}`;
}

function groundValue({ facts, units }: ReportedFence, words: FenceReportWords, language: ChartLanguage): string {
  const { embedmentM, footing, footingDiameterM } = facts.ground;
  const depth = embedmentM === null ? words.depthUnknown : words.deep(groundLength(embedmentM, units));
  if (footing === null) return `${depth}, ${words.footingUnknown}`;
  const across = footingDiameterM === null ? null : groundLength(footingDiameterM, units);
  return `${depth}, ${words.inFooting(footingName(footing, language), across)}`;
}

function trimmerValue({ facts, units }: ReportedFence, words: FenceReportWords): string {
  const { guards, yearlyCutMm } = facts.trimmer;
  const [fitted, none, unknown] = words.guards;
  if (guards === true) return fitted;
  const base = guards === false ? none : unknown;
  return yearlyCutMm === 0
    ? base
    : `${base}, ${words.yearlyCut(`${depthFigure(yearlyCutMm, units)} ${depthUnit(units)}`)}`;
}

/** What the register knows of a fence, as facts. */
export function fenceFactList(fence: ReportedFence, language: ChartLanguage): readonly ReportFact[] {
  const words = fenceReportWords(language);
  const { facts, forecast, units, site } = fence;
  const { run, installed } = facts;
  const { gustMps, returnPeriodYears } = forecast.designGust;
  const one = seasonOne(forecast);
  const end = (facts: EndFacts): string =>
    facts.kind === 'return'
      ? words.returnOf(endName(facts.kind, language), lengthText(facts.returnLengthM, units))
      : endName(facts.kind, language);
  const { facts: names } = words;
  return [
    {
      name: names.designGust,
      value: speedText(gustMps, units),
      small: returnPeriodYears === null ? words.gustLocal : words.gustOnce(Math.round(returnPeriodYears)),
    },
    { name: names.windSource, value: site.windSource },
    {
      name: names.installed,
      value:
        installed.earliest === installed.latest
          ? writtenDay(installed.earliest, language)
          : words.between(writtenDay(installed.earliest, language), writtenDay(installed.latest, language)),
      small: words.ageIn(one.ageYears.toFixed(1), one.label),
    },
    {
      name: names.run,
      value: words.long(lengthText(run.runLengthM, units), lengthText(run.heightM, units)),
      small: words.everyPost(lengthText(run.postSpacingM, units)),
    },
    {
      name: names.style,
      value:
        run.solidity === 1
          ? styleName(fence.style, language)
          : `${styleName(fence.style, language)}, ${words.solid(Math.round(run.solidity * 100))}`,
      small: run.bottomGapM > 0 ? words.clearOfGround(lengthText(run.bottomGapM, units)) : undefined,
    },
    { name: names.posts, value: postsValue(fence, words, language) },
    { name: names.treatment, value: treatmentName(facts.wood.treatmentClass, language) },
    { name: names.ground, value: groundValue(fence, words, language) },
    {
      name: names.ends,
      value: `${end(run.ends[0])}; ${end(run.ends[1])}`,
      small: words.numberedFrom(fence.namedEnd),
    },
    {
      name: names.soil,
      value: soilName(facts.site.soilClass, language),
      small: facts.site.soilSaturated ? words.saturated : undefined,
    },
    {
      name: names.exposure,
      value: facts.site.exposure,
      small: facts.site.topographicFactor > 1 ? words.topography(facts.site.topographicFactor) : undefined,
    },
    { name: names.trimmer, value: trimmerValue(fence, words) },
    { name: names.consequence, value: consequenceName(fence.consequence, language) },
  ];
}
