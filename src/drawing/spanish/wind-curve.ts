import { phraseBook } from './phrase-book.ts';

/** What a site's curve and its design gust rest on, and why there is no curve. */
export const windCurveInSpanish = phraseBook([
  [
    'local fence rule, used as it stands, as a 3-second gust',
    'regla local de cercas, tal como está, como ráfaga de 3 segundos',
  ],
  [
    "the gust that comes about once in {} years on the site's curve ({})",
    'la ráfaga que llega más o menos una vez en {} años según la curva del sitio ({})',
  ],
  ['the entered {}-year gust itself, for want of a curve', 'la ráfaga de {} años tal como se anotó, a falta de curva'],
  ['through the entered {}-year and {}-year gusts', 'por las ráfagas anotadas de {} y de {} años'],
  ['from the entered {}-year gust by {}', 'desde la ráfaga anotada de {} años, con {}'],
  [
    'the two entered gusts do not rise with their return periods: check them',
    'las dos ráfagas anotadas no suben con su periodo de retorno: revíselas',
  ],
  [
    'a local fence rule says nothing of how often a gust comes: enter a map gust with its return period as the second point',
    'una regla local de cercas no dice cada cuánto llega una ráfaga: anote como segundo punto una ráfaga de mapa con su periodo de retorno',
  ],
  [
    'one gust does not fix the curve in a hurricane region: enter a second map gust with its return period',
    'en una región de huracanes una sola ráfaga no fija la curva: anote una segunda ráfaga de mapa con su periodo de retorno',
  ],
]);
