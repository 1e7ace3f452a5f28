import { NOTHING_LEFT } from '../../drawing/held-text.ts';
import { onceInWords } from '../../drawing/quantity-text.ts';
import type { PageLanguage } from '../frame/page-language.ts';

/** The words of the pages behind an owner's link. */
export interface OwnerWords {
  readonly yours: string;
  readonly lead: (owner: string, fences: number) => string;
  readonly back: string;
  readonly fence: string;
  readonly standing: string;
  readonly holds: string;
  readonly shouldHold: string;
  readonly shortSeason: string;
  readonly site: string;
  readonly fenceTitle: (ref: string) => string;
  readonly notSwept: string;
  /** `holds`: null where next to nothing holds it. */
  readonly breaks: (holds: string | null, shouldHold: string, onceInYears: number | null) => string;
  readonly now: string;
  readonly none: string;
  readonly shortNow: string;
  readonly shortIn: (season: string) => string;
  readonly notShort: string;
  readonly chart: string;
  /** How many fences there are and how they stand. */
  readonly counts: (fences: number, short: number, closing: number) => string;
  readonly oneOf: (ref: string, site: string, sentences: string) => string;
  readonly suggestion: string;
  readonly nothingDone: string;
  readonly sureness: string;
  readonly basis: string;
  readonly read: {
    readonly heading: string;
    readonly one: string;
    readonly all: (fences: number) => string;
    readonly button: string;
    readonly since: (day: string) => string;
    readonly noted: string;
    readonly already: string;
  };
}

/** The words of the pages behind an owner's link, by language. */
export const OWNER_WORDS: Readonly<Record<PageLanguage, OwnerWords>> = {
  en: {
    yours: 'Your fences',
    lead: (owner, fences) =>
      fences === 0
        ? `The office looks after no fence of ${owner} now.`
        : `What the office knows of the fences of ${owner}.`,
    back: 'All your fences',
    fence: 'Fence',
    standing: 'Standing',
    holds: 'Holds a gust of',
    shouldHold: 'Should hold',
    shortSeason: 'Goes short in season',
    site: 'Site',
    fenceTitle: (ref) => `Fence ${ref}`,
    notSwept: 'This fence has no numbers yet; the next nightly sweep computes them.',
    breaks: (holds, shouldHold, years) =>
      `${holds === null ? NOTHING_LEFT.en : `It breaks in a gust of about ${holds}${years === null ? '' : `, one that comes ${onceInWords(years, 'en')}`}`}. At its place it should hold ${shouldHold}.`,
    now: 'now',
    none: 'not within 30',
    shortNow: 'It does not hold that gust now.',
    shortIn: (season) => `It holds that gust until season ${season}.`,
    notShort: 'It holds that gust in every season forecast.',
    chart:
      'The gust that breaks a post at the ground (snap speed) and the one that turns its footing (lean speed), season by season, against the gust that it should hold.',
    counts: (fences, short, closing) =>
      short + closing === 0
        ? fences === 1
          ? 'It holds the gust that it should, and will for some seasons.'
          : `All ${fences} hold the gust that they should, and will for some seasons.`
        : fences === 1
          ? short === 1
            ? 'It does not hold the gust that it should.'
            : 'It holds the gust that it should for a few seasons more.'
          : `Of ${fences} fences, ${[
              ...(short > 0 ? [`${short} ${short === 1 ? 'does' : 'do'} not hold the gust that they should`] : []),
              ...(closing > 0 ? [`${closing} ${closing === 1 ? 'holds' : 'hold'} it for a few seasons more`] : []),
            ].join(', and ')}.`,
    oneOf: (ref, site, sentences) => `Fence ${ref} at ${site}. ${sentences}`,
    suggestion: 'What we suggest, and by when',
    nothingDone: 'If nothing is done',
    sureness: 'How sure we are',
    basis: 'What this rests on',
    read: {
      heading: 'Have you read this?',
      one: 'Tell us that you have read how this fence stands. It is noted with the day and the link; it commits you to nothing.',
      all: (fences) =>
        `Tell us that you have read how ${fences === 1 ? 'your fence stands' : `your ${fences} fences stand`}. It is noted with the day and the link; it commits you to nothing.`,
      button: 'I have read this',
      since: (day) => `You told us on ${day} that you have read this. Should it change, we ask again.`,
      noted: 'Thank you. It is noted that you have read this.',
      already: 'It was noted already that you have read this.',
    },
  },
  es: {
    yours: 'Sus cercas',
    lead: (owner, fences) =>
      fences === 0
        ? `La oficina no cuida ahora ninguna cerca de ${owner}.`
        : `Lo que la oficina sabe de las cercas de ${owner}.`,
    back: 'Todas sus cercas',
    fence: 'Cerca',
    standing: 'Estado',
    holds: 'Aguanta una ráfaga de',
    shouldHold: 'Debería aguantar',
    shortSeason: 'Insuficiente en la temporada',
    site: 'Sitio',
    fenceTitle: (ref) => `Cerca ${ref}`,
    notSwept: 'Esta cerca todavía no tiene números; se calculan la próxima noche.',
    breaks: (holds, shouldHold, years) =>
      `${holds === null ? NOTHING_LEFT.es : `Se rompe con una ráfaga de unas ${holds}${years === null ? '' : `, que llega ${onceInWords(years, 'es')}`}`}. En su lugar debería aguantar ${shouldHold}.`,
    now: 'ya',
    none: 'no en 30',
    shortNow: 'Ahora no aguanta esa ráfaga.',
    shortIn: (season) => `Aguanta esa ráfaga hasta la temporada ${season}.`,
    notShort: 'Aguanta esa ráfaga en todas las temporadas previstas.',
    chart:
      'La ráfaga que rompe un poste a ras de suelo y la que inclina su cimiento, temporada por temporada, frente a la ráfaga que debería aguantar.',
    counts: (fences, short, closing) =>
      short + closing === 0
        ? fences === 1
          ? 'Aguanta la ráfaga que debería, y la aguantará algunas temporadas.'
          : `Las ${fences} aguantan la ráfaga que deberían, y la aguantarán algunas temporadas.`
        : fences === 1
          ? short === 1
            ? 'No aguanta la ráfaga que debería.'
            : 'Aguanta la ráfaga que debería pocas temporadas más.'
          : `De ${fences} cercas, ${[
              ...(short > 0 ? [`${short} no ${short === 1 ? 'aguanta' : 'aguantan'} la ráfaga que deberían`] : []),
              ...(closing > 0 ? [`${closing} la ${closing === 1 ? 'aguanta' : 'aguantan'} pocas temporadas más`] : []),
            ].join(', y ')}.`,
    oneOf: (ref, site, sentences) => `Cerca ${ref} en ${site}. ${sentences}`,
    suggestion: 'Qué proponemos, y para cuándo',
    nothingDone: 'Si no se hace nada',
    sureness: 'Qué tan seguros estamos',
    basis: 'En qué se basa esto',
    read: {
      heading: '¿Ha leído esto?',
      one: 'Díganos que ha leído cómo está esta cerca. Se anota con el día y el enlace; no le obliga a nada.',
      all: (fences) =>
        `Díganos que ha leído cómo ${fences === 1 ? 'está su cerca' : `están sus ${fences} cercas`}. Se anota con el día y el enlace; no le obliga a nada.`,
      button: 'He leído esto',
      since: (day) => `El ${day} nos dijo que ha leído esto. Si cambia, volveremos a preguntar.`,
      noted: 'Gracias. Queda anotado que ha leído esto.',
      already: 'Ya estaba anotado que ha leído esto.',
    },
  },
};
