import type { ChartLanguage } from './chart-words.ts';

/** The cautions that go with every capacity shown, in one language. */
export interface Cautions {
  /** The one sentence for where there is room for no more. */
  readonly brief: string;
  /** All of them, the weightiest first; its first begins with the brief one. */
  readonly all: readonly string[];
}

const brief = {
  en: 'These numbers are planning estimates, not a structural certification.',
  es: 'Estos números son estimaciones para planear, no una certificación estructural.',
} as const;

const CAUTIONS: Readonly<Record<ChartLanguage, Cautions>> = {
  en: {
    brief: brief.en,
    all: [
      `${brief.en} Local codes and the authority having jurisdiction decide; ask a licensed engineer for anything that matters to life safety.`,
      'Stay away from a leaning fence in wind.',
      'Call before you dig: 811 has buried lines marked.',
      'Treated wood and its dust need care: gloves and a mask, and never burn it. Preservatives only by licensed applicators where the law says so.',
    ],
  },
  es: {
    brief: brief.es,
    all: [
      `${brief.es} Deciden los códigos locales y la autoridad competente; consulte a un ingeniero con licencia para todo lo que toque la seguridad de las personas.`,
      'Aléjese de una cerca inclinada cuando haya viento.',
      'Llame antes de excavar: el 811 marca las líneas enterradas.',
      'La madera tratada y su polvo piden cuidado: guantes y mascarilla, y nunca la queme. Preservantes solo por aplicadores con licencia donde la ley lo pida.',
    ],
  },
};

/** The cautions in one language: the only place that holds their words. */
export const cautionsIn = (language: ChartLanguage): Cautions => CAUTIONS[language];
