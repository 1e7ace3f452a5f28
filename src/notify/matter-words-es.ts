import { percentText } from '../drawing/quantity-text.ts';
import type { WorksKind } from '../forecast/works.ts';
import type { FenceNews } from './fence-news.ts';
import { at, foundAt, keptShort, listed, once, posts } from './fence-phrases-es.ts';
import type { MatterWords } from './message-words.ts';
import { dayInWords } from './plain-words.ts';

const share = (news: FenceNews): string => percentText(news.strengthLeft, 'es');

const RENEWED: Readonly<Record<string, string>> = {
  rebuild: 'de la reconstrucción',
  'post-swap': 'del cambio de postes',
  'steel-sleeve': 'de la colocación de fundas de acero',
  'added-posts': 'de la adición de postes',
};
const after = ({ renewal }: FenceNews): string =>
  renewal ? ` después ${RENEWED[renewal.kind] ?? 'de la obra'} del ${dayInWords(renewal.day, 'es')}` : '';
const footings = (news: FenceNews): string =>
  news.leansFirstAt === null
    ? ''
    : ` Los cimientos ${news.renewal?.kind === 'rebuild' ? '' : 'siguen como antes y '}se inclinan con unas ${news.leansFirstAt}.`;

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

const WORKS: Readonly<Record<WorksKind, string>> = {
  'groundline-treatment': 'tratamiento a ras de suelo',
  liner: 'forro',
  drainage: 'drenaje',
  'trimmer-guard': 'protector contra la desbrozadora',
  'footing-reset': 'nuevo cimiento',
  'post-swap': 'cambio de postes',
  'steel-sleeve': 'fundas de acero',
  'added-posts': 'postes añadidos',
  rebuild: 'reconstrucción',
};

/** What works gained, against the same seasons without them. */
function gained({ gain }: FenceNews): string {
  if (!gain) return 'Se hizo una obra.';
  const done = listed(gain.works.map(({ kind, day }) => `${WORKS[kind]} (${dayInWords(day, 'es')})`));
  const now = `En la temporada ${gain.season} se rompe a ${gain.with.snap} y se inclina a ${gain.with.lean}`;
  if (!gain.without) return `Hecho: ${done}. ${now}. Lo que ganó no se puede separar de lo que se vio después.`;
  const later =
    gain.with.laterSnap && gain.without.laterSnap && gain.laterSeason
      ? ` En la temporada ${gain.laterSeason} se rompería a ${gain.with.laterSnap}; sin la obra, a ${gain.without.laterSnap}.`
      : '';
  return `Hecho: ${done}. ${now}; sin la obra se rompería a ${gain.without.snap} y se inclinaría a ${gain.without.lean}.${later}`;
}

/** What would have made a fence hold that was short from new. */
const mend = ({ bayShare }: FenceNews): string =>
  bayShare === null || bayShare > 0.97
    ? ''
    : ` Qué lo remediaría, con madera sana: postes a cerca del ${Math.round(bayShare * 100)} % de la distancia que los separa, o unas ${(1 / bayShare).toFixed(1)} veces más resistentes.`;

/** What each matter says in Spanish. */
export const MATTER_WORDS_ES: MatterWords = {
  subject: {
    dangerous: (n) => `${at(n)}: no se acerque, ${foundAt(n)}`,
    reminder: (n) =>
      n.reminded === null
        ? `${at(n)}: sigue sin aguantar su ráfaga de diseño`
        : `${at(n)}: la temporada ${n.reminded.season} empieza el ${dayInWords(n.reminded.day, 'es')} y sigue sin aguantar su ráfaga de diseño`,
    'works done': (n) =>
      n.gain?.without
        ? `${at(n)}: ahora se rompe a ${n.gain.with.snap}; sin la obra, a ${n.gain.without.snap}`
        : `${at(n)}: la obra está hecha, se rompe a ${n.holds}`,
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
    dangerous: (n) =>
      `Consta ahora: ${foundAt(n)}. Lo que los postes vecinos soportan de más no está contado en las velocidades de este mensaje.`,
    reminder: (n) =>
      n.reminded === null
        ? 'Sigue sin aguantar su ráfaga de diseño.'
        : `La temporada ${n.reminded.season} empieza el ${dayInWords(n.reminded.day, 'es')}. Sigue sin aguantar la ráfaga de diseño de ${n.shouldHold}.`,
    'works done': (n) => gained(n),
    'short from new': (n) =>
      n.keptShort
        ? changedKept(n)
        : `Recién construida, con madera sana, sus ${posts(n)} no llegaban a la ráfaga de diseño de ${n.shouldHold}. No es pudrición: es la forma en que se construyó para este lugar.${n.strengthFell && n.heldNew ? ` Desde entonces la pudrición la ha bajado de ${n.heldNew} a ${n.holds}.` : ''}${mend(n)}`,
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
  suggestion: {
    dangerous: () =>
      'Mantenga alejados a personas y vehículos, y que nadie se apoye ni se suba. Llámenos: una cuadrilla tiene que apuntalar o retirar lo que esté suelto antes de planear otra cosa.',
    reminder: (by) =>
      `Reemplazar los postes débiles, o reconstruir la cerca, ${by}. Las semanas de las cuadrillas antes de una temporada se llenan pronto.`,
    'works done': () => 'Nada por ahora. La seguimos vigilando y le escribimos cuando algo cambie.',
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
  inShort: {
    dangerous: 'peligrosa ahora',
    reminder: 'sigue insuficiente',
    'works done': 'obra hecha',
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
};
