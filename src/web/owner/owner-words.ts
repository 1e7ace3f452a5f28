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
  readonly breaks: (holds: string, shouldHold: string, onceInYears: number | null) => string;
  readonly now: string;
  readonly none: string;
  readonly shortNow: string;
  readonly shortIn: (season: string) => string;
  readonly notShort: string;
  readonly chart: string;
  readonly linkNote: (until: string) => string;
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
      `It breaks in a gust of about ${holds}${years === null ? '' : `, one that comes ${onceInWords(years, 'en')}`}. At its place it should hold ${shouldHold}.`,
    now: 'now',
    none: 'not within 30',
    shortNow: 'It does not hold that gust now.',
    shortIn: (season) => `It holds that gust until season ${season}.`,
    notShort: 'It holds that gust in every season forecast.',
    chart:
      'The gust that breaks a post at the ground (snap speed) and the one that turns its footing (lean speed), season by season, against the gust that it should hold.',
    linkNote: (until) =>
      `Whoever has this link sees these pages: pass it on only to people who may. It opens until ${until}; the office can end it before.`,
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
      `Se rompe con una ráfaga de unas ${holds}${years === null ? '' : `, que llega ${onceInWords(years, 'es')}`}. En su lugar debería aguantar ${shouldHold}.`,
    now: 'ya',
    none: 'no en 30',
    shortNow: 'Ahora no aguanta esa ráfaga.',
    shortIn: (season) => `Aguanta esa ráfaga hasta la temporada ${season}.`,
    notShort: 'Aguanta esa ráfaga en todas las temporadas previstas.',
    chart:
      'La ráfaga que rompe un poste a ras de suelo y la que inclina su cimiento, temporada por temporada, frente a la ráfaga que debería aguantar.',
    linkNote: (until) =>
      `Quien tenga este enlace ve estas páginas: páselo solo a quien pueda verlas. Se abre hasta el ${until}; la oficina puede anularlo antes.`,
  },
};
