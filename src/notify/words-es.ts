import type { FenceStanding } from '../forecast/fence-forecast.ts';
import type { FenceNews } from './fence-news.ts';
import { at, foundAt, keptShort, listed, once } from './fence-phrases-es.ts';
import { MATTER_WORDS_ES } from './matter-words-es.ts';
import type { MessageWords } from './message-words.ts';
import { officeName } from './office-name.ts';
import { dayInWords, likelihoodInWords } from './plain-words.ts';
import type { OfferKind } from './works-offer.ts';

const STANDING: Readonly<Record<FenceStanding, string>> = {
  clear: 'con margen',
  closing: 'cerca del límite',
  short: 'insuficiente',
  'short from new': 'insuficiente desde nueva',
};

/** The chance told in N years beside the gust's own, where it is higher. */
function higherThan({ pSnap, onceInYears }: FenceNews): string {
  if (pSnap === null || onceInYears === null || onceInYears > 1000 || pSnap < 1.05 / onceInYears) return '';
  return `, más que una en ${Number(onceInYears.toPrecision(2))}, porque la cerca puede ser mucho más débil que el valor medio`;
}

const count = (number: number, one: string, many: string): string =>
  number === 0 ? '' : `${number} ${number === 1 ? one : many}`;

/** What is suggested, in the middle of a sentence. */
const OFFERED: Readonly<Record<OfferKind, string>> = {
  inspect: 'una revisión a ras de suelo',
  'groundline-treatment': 'un tratamiento a ras de suelo',
  'post-swap': 'postes nuevos',
  'end-posts': 'postes nuevos en los extremos',
  'added-posts': 'postes añadidos',
  rebuild: 'una reconstrucción',
};

function goesShort(news: FenceNews): string {
  if (news.keptShort) return `Ahora ${keptShort(news.holds)}.`;
  if (news.standing === 'short from new') return 'No la aguanta desde que se construyó.';
  if (news.shortNow) return `${news.running ? 'Ya no la aguanta' : 'No la aguantará'} en la temporada ${news.season}.`;
  if (news.shortSeason) return `Deja de aguantarla en la temporada ${news.shortSeason}.`;
  return 'La sigue aguantando durante las próximas 30 temporadas.';
}

function shortInChart({ standing, shortSeason }: FenceNews): string {
  if (standing === 'short from new') return 'insuficiente desde que se construyó';
  if (standing === 'short') return 'ya insuficiente';
  return shortSeason ? `insuficiente desde la temporada ${shortSeason}` : 'suficiente durante 30 temporadas';
}

/** Spanish, as owners in the United States and Mexico read it. */
export const WORDS_ES: MessageWords = {
  standing: STANDING,
  unknown: {
    'install date': 'cuándo se construyó',
    embedment: 'a qué profundidad están enterrados los postes',
    footing: 'qué clase de cimiento los sujeta',
    'treatment class': 'cómo se trató la madera',
    species: 'la clase de madera',
    'end kind': 'con qué se encuentran sus extremos',
  },
  matter: MATTER_WORDS_ES,
  sameTime: 'al mismo tiempo',
  danger: (n) =>
    n.isDangerous
      ? `Peligrosa ahora: ${foundAt(n)}. Mantenga alejadas de la cerca a las personas, sobre todo con viento, hasta que haya ido una cuadrilla.`
      : null,
  covering: (fences) =>
    fences === 1
      ? 'Tenemos novedades de esta cerca: abajo está lo que aguanta, lo que sugerimos y qué tan seguros estamos.'
      : 'Tenemos novedades de estas cercas: abajo está lo que aguantan, lo que sugerimos y qué tan seguros estamos.',
  greeting: (name) => `Estimado/a ${name}:`,
  about: (n) => `${at(n)}, ${n.place}`,
  answer: (n) => [
    n.rottedThrough
      ? `Según nuestra estimación sus postes están podridos de lado a lado; cualquier viento fuerte puede romperla. Mantenga alejadas a las personas y haga que la revisen primero. Debería aguantar ${n.shouldHold}, la ráfaga de diseño del lugar.`
      : `Sus postes aguantan una ráfaga de ${n.holds} en la temporada ${n.season}; deberían aguantar ${n.shouldHold}, la ráfaga de diseño del lugar.`,
    `${goesShort(n)}${n.onceInYears === null ? '' : ` Una ráfaga que la rompe llega ${once(n.onceInYears)}.`}`,
  ],
  ends: (n) =>
    n.endsHold && n.endsStanding && n.endsStanding !== 'clear' && !n.matters.includes('ends short')
      ? `Los postes de sus extremos, juzgados aparte, aguantan ${n.endsHold} (${STANDING[n.endsStanding]}).`
      : null,
  by: ({ actBy }) => {
    if (actBy.kind === 'before' && actBy.latest !== null)
      return `a más tardar el ${dayInWords(actBy.latest, 'es')}, para que los cimientos nuevos estén listos cuando empiece la temporada ${actBy.season}, el ${dayInWords(actBy.day, 'es')}`;
    if (actBy.kind === 'before')
      return `antes de que empiece la temporada ${actBy.season}, el ${dayInWords(actBy.day, 'es')}`;
    const next = actBy.next ? `, a más tardar antes de que empiece la próxima, el ${dayInWords(actBy.next, 'es')}` : '';
    return `en cuanto pueda ir una cuadrilla, porque la temporada ${actBy.season} está en curso${next}`;
  },
  nothingDone: (n) => [
    ...(n.later
      ? [
          `Para la temporada ${n.later.season} esperamos que aguante ${n.later.holds}${n.later.onceInYears === null ? '' : `, una ráfaga que llega ${once(n.later.onceInYears)}`}.`,
        ]
      : []),
    ...(n.pSnap === null
      ? ['No podemos decir qué tan probable es que se rompa esta temporada: el lugar no tiene curva de ráfagas.']
      : [
          `Que el viento la rompa ${n.wellUnderWay ? `en toda una temporada como ${n.season}` : `en la temporada ${n.season}`} es ${likelihoodInWords(n.pSnap, 'es')}${higherThan(n)}.`,
        ]),
  ],
  sureness: (n) => [
    ...(n.pShortNow === null
      ? []
      : [`Que no aguante la ráfaga de diseño en la temporada ${n.season} es ${likelihoodInWords(n.pShortNow, 'es')}.`]),
    ...(n.pShortThen === null || n.shortNow
      ? []
      : [`Que no la aguante en la temporada ${n.shortSeason ?? ''} es ${likelihoodInWords(n.pShortThen, 'es')}.`]),
    `En 8 de cada 10 casos aguanta entre ${n.holdsFrom} y ${n.holdsTo}.`,
  ],
  offered: ({ kind, postCount }, range) => {
    const posts = `${postCount} poste${postCount === 1 ? '' : 's'}`;
    switch (kind) {
      case 'post-swap':
        return `Postes nuevos, ${posts}: ${range}.`;
      case 'end-posts':
        return `Postes nuevos en los extremos, ${posts}: ${range}.`;
      case 'added-posts':
        return `Un poste más en cada tramo, ${posts}: ${range}.`;
      case 'groundline-treatment':
        return `Tratamiento a ras de suelo de ${posts}: ${range}.`;
      case 'inspect':
        return `Revisar ${posts} a ras de suelo: ${range}.`;
      case 'rebuild':
        return `Reconstruirla con ${posts}: ${range}.`;
    }
  },
  budget:
    'Son cifras para presupuestar, no una cotización: sin impuestos, con nuestros precios usuales. Si solo algunos postes están débiles, es menos.',
  wayOut: (by, offers) => {
    const all = offers.map(({ kind, range }) => `${OFFERED[kind]} (${range})`);
    return `Sugerimos ${all.join(offers[0]?.kind === 'inspect' ? ' y después, según lo que se encuentre, ' : ' o ')}, ${by}. Son cifras para presupuestar, no una cotización.`;
  },
  waiting: (extra) =>
    `Si pasa, arreglarlo cuesta en promedio ${extra} más que a tiempo: en una mala semana faltan cuadrillas y postes, y una cerca rara vez cae sola.`,
  basis:
    'Las velocidades son ráfagas de 3 segundos a 10 m de altura en campo abierto, como en un mapa de viento. La madera a ras de suelo se calcula con la edad, el tratamiento, el clima y el suelo, y con las mediciones y tormentas de las que haya informe.',
  designGust: (n) =>
    n.shouldHoldYears === null
      ? `La ráfaga de diseño de ${n.shouldHold} es la regla local para cercas en este lugar.`
      : `La ráfaga de diseño de ${n.shouldHold} es la que este lugar ve más o menos una vez en ${Math.round(n.shouldHoldYears)} años.`,
  unknowns: (inputs) =>
    `No consta, y es lo que más pesa: ${inputs.join('; ')}. Si lo sabe, díganoslo: la respuesta será más precisa.`,
  leanAt: (n) => n.lean && `El suelo cede con una ráfaga de unas ${n.lean.at} (entre ${n.lean.from} y ${n.lean.to}).`,
  leanMeans:
    'Entonces la cerca se inclina, y eso es una reparación. Es el número menos seguro y lo mencionamos una sola vez.',
  quote: 'El costo depende de lo que se encuentre: la oficina le cotiza si lo pide.',
  call: (office, byMail) =>
    `${officeName(office, 'es')}, ${office.phone ? `${office.phone}, ` : ''}${office.email}.${byMail ? ' También puede simplemente responder a este mensaje.' : ''}`,
  pictureAlt: (n) =>
    `Gráfica de la cerca ${n.ref}, desde nueva hasta 30 temporadas más: se rompe a ${n.holds} en la temporada ${n.season} (entre ${n.holdsFrom} y ${n.holdsTo}), su ráfaga de diseño es ${n.shouldHold}, ${shortInChart(n)}.`,
  why: (office, byMail) =>
    `Recibe este mensaje porque ${officeName(office, 'es')} cuida esta cerca por usted. Escribimos cuando algo cambia, y una vez antes de la temporada de tormentas mientras no aguante; si no, no. Para no recibir más, ${office.phone ? `llame al ${office.phone} o ` : ''}escriba a ${office.email}${!byMail && office.postalAddress ? ` o a ${officeName(office, 'es')}, ${office.postalAddress.replace(/\s*\n\s*/g, ', ')}` : ''}.`,
  headings: {
    changed: 'Qué cambió',
    suggestion: 'Qué sugerimos, y para cuándo',
    nothingDone: 'Si no se hace nada',
    sureness: 'Qué tan seguros estamos',
    basis: 'En qué se basa',
    ground: 'El suelo',
    cost: 'Qué puede costar',
    call: 'A quién llamar',
    cautions: 'Tenga en cuenta',
    table: 'Sus cercas en este mensaje',
    worst: 'Las tres que más lo necesitan',
  },
  digest: {
    subject: (fences, short) =>
      `${fences} de sus cercas tienen novedades${short > 0 ? `: ${short} no ${short === 1 ? 'aguanta' : 'aguantan'} la ráfaga de diseño` : ''}`,
    answer: (fences, counts, furthest) => [
      `De las ${fences} cercas de este mensaje, ${listed([
        count(
          counts.short + counts['short from new'],
          'no aguanta su ráfaga de diseño',
          'no aguantan su ráfaga de diseño',
        ),
        count(counts.closing, 'está cerca del límite', 'están cerca del límite'),
        count(counts.clear, 'está con margen', 'están con margen'),
      ])}.`,
      `La que más lejos queda de su ráfaga de diseño es ${furthest.ref} en ${furthest.site}: sus postes ${furthest.rottedThrough ? 'están podridos de lado a lado según nuestra estimación' : `aguantan ${furthest.holds}`} y deberían aguantar ${furthest.shouldHold}. ${goesShort(furthest)}`,
    ],
    columns: [
      'Cerca',
      'Estado',
      'Aguanta',
      'Debería aguantar',
      'Deja de aguantar',
      'La ráfaga que la rompe llega',
      'Novedad',
    ],
    notShort: 'no en 30 temporadas',
    sinceBuilt: 'desde que se construyó',
    now: 'ya',
    noCurve: 'no se sabe',
    csv: 'El archivo adjunto las tiene todas para una hoja de cálculo, con lo que puede costar cada una.',
    more: (count) => `Y ${count} más: vea la tabla adjunta.`,
    moreFences: (count) => ` y ${count} más`,
    total: (fences, range) =>
      `Sugerimos obras en ${fences === 1 ? 'una de ellas' : `${fences} de ellas`}: lo mínimo suma ${range}, una cifra para presupuestar y no una cotización.`,
    waiting: (extra) =>
      `Dejarlas todas una temporada cuesta en promedio ${extra} más, según lo que puede pasar: reconstruir en una mala semana, y lo que una cerca arrastra consigo.`,
    danger: (fences, all) =>
      `Peligro ahora: ${fences.map((n) => `${n.ref} (${foundAt(n)})`).join('; ')}${all > fences.length ? `; y ${all - fences.length} más, en la tabla adjunta` : ''}. Mantenga alejadas a las personas, sobre todo con viento, hasta que haya ido una cuadrilla.`,
  },
};
