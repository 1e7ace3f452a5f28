import type { ChartLanguage } from '../../drawing/chart-words.ts';
import { ageFigure, bandText, depthFigure, depthUnit } from '../../drawing/quantity-text.ts';
import type { DisplayUnits } from '../../drawing/speed-text.ts';
import type { Band } from '../../forecast/band.ts';
import type { FenceMoney } from '../../season/money/fence-money.ts';
import { MONEY_BESIDE_PLAN, type MoneyBesidePlan } from './money-beside-plan.ts';

/** The words around the drawings of a fence's posts. */
interface PostsWords {
  readonly runTable: string;
  readonly runCaption: string;
  readonly post: string;
  readonly position: string;
  readonly kind: string;
  readonly snap: string;
  readonly lean: string;
  readonly strength: string;
  readonly found: string;
  readonly linePost: string;
  readonly endPost: string;
  readonly sectionTable: string;
  readonly rot: string;
  readonly depths: (depthMm: Band, units: DisplayUnits) => string;
  readonly cut: (cutMm: number, units: DisplayUnits) => string;
}

/** The words of a fence's page. */
export interface FencePageWords {
  readonly title: (ref: string) => string;
  readonly back: string;
  readonly notSwept: string;
  readonly chart: string;
  readonly chartTable: string;
  readonly checker: string;
  readonly computed: string;
  readonly reasons: string;
  readonly json: string;
  readonly known: string;
  readonly computedWith: (model: string) => string;
  readonly inputs: string;
  readonly posts: PostsWords;
  readonly history: string;
  readonly noHistory: string;
  readonly money: MoneyWords;
}

/** The words of what a fence costs. */
interface MoneyWords {
  readonly heading: string;
  readonly dangerous: string;
  readonly sentence: (money: FenceMoney) => string;
  readonly advice: string;
  readonly replaced: string;
  readonly price: string;
  readonly afterSnap: string;
  readonly waiting: string;
  readonly snaps: string;
  readonly years: (years: number) => string;
  readonly whatIf: string;
  readonly note: string;
  readonly beside: MoneyBesidePlan;
}

const depths = (depthMm: Band, units: DisplayUnits): string =>
  `${bandText(depthMm, (mm) => depthFigure(mm, units))} ${depthUnit(units)}`;

const EN: FencePageWords = {
  title: (ref) => `Fence ${ref}`,
  back: 'All fences',
  notSwept: 'This fence has no numbers yet; the next sweep computes them.',
  chart:
    'A new fence leans, an old fence snaps: rot takes strength from the posts, not from their footings. Snap speed is the gust that breaks a post at the groundline, lean speed the one that turns its footing in the soil; both as 3-second gusts at 10 m in open terrain, as on a wind map. The lean speed is the less certain of the two.',
  chartTable: 'The same as a table, season by season',
  checker: 'As a checker would compute it',
  computed: 'How this was computed',
  reasons: 'Every step with its equation and source',
  json: 'the forecast as JSON',
  known: 'What the register knows',
  computedWith: (model) => `Model ${model}, computed`,
  inputs: 'inputs',
  history: 'History',
  noHistory: 'Nothing recorded yet.',
  money: {
    heading: 'What it costs',
    dangerous: 'A post is recorded dangerous: mend it or close it off first; the advice below knows nothing of it.',
    sentence: ({ cheapestYear, isOutworn }) =>
      isOutworn
        ? 'Its rails and boards are worn out: replacing it now is what is advised.'
        : cheapestYear === null
          ? 'Without a wind curve no year can be called the cheapest: it is replaced before it goes short.'
          : `Replacing it costs least in the long run in ${cheapestYear}.`,
    advice: 'Advice',
    replaced: 'Its age then',
    price: 'Rebuilding it in good time',
    afterSnap: 'After it snapped',
    waiting: 'Waiting a year longer costs',
    snaps: 'Chance that it snaps within 12 months',
    years: (years) => `${ageFigure(years)} years`,
    whatIf: 'What could be done, and what it would change',
    note: 'Prices before tax, from the works catalogue: where the office has not set its own, they are orders of magnitude. Rails and boards count as worn out at 25 years.',
    beside: MONEY_BESIDE_PLAN.en,
  },
  posts: {
    runTable: 'The same as a table, post by post',
    runCaption: 'Middle values at the opening of the season that is running or next to open.',
    post: 'Post',
    position: 'From the named end',
    kind: 'Kind',
    snap: 'Snaps at',
    lean: 'Leans at',
    strength: 'Strength left',
    found: 'Marked',
    linePost: 'line post',
    endPost: 'end post',
    sectionTable: 'The same in words',
    rot: 'Rot per side',
    depths: (depthMm, units) => `${depths(depthMm, units)}.`,
    cut: (cutMm, units) => `Cut off one side ${depthFigure(cutMm, units)} ${depthUnit(units)}.`,
  },
};

const ES: FencePageWords = {
  title: (ref) => `Cerca ${ref}`,
  back: 'Todas las cercas',
  notSwept: 'Esta cerca todavía no tiene números; se calculan la próxima noche.',
  chart:
    'La cerca nueva se inclina, la vieja se rompe: la pudrición quita fuerza a los postes, no a sus cimientos. La velocidad de rotura es la ráfaga que rompe un poste a ras de suelo; la de inclinación, la que gira su cimiento en la tierra. Las dos son ráfagas de 3 segundos a 10 m en terreno abierto, como en un mapa de viento. La de inclinación es la menos segura.',
  chartTable: 'Lo mismo en una tabla, temporada por temporada',
  checker: 'Como lo calcularía un revisor',
  computed: 'Cómo se calculó',
  reasons: 'Cada paso con su ecuación y su fuente',
  json: 'el pronóstico en JSON',
  known: 'Lo que el registro sabe',
  computedWith: (model) => `Modelo ${model}, calculado`,
  inputs: 'entradas',
  history: 'Historia',
  noHistory: 'Nada anotado todavía.',
  money: {
    heading: 'Lo que cuesta',
    dangerous:
      'Hay un poste anotado como peligroso: primero hay que repararlo o cerrar el paso; el consejo de abajo no lo tiene en cuenta.',
    sentence: ({ cheapestYear, isOutworn }) =>
      isOutworn
        ? 'Sus travesaños y tablas están gastados: reemplazarla ahora es lo indicado.'
        : cheapestYear === null
          ? 'Sin curva de viento no se puede decir qué año es el más barato: se reemplaza antes de que sea insuficiente.'
          : `Reemplazarla cuesta menos, a la larga, en ${cheapestYear}.`,
    advice: 'Consejo',
    replaced: 'Edad entonces',
    price: 'Reconstruirla a tiempo',
    afterSnap: 'Después de una rotura',
    waiting: 'Un año más de espera cuesta',
    snaps: 'Probabilidad de que se rompa en 12 meses',
    years: (years) => `${ageFigure(years)} años`,
    whatIf: 'Qué se podría hacer, y qué cambiaría',
    note: 'Precios sin impuestos, del catálogo de trabajos: donde la oficina no puso los suyos son órdenes de magnitud. Travesaños y tablas cuentan como gastados a los 25 años.',
    beside: MONEY_BESIDE_PLAN.es,
  },
  posts: {
    runTable: 'Lo mismo en una tabla, poste por poste',
    runCaption: 'Valores medios al abrir la temporada en curso o la próxima.',
    post: 'Poste',
    position: 'Desde el extremo con nombre',
    kind: 'Tipo',
    snap: 'Se rompe a',
    lean: 'Se inclina a',
    strength: 'Fuerza que queda',
    found: 'Marcado',
    linePost: 'poste de línea',
    endPost: 'poste de extremo',
    sectionTable: 'Lo mismo en palabras',
    rot: 'Pudrición por lado',
    depths: (depthMm, units) => `${depths(depthMm, units)}.`,
    cut: (cutMm, units) => `Cortado de un lado ${depthFigure(cutMm, units)} ${depthUnit(units)}.`,
  },
};

/** The words of a fence's page, by language. */
export const FENCE_PAGE_WORDS: Readonly<Record<ChartLanguage, FencePageWords>> = { en: EN, es: ES };
