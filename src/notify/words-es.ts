import { onceInWords, percentText } from '../drawing/quantity-text.ts';
import type { FenceStanding } from '../forecast/fence-forecast.ts';
import type { FenceNews } from './fence-news.ts';
import type { MessageWords } from './message-words.ts';
import { officeName } from './office-name.ts';
import { dayInWords, likelihoodInWords } from './plain-words.ts';

const at = (news: FenceNews): string => `Cerca ${news.ref} en ${news.site}`;
const posts = (news: FenceNews): string => (news.judged === 'line' ? 'postes de línea' : 'postes');
const once = (years: number): string => onceInWords(years, 'es');
const share = (news: FenceNews): string => percentText(news.strengthLeft, 'es');

const STANDING: Readonly<Record<FenceStanding, string>> = {
  clear: 'con margen',
  closing: 'cerca del límite',
  short: 'insuficiente',
  'short from new': 'insuficiente desde nueva',
};

const keptShort = (holds: string): string =>
  `aguanta ${holds}, menos del 3 % por encima de la ráfaga de diseño, y sigue contando como insuficiente`;

const RENEWED: Readonly<Record<string, string>> = {
  rebuild: 'la reconstrucción',
  'post-swap': 'el cambio de postes',
  'steel-sleeve': 'la colocación de fundas de acero',
  'added-posts': 'la adición de postes',
};
const after = ({ renewal }: FenceNews): string =>
  renewal ? ` después de ${RENEWED[renewal.kind] ?? 'la obra'} del ${dayInWords(renewal.day, 'es')}` : '';
const footings = (news: FenceNews): string =>
  news.leansFirstAt === null
    ? ''
    : ` Los cimientos ${news.renewal?.kind === 'rebuild' ? '' : 'siguen como antes y '}se inclinan con unas ${news.leansFirstAt}.`;

/** The chance told in N years beside the gust's own, where it is higher. */
function higherThan({ pSnap, onceInYears }: FenceNews): string {
  if (pSnap === null || onceInYears === null || onceInYears > 1000 || pSnap < 1.05 / onceInYears) return '';
  return `, más que una en ${Number(onceInYears.toPrecision(2))}, porque la cerca puede ser mucho más débil que el valor medio`;
}

const count = (number: number, one: string, many: string): string =>
  number === 0 ? '' : `${number} ${number === 1 ? one : many}`;
const listed = (parts: readonly string[]): string => {
  const told = parts.filter(Boolean);
  return told.length < 2 ? told.join('') : `${told.slice(0, -1).join(', ')} y ${told[told.length - 1]}`;
};

function goesShort(news: FenceNews): string {
  if (news.keptShort) return `Ahora ${keptShort(news.holds)}.`;
  if (news.standing === 'short from new') return 'No la aguanta desde que se construyó.';
  if (news.shortNow) return `${news.running ? 'Ya no la aguanta' : 'No la aguantará'} en la temporada ${news.season}.`;
  if (news.shortSeason) return `Deja de aguantarla en la temporada ${news.shortSeason}.`;
  return 'La sigue aguantando durante las próximas 30 temporadas.';
}

const markSubject = (news: FenceNews): string =>
  news.onceInYears === null
    ? `${at(news)}: aguanta ${news.holds}, y va bajando`
    : `${at(news)}: la ráfaga que la rompe llega ${once(news.onceInYears)}`;
const markChanged =
  (years: number) =>
  (news: FenceNews): string =>
    `La ráfaga que la rompe llega ahora más de una vez en ${years} años${
      news.onceInYears === null ? '' : `: ${once(news.onceInYears)}`
    }.`;

const changedKept = (news: FenceNews): string =>
  `Sus ${posts(news)} aguantan ${news.holds} y deberían aguantar ${news.shouldHold}: menos del 3 % por encima, menos de lo que podemos distinguir. Sigue contando como insuficiente hasta que aguante más.`;

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
  subject: {
    'short from new': (n) =>
      n.keptShort
        ? `${at(n)}: ${keptShort(n.holds)}`
        : `${at(n)}: ${n.rottedThrough ? 'podrida de lado a lado, y no alcanza' : 'no alcanza'} su ráfaga de diseño desde que se construyó${n.rottedThrough ? '' : `: ${n.holdsFigure} de ${n.shouldHold}`}`,
    short: (n) =>
      n.keptShort
        ? `${at(n)}: ${keptShort(n.holds)}`
        : `${at(n)}: ${n.running ? 'ya no aguanta' : 'no aguantará'} su ráfaga de diseño en la temporada ${n.season}`,
    closing: (n) =>
      n.shortSeason === null
        ? `${at(n)}: queda a menos del 3 % de su ráfaga de diseño`
        : `${at(n)}: deja de aguantar su ráfaga de diseño en la temporada ${n.shortSeason}`,
    'ends short': (n) =>
      n.endsKeptShort && n.endsHold
        ? `${at(n)}: los postes de sus extremos aguantan ${n.endsHold}, menos del 3 % por encima de la ráfaga de diseño, y siguen contando como insuficientes`
        : `${at(n)}: los postes de sus extremos ya no aguantan la ráfaga de diseño`,
    'two thirds': (n) => `${at(n)}: le quedan menos de dos tercios de su resistencia de nueva`,
    'once in 50': markSubject,
    'once in 25': markSubject,
    'once in 10': markSubject,
    better: (n) => `${at(n)}: vuelve a tener margen`,
  },
  changed: {
    'short from new': (n) =>
      n.keptShort
        ? changedKept(n)
        : `Recién construida, con madera sana, sus ${posts(n)} no llegaban a la ráfaga de diseño de ${n.shouldHold}. No es pudrición: es la forma en que se construyó para este lugar.${n.strengthFell && n.heldNew ? ` Desde entonces la pudrición la ha bajado de ${n.heldNew} a ${n.holds}.` : ''}`,
    short: (n) =>
      n.keptShort
        ? changedKept(n)
        : `Sus ${posts(n)} ${n.running ? 'ya no alcanzan' : 'no alcanzarán'} la ráfaga de diseño del lugar, ${n.shouldHold}${n.running ? '' : `, en la temporada ${n.season}`}.`,
    closing: (n) =>
      n.shortSeason === null
        ? `Sus ${posts(n)} aguantan la ráfaga de diseño de ${n.shouldHold}, pero en las próximas temporadas por menos del 3 %: la cerca sigue contando como cerca del límite.`
        : `Sus ${posts(n)} todavía aguantan la ráfaga de diseño, pero no por mucho tiempo: dejan de aguantarla en la temporada ${n.shortSeason}.`,
    'ends short': (n) =>
      n.endsKeptShort && n.endsHold
        ? `Los postes cerca de los extremos reciben más viento que los demás. Aguantan ${n.endsHold}, menos del 3 % por encima de la ráfaga de diseño, y siguen contando como insuficientes. Si se rompen, es una reparación, no una cerca nueva.`
        : `Los postes cerca de los extremos reciben más viento que los demás y ya no aguantan la ráfaga de diseño${n.endsHold ? `: aguantan ${n.endsHold}` : ''}. Si se rompen, es una reparación, no una cerca nueva.`,
    'two thirds': (n) =>
      `La pudrición se ha llevado más de un tercio de la resistencia con que se construyeron los postes: queda ${share(n)}.`,
    'once in 50': markChanged(50),
    'once in 25': markChanged(25),
    'once in 10': markChanged(10),
    better: (n) =>
      `Vuelve a tener margen${after(n)}: sus postes aguantan la ráfaga de diseño y algo más.${footings(n)} No tiene que hacer nada.`,
  },
  sameTime: 'al mismo tiempo',
  suggestion: {
    'short from new': (by, fell) =>
      `${fell ? `Reemplazar los postes débiles ${by}, y estudiemos a la vez` : 'Estudiemos'} poner postes más juntos, postes más gruesos o tablas más abiertas${fell ? '' : `, y hagamos una de esas cosas ${by}`}. Cuando se reemplace la cerca, conviene construirla para este viento.`,
    short: (by) => `Reemplazar los postes débiles, o reconstruir la cerca, ${by}.`,
    closing: (by) => `Revisar los postes a ras de suelo y planear su reemplazo ${by}.`,
    'ends short': (by) => `Reemplazar o reforzar los postes de los extremos ${by}.`,
    'two thirds': (by) =>
      `Revisar los postes a ras de suelo ${by}. Un tratamiento a ras de suelo frena la pudrición por algunos años y vale más mientras quede madera sana.`,
    'once in 50': (by) => `Revisar los postes a ras de suelo ${by}.`,
    'once in 25': (by) => `Revisar los postes a ras de suelo ${by}, y apartar dinero para reemplazarlos.`,
    'once in 10': (by) => `Reemplazar los postes, o reconstruir la cerca, ${by}.`,
    better: () => 'Nada por ahora. La seguimos vigilando y le escribimos cuando algo cambie.',
  },
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
          `La probabilidad de que el viento la rompa ${n.wellUnderWay ? `en toda una temporada como ${n.season}` : `en la temporada ${n.season}`} es ${percentText(n.pSnap, 'es')}${higherThan(n)}.`,
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
    `Gráfica de la cerca ${n.ref}, desde nueva hasta 30 temporadas más: se rompe a ${n.holds} en la temporada ${n.season} (entre ${n.holdsFrom} y ${n.holdsTo}), su ráfaga de diseño es ${n.shouldHold}, ${n.shortSeason ? `insuficiente desde la temporada ${n.shortSeason}` : 'suficiente durante 30 temporadas'}.`,
  why: (office, byMail) =>
    `Recibe este mensaje porque ${officeName(office, 'es')} cuida esta cerca por usted. Escribimos cuando algo cambia y solo entonces. Para no recibir más, ${office.phone ? `llame al ${office.phone} o ` : ''}escriba a ${office.email}${!byMail && office.postalAddress ? ` o a ${officeName(office, 'es')}, ${office.postalAddress.replace(/\s*\n\s*/g, ', ')}` : ''}.`,
  headings: {
    changed: 'Qué cambió',
    suggestion: 'Qué sugerimos, y para cuándo',
    nothingDone: 'Si no se hace nada',
    sureness: 'Qué tan seguros estamos',
    basis: 'En qué se basa',
    ground: 'El suelo',
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
    noCurve: 'no se sabe',
    csv: 'El archivo adjunto tiene la misma tabla para una hoja de cálculo.',
    matter: {
      'short from new': 'insuficiente desde nueva',
      short: 'ya insuficiente',
      closing: 'cerca del límite',
      'ends short': 'extremos insuficientes',
      'two thirds': 'dos tercios de su resistencia',
      'once in 50': 'una vez en 50 años',
      'once in 25': 'una vez en 25 años',
      'once in 10': 'una vez en 10 años',
      better: 'otra vez con margen',
    },
  },
};
