import type { ChartLanguage } from '../../drawing/chart-words.ts';
import { figureText } from '../../drawing/quantity-text.ts';
import type { FencePage } from '../../register/fence-list.ts';
import type { FenceQuery } from '../../register/fence-query.ts';
import { LIST_WORDS } from './list-words.ts';

type Counted = Pick<FencePage, 'anywhere' | 'total' | 'unswept'>;

interface SummaryOptions {
  readonly lookAheadSeasons: number;
  readonly nightly: string;
  readonly sweeping: boolean;
  readonly language?: ChartLanguage;
}

/** A count with its thousands apart: `100,000`. */
export const countText = (count: number): string => figureText(count, 15);

/** What the register comes to, in plain words: first what is not computed yet, so that nothing sounds like an all-clear, then the computed. */
export function summarySentence(page: Counted, options: SummaryOptions): string {
  const { total, unswept } = page;
  const spanish = options.language === 'es';
  if (total === 0) return spanish ? 'El registro no tiene cercas todavía.' : 'The register holds no fences yet.';
  const way = spanish
    ? options.sweeping
      ? 'se está calculando ahora'
      : `se calculan a las ${options.nightly}`
    : options.sweeping
      ? 'a sweep is at work'
      : `run stormpale sweep, or wait for the sweep at ${options.nightly}`;
  const lead = unswept === 0 ? [] : [unsweptSentence(page, way, spanish)];
  const computed = spanish ? computedInSpanish : computedSentence;
  return [...lead, ...(unswept < total ? [computed(page, options.lookAheadSeasons)] : [])].join(' ');
}

function unsweptSentence({ total, unswept }: Counted, way: string, spanish: boolean): string {
  if (spanish)
    return total === 1
      ? `La cerca todavía no está calculada: ${way}.`
      : `${countText(unswept)} de ${countText(total)} cercas todavía no ${unswept === 1 ? 'está calculada' : 'están calculadas'}: ${way}.`;
  return total === 1
    ? `The fence is not computed yet: ${way}.`
    : `${countText(unswept)} of ${countText(total)} fences ${unswept === 1 ? 'is' : 'are'} not computed yet: ${way}.`;
}

/** Which of the short fences hold their gust at the line; empty where none does. */
function atEnds({ short, shortAtEndsAlone }: Counted['anywhere']): string {
  if (shortAtEndsAlone === 0) return '';
  if (shortAtEndsAlone === short) return short === 1 ? ', at its ends only' : ', all of them at their ends only';
  return `, ${countText(shortAtEndsAlone)} of them at ${shortAtEndsAlone === 1 ? 'its' : 'their'} ends only`;
}

function atEndsInSpanish({ short, shortAtEndsAlone }: Counted['anywhere']): string {
  if (shortAtEndsAlone === 0) return '';
  if (shortAtEndsAlone === short) return short === 1 ? ', solo en los extremos' : ', todas solo en los extremos';
  return `, ${countText(shortAtEndsAlone)} de ellas solo en los extremos`;
}

/** How the computed fences stand, at the line or at the ends. */
function computedSentence({ anywhere, total, unswept }: Counted, lookAheadSeasons: number): string {
  const { short, closing: more } = anywhere;
  const within =
    lookAheadSeasons === 1
      ? 'within one season'
      : `within ${lookAheadSeasons === 2 ? 'two' : lookAheadSeasons} seasons`;
  const kind = unswept === 0 ? '' : 'computed ';
  const computed = total - unswept;
  if (computed === 1) {
    if (short === 1) return `The ${kind}fence is short of its design gust now${atEnds(anywhere)}.`;
    return `The ${kind}fence is not short of its design gust now; it ${more === 1 ? 'goes' : 'does not go'} short ${within}.`;
  }
  const now = `${short === 0 ? 'None' : countText(short)} of ${countText(computed)} ${kind}fences ${short === 1 ? 'is' : 'are'} short of ${short === 1 ? 'its' : 'their'} design gust now${atEnds(anywhere)}`;
  if (more === 0) return `${now}; ${short === 0 ? 'none' : 'no other'} goes short ${within}.`;
  return `${now}; ${countText(more)}${short === 0 ? '' : ' more'} ${more === 1 ? 'goes' : 'go'} short ${within}.`;
}

function computedInSpanish({ anywhere, total, unswept }: Counted, lookAheadSeasons: number): string {
  const { short, closing: more } = anywhere;
  const within =
    lookAheadSeasons === 1 ? 'en una temporada' : `en ${lookAheadSeasons === 2 ? 'dos' : lookAheadSeasons} temporadas`;
  const computed = countText(total - unswept);
  const kind = unswept === 0 ? 'cercas' : 'cercas calculadas';
  const now =
    short === 0
      ? `Ninguna de ${computed} ${kind} deja hoy de aguantar su ráfaga de diseño`
      : `${countText(short)} de ${computed} ${kind} ya no ${short === 1 ? 'aguanta' : 'aguantan'} su ráfaga de diseño${atEndsInSpanish(anywhere)}`;
  if (more === 0) return `${now}; ninguna otra deja de aguantarla ${within}.`;
  return `${now}; ${countText(more)} más ${more === 1 ? 'deja' : 'dejan'} de aguantarla ${within}.`;
}

/** Years from, to, or both, as a few words. */
const yearsText = (from: number | null, to: number | null, [since, until]: readonly [string, string]): string =>
  from !== null && to !== null
    ? from === to
      ? String(from)
      : `${from}–${to}`
    : from !== null
      ? `${since} ${from}`
      : `${until} ${to}`;

/** What a list shows, as one sentence: how many of which fences, narrowed by what, in which order. */
export function shownSentence(page: FencePage, query: FenceQuery, language: ChartLanguage): string {
  const words = LIST_WORDS[language];
  const en = language === 'en';
  const { builtFrom, builtTo, shortFrom, shortTo } = query;
  const text = query.text.trim();
  const parts = [
    ...(query.standing === null ? [] : [words.standings[query.standing]]),
    ...(query.anywhere === null ? [] : [words.anywhere[query.anywhere]]),
    ...(query.dangerous ? [words.dangerous] : []),
    ...(query.endsStanding === null
      ? []
      : [en ? `ends ${query.endsStanding}` : `extremos: ${words.standings[query.endsStanding]}`]),
    ...(query.siteRef === null ? [] : [`${en ? 'at' : 'en'} ${page.siteName ?? query.siteRef}`]),
    ...(query.ownerRef === null ? [] : [`${en ? 'of' : 'de'} ${page.ownerName ?? query.ownerRef}`]),
    ...(query.treatmentClass === null ? [] : [words.treatment(query.treatmentClass)]),
    ...(builtFrom === null && builtTo === null
      ? []
      : [
          `${en ? 'installed' : 'instaladas'} ${yearsText(builtFrom, builtTo, en ? ['since', 'until'] : ['desde', 'hasta'])}`,
        ]),
    ...(shortFrom === null && shortTo === null
      ? []
      : [
          `${en ? 'short from season' : 'insuficientes desde la temporada'} ${yearsText(shortFrom, shortTo, en ? ['', 'until'] : ['', 'hasta'])}`.replace(
            /\s+/g,
            ' ',
          ),
        ]),
    ...(text === '' ? [] : [en ? `with “${text}”` : `con «${text}»`]),
  ];
  const order =
    query.sort === 'worst' && !query.descending
      ? words.worstFirst
      : `${en ? 'by' : 'por'} ${words.columns[query.sort].toLowerCase()}${query.descending ? `, ${words.turned}` : ''}`;
  const [found, total] = [countText(page.found), countText(page.total)];
  const which = parts.length === 0 ? '' : `: ${parts.join(', ')}`;
  if (page.found === page.total && parts.length === 0)
    return en ? `All ${total} fences, ${order}.` : `Las ${total} cercas, ${order}.`;
  return en ? `${found} of ${total} fences${which}; ${order}.` : `${found} de ${total} cercas${which}; ${order}.`;
}
