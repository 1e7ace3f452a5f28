import type { ReasonStep } from '../../forecast/reason-step.ts';
import type { Standing } from '../../units/provenance.ts';
import type { ChartLanguage } from '../chart-words.ts';
import { equationInSpanish } from './reason-equations.ts';
import { quantityInSpanish } from './reason-quantities.ts';
import { sourceInSpanish } from './reason-sources.ts';

/** A step of the reasons as it is shown in one language. */
export interface ShownStep extends Omit<ReasonStep, 'basis' | 'tag'> {
  readonly basis: string;
  readonly tag: string;
}

const BASES: Readonly<Record<ReasonStep['basis'], string>> = {
  expected: 'esperado',
  code: 'código',
  both: 'ambos',
};

const GROUPS: Readonly<Record<string, string>> = {
  rot: 'pudrición',
  section: 'sección',
  wind: 'viento',
  snap: 'rotura',
  lean: 'inclinación',
  'code check': 'revisión por código',
  hazard: 'ráfagas del sitio',
  standing: 'estado',
  chance: 'probabilidad',
};

const TAGS: Readonly<Record<Standing, string>> = {
  recorded: 'anotado',
  read: 'leído',
  'read at second hand': 'leído de segunda mano',
  memory: 'de memoria',
  derived: 'derivado',
  judgement: 'a criterio',
  'common practice, no source': 'práctica común, sin fuente',
};

/** A step in one language; symbols, numbers and titles of sources are the same in both. */
export function reasonStepIn(step: ReasonStep, language: ChartLanguage): ShownStep {
  if (language === 'en') return step;
  const { basis, group, quantity, value, equation, source, tag } = step;
  return {
    ...step,
    basis: BASES[basis],
    group: GROUPS[group] ?? group,
    quantity: quantityInSpanish(quantity) ?? quantity,
    value: typeof value === 'string' ? (quantityInSpanish(value) ?? value) : value,
    equation: equationInSpanish(equation) ?? equation,
    source: sourceInSpanish(source) ?? source,
    tag: TAGS[tag],
  };
}
