import type { Band } from '../forecast/band.ts';
import type { BeliefDimension } from '../forecast/belief-points.ts';
import type { EvidenceSummary, UnknownBelief } from '../forecast/evidence/evidence-summary.ts';
import type { ChartLanguage } from './chart-words.ts';
import {
  changeSentences,
  evidenceCountSentence,
  LEAST_RANGE_CHANGE,
  LEAST_SHIFT,
  nothingSeenSentence,
  surpriseSentences,
} from './evidence-sentences.ts';
import { rateText } from './evidence-table.ts';
import { remarkInSpanish } from './spanish/forecast-remarks.ts';
import type { DisplayUnits } from './speed-text.ts';

/** The sentences on what was seen of a fence and what it changed. */
interface EvidenceSentences {
  readonly count: typeof evidenceCountSentence;
  readonly changes: typeof changeSentences;
  readonly surprise: typeof surpriseSentences;
  readonly nothingSeen: typeof nothingSeenSentence;
}

const counted = (number: number, one: string, many: string): string => `${number} ${number === 1 ? one : many}`;

function count({ readings, readPosts, storms }: EvidenceSummary): string {
  const posts = new Set(readPosts.map(({ post }) => post)).size;
  const parts = [
    ...(readings > 0 ? [`${counted(readings, 'medición', 'mediciones')} en ${counted(posts, 'poste', 'postes')}`] : []),
    ...(storms > 0 ? [counted(storms, 'tormenta', 'tormentas')] : []),
  ];
  return `${readings + storms === 1 ? 'Cuenta' : 'Cuentan'} ${parts.join(' y ')}.`;
}

/** What an unknown is called after "dejan" and "dan", and its words for more and for less of it. */
const WORDS: Readonly<Record<BeliefDimension, readonly [name: string, more: string, less: string]>> = {
  pace: ['su pudrición', 'más rápida', 'más lenta'],
  'fibre strength': ['la fuerza de sus postes', 'mayor', 'menor'],
  footing: ['la fuerza de sus cimientos', 'mayor', 'menor'],
  'permanent load': ['su carga de viento', 'mayor', 'menor'],
  'install date': ['su fecha de construcción', 'más tardía', 'más temprana'],
  embedment: ['su profundidad enterrada', 'mayor', 'menor'],
  'footing diameter': ['el ancho de sus cimientos', 'mayor', 'menor'],
};

/** What moved an unknown, as the subject of a sentence, and whether it is several. */
function mover(
  movedBy: Exclude<UnknownBelief['movedBy'], 'nothing'>,
  { readings, storms }: EvidenceSummary,
): readonly [subject: string, several: boolean] {
  const reading = readings === 1 ? 'la medición' : 'las mediciones';
  const storm = storms === 1 ? 'la tormenta' : 'las tormentas';
  switch (movedBy) {
    case 'readings':
      return [reading, readings !== 1];
    case 'storms':
      return [storm, storms !== 1];
    case 'readings and storms':
      return [`${reading} y ${storm}`, true];
  }
}

const capital = (text: string): string => `${text.charAt(0).toUpperCase()}${text.slice(1)}`;

function rangeChange(prior: Band, posterior: Band): string {
  if (prior.p10 <= 0 || posterior.p10 <= 0) return '';
  const change = Math.log(posterior.p90 / posterior.p10) / Math.log(prior.p90 / prior.p10) - 1;
  if (Math.abs(change) < LEAST_RANGE_CHANGE) return '';
  return `; su margen probable es ${Math.round(Math.abs(change) * 100)} % más ${change < 0 ? 'angosto' : 'ancho'}`;
}

function change(
  { unknown, prior, posterior, movedBy }: UnknownBelief,
  evidence: EvidenceSummary,
  { learnedVersion, units }: { readonly learnedVersion: number | null; readonly units: DisplayUnits },
): string | null {
  if (movedBy === 'nothing') return null;
  const [name, more, less] = WORDS[unknown];
  const [subject, several] = mover(movedBy, evidence);
  const than = learnedVersion === null ? 'lo publicado' : 'lo que se esperaba';
  const shift = posterior.p50 / prior.p50 - 1;
  const range = rangeChange(prior, posterior);
  if (Math.abs(shift) < LEAST_SHIFT) {
    return range === '' ? null : `${capital(subject)} ${several ? 'dejan' : 'deja'} ${name} en ${than}${range}.`;
  }
  const by =
    shift >= 1
      ? `${(shift + 1).toFixed(1)} veces ${than}`
      : `${Math.round(Math.abs(shift) * 100)} % ${shift > 0 ? more : less} que ${than}`;
  const rates =
    unknown === 'pace' ? `, ${rateText(posterior.p50, units)} y no ${rateText(prior.p50, units)} en el medio` : '';
  return `Según ${subject}, ${name} es ${by}${rates}${range}.`;
}

function changes(evidence: EvidenceSummary, learnedVersion: number | null, units: DisplayUnits): readonly string[] {
  const said = evidence.unknowns
    .map((unknown) => change(unknown, evidence, { learnedVersion, units }))
    .filter((sentence) => sentence !== null);
  return said.length > 0 ? said : ['Lo observado cuadra con lo esperado y casi no mueve nada de lo que no se sabe.'];
}

const nothingSeen = (learnedVersion: number | null): string =>
  learnedVersion === null
    ? 'No se midió ni se informó nada que mueva lo que se cree: valen los valores publicados.'
    : `No se midió ni se informó nada que mueva lo que se cree: vale lo que dejó la aceptación ${learnedVersion} de lo que aprendió el registro.`;

/** The sentences on what was seen of a fence and what it changed, by language. */
export const EVIDENCE_SENTENCES: Readonly<Record<ChartLanguage, EvidenceSentences>> = {
  en: {
    count: evidenceCountSentence,
    changes: changeSentences,
    surprise: surpriseSentences,
    nothingSeen: nothingSeenSentence,
  },
  es: {
    count,
    changes,
    surprise: (evidence) => surpriseSentences(evidence).map(remarkInSpanish),
    nothingSeen,
  },
};
