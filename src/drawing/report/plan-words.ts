import type { ChartLanguage } from '../chart-words.ts';

/** What a plan of replacement says, in one language. */
export interface PlanWords {
  readonly title: (payer: string, from: number, to: number) => string;
  readonly subject: (payer: string) => string;
  readonly fences: (count: number) => string;
  readonly setAside: (atOnce: string | null, yearly: string) => string;
  readonly nineInTen: (atOnce: string | null, yearly: string) => string;
  /** What both ways of paying in come to, and, where it is so, why the second asks less at once. */
  readonly bothWays: (expected: string, nineInTen: string, lessAtOnce: boolean) => string;
  readonly whyAtOnce: string;
  readonly soon: (refs: readonly string[]) => string;
  readonly noneSoon: string;
  /** Of fences due now that the season plan mends and does not rebuild. */
  readonly meanwhile: (refs: readonly string[]) => string;
  readonly chartAlt: (payer: string) => string;
  readonly setAsideHeading: string;
  readonly setAsideCaption: string;
  readonly setAsideColumns: readonly [what: string, atOnce: string, yearly: string, orAtOnce: string, rising: string];
  readonly setAsideRows: readonly [expected: string, nine: string];
  readonly yearsHeading: string;
  readonly yearsCaption: (currency: string) => string;
  readonly yearColumns: readonly string[];
  readonly sum: string;
  readonly fencesHeading: string;
  readonly fencesCaption: string;
  readonly fenceColumns: readonly [
    fence: string,
    built: string,
    advice: string,
    due: string,
    rebuild: string,
    snap: string,
    share: string,
  ];
  readonly notBefore: string;
  readonly now: string;
  readonly inYear: (year: number) => string;
  readonly keep: (year: number) => string;
  readonly beforeShort: (season: string | null) => string;
  readonly outworn: string;
  readonly paysPart: (percent: number, other: string) => string;
  readonly restsOn: string;
  readonly rests: (terms: {
    readonly inflation: string;
    readonly interest: string;
    readonly life: number;
    readonly inspectEvery: number;
    readonly currency: string;
  }) => readonly string[];
  readonly shared: (percent: number) => string;
  readonly others: (count: number) => string;
  readonly unseen: (ref: string, why: string) => string;
  readonly label: string;
}

const EN: PlanWords = {
  title: (payer, from, to) => `Replacement plan ${from} to ${to}: ${payer}`,
  subject: (payer) => `What ${payer} has to spend on fences, year by year, and what to set aside`,
  fences: (count) => (count === 1 ? 'One fence' : `${count} fences`),
  setAside: (atOnce, yearly) =>
    atOnce === null
      ? `Set aside ${yearly} every year: that pays for what is expected.`
      : `Put in ${atOnce} at once and then ${yearly} every year: that pays for what is expected.`,
  nineInTen: (atOnce, yearly) =>
    atOnce === null
      ? `To have enough in nine courses of ten, set aside ${yearly} every year instead.`
      : `To have enough in nine courses of ten, put in ${atOnce} at once and ${yearly} every year instead.`,
  bothWays: (expected, nineInTen, lessAtOnce) =>
    `Over all years the first way pays in ${expected}, the second ${nineInTen}.${lessAtOnce ? ' The second asks less at once because it asks more every year, the first included.' : ''}`,
  whyAtOnce:
    'At once: what falls due in the first two years and can no longer be set aside year by year. The fund starts empty here; what it holds comes off.',
  soon: (refs) => `To be replaced now: ${refs.join(', ')}.`,
  noneSoon: 'No fence is to be replaced now.',
  meanwhile: (refs) =>
    `The season plan mends posts at ${refs.join(', ')} all the same: it goes by posts, and a post may break before the fence is rebuilt; this plan goes by rails and boards too. Follow the season plan, unless the fence is rebuilt before that visit: then call it off.`,
  chartAlt: (payer) => `Spending expected each year and the fund of ${payer} at the end of each year`,
  setAsideHeading: 'What to set aside',
  setAsideCaption: 'Once, and then every year; prices of the year',
  setAsideColumns: ['For', 'At once', 'And every year', 'Or at once', 'And first year, rising with prices'],
  setAsideRows: ['what is expected', 'nine courses of ten'],
  yearsHeading: 'Money per year',
  yearsCaption: (currency) =>
    `In ${currency} of the year. Spending: expected; in brackets what it stays between in eight years of ten. Fund: at the end of the year`,
  yearColumns: ['Year', 'Repairs and inspections', 'Replacing', 'Spending', 'Paid in', 'Fund'],
  sum: 'All years',
  fencesHeading: 'Fence by fence',
  fencesCaption: "In today's money, the whole fence, before tax",
  fenceColumns: [
    'Fence',
    'Built',
    'When replacing costs least',
    'Replaced as likely as not by',
    'Rebuilding it',
    'Chance it snaps in the first year',
    'Who pays',
  ],
  notBefore: 'beyond the plan',
  now: 'now',
  inYear: (year) => `in ${year}`,
  keep: (year) => `keep, to ${year} at most`,
  beforeShort: (season) => (season === null ? 'before it goes short' : `before season ${season}, when it goes short`),
  outworn: 'now: rails and boards are worn out',
  paysPart: (percent, other) => `${percent} %, with ${other}`,
  restsOn: 'What this rests on',
  rests: ({ inflation, interest, life, inspectEvery, currency }) => [
    `Prices rise ${inflation} % and the fund earns ${interest} % a year. Amounts in ${currency}, before tax, from a works catalogue of orders of magnitude where the office has not entered its own prices.`,
    `A fence is replaced when that costs least in the long run, given that it stands today: a rebuild in good time against one in a bad week. Rails and boards are not forecast: no fence is kept beyond ${life} years.`,
    inspectEvery === 0
      ? 'Repairs: what was found broken, leaning or cracked; no inspections are planned.'
      : `Repairs: what was found broken, leaning or cracked, and an inspection every ${inspectEvery} years. End posts that break alone, and leaning to come, are not in the plan.`,
    'It weighs money alone: a fence that is short no longer holds its design gust, and may still be cheapest to keep.',
  ],
  shared: (percent) =>
    `Of a fence with two owners the plan pays ${percent} %; the register does not say how they share.`,
  others: (count) =>
    count === 1
      ? 'One more fence stands at the site and is kept by others; it is not in this plan.'
      : `${count} more fences stand at the site and are kept by others; they are not in this plan.`,
  unseen: (ref, why) => `Fence ${ref} is not in the plan: ${why}.`,
  label: 'This is a planning aid, not a statutory reserve study.',
};

const ES: PlanWords = {
  title: (payer, from, to) => `Plan de reemplazo ${from} a ${to}: ${payer}`,
  subject: (payer) => `Qué tiene que gastar ${payer} en cercas, año por año, y cuánto apartar`,
  fences: (count) => (count === 1 ? 'Una cerca' : `${count} cercas`),
  setAside: (atOnce, yearly) =>
    atOnce === null
      ? `Aparte ${yearly} cada año: eso paga lo que se espera.`
      : `Aporte ${atOnce} de una vez y luego ${yearly} cada año: eso paga lo que se espera.`,
  nineInTen: (atOnce, yearly) =>
    atOnce === null
      ? `Para que alcance en nueve casos de diez, aparte en cambio ${yearly} cada año.`
      : `Para que alcance en nueve casos de diez, aporte en cambio ${atOnce} de una vez y ${yearly} cada año.`,
  bothWays: (expected, nineInTen, lessAtOnce) =>
    `En todos los años la primera manera aporta ${expected}, la segunda ${nineInTen}.${lessAtOnce ? ' La segunda pide menos de una vez porque pide más cada año, desde el primero.' : ''}`,
  whyAtOnce:
    'De una vez: lo que vence en los primeros dos años y ya no se puede apartar año por año. Aquí el fondo empieza vacío; lo que tenga se descuenta.',
  soon: (refs) => `Por reemplazar ya: ${refs.join(', ')}.`,
  noneSoon: 'Ninguna cerca está por reemplazar ya.',
  meanwhile: (refs) =>
    `El plan de la temporada arregla postes en ${refs.join(', ')} de todos modos: mira los postes, y uno puede romperse antes de que la cerca se reconstruya; este plan mira también travesaños y tablas. Siga el plan de la temporada, salvo que la cerca se reconstruya antes de esa visita: entonces cancélela.`,
  chartAlt: (payer) => `Gasto esperado cada año y el fondo de ${payer} al final de cada año`,
  setAsideHeading: 'Cuánto apartar',
  setAsideCaption: 'Una vez, y luego cada año; precios del año',
  setAsideColumns: ['Para', 'De una vez', 'Y cada año', 'O de una vez', 'Y el primer año, subiendo con los precios'],
  setAsideRows: ['lo que se espera', 'nueve casos de diez'],
  yearsHeading: 'Dinero por año',
  yearsCaption: (currency) =>
    `En ${currency} del año. Gasto: lo esperado; entre paréntesis, entre qué queda en ocho años de diez. Fondo: al final del año`,
  yearColumns: ['Año', 'Reparaciones e inspecciones', 'Reemplazos', 'Gasto', 'Aporte', 'Fondo'],
  sum: 'Todos los años',
  fencesHeading: 'Cerca por cerca',
  fencesCaption: 'En dinero de hoy, la cerca entera, sin impuestos',
  fenceColumns: [
    'Cerca',
    'Construida',
    'Cuándo cuesta menos reemplazarla',
    'Reemplazada con igual probabilidad para',
    'Reconstruirla',
    'Probabilidad de rotura el primer año',
    'Quién paga',
  ],
  notBefore: 'después del plan',
  now: 'ya',
  inYear: (year) => `en ${year}`,
  keep: (year) => `conservarla, hasta ${year} a más tardar`,
  beforeShort: (season) =>
    season === null ? 'antes de que sea insuficiente' : `antes de la temporada ${season}, cuando deja de aguantar`,
  outworn: 'ya: travesaños y tablas están gastados',
  paysPart: (percent, other) => `${percent} %, con ${other}`,
  restsOn: 'En qué se basa',
  rests: ({ inflation, interest, life, inspectEvery, currency }) => [
    `Los precios suben ${inflation} % y el fondo gana ${interest} % al año. Importes en ${currency}, sin impuestos, de un catálogo de órdenes de magnitud donde la oficina no registró sus propios precios.`,
    `Una cerca se reemplaza cuando a la larga cuesta menos, dado que hoy está en pie: reconstruir a tiempo frente a reconstruir en una mala semana. Travesaños y tablas no se pronostican: ninguna cerca se conserva más de ${life} años.`,
    inspectEvery === 0
      ? 'Reparaciones: lo que se encontró roto, inclinado o agrietado; no se planean inspecciones.'
      : `Reparaciones: lo que se encontró roto, inclinado o agrietado, y una inspección cada ${inspectEvery} años. Los postes extremos que se rompen solos y las inclinaciones futuras no están en el plan.`,
    'Solo pesa el dinero: una cerca insuficiente ya no aguanta su ráfaga de diseño, y aun así puede ser más barato conservarla.',
  ],
  shared: (percent) => `De una cerca con dos dueños el plan paga ${percent} %; no consta cómo la comparten.`,
  others: (count) =>
    count === 1
      ? 'En el sitio hay una cerca más, a cargo de otros; no está en este plan.'
      : `En el sitio hay ${count} cercas más, a cargo de otros; no están en este plan.`,
  unseen: (ref, why) => `La cerca ${ref} no está en el plan: ${why}.`,
  label: 'Esto es una ayuda para planear, no un estudio de reservas exigido por ley.',
};

/** The words of a plan of replacement in one language. */
export const planWords = (language: ChartLanguage): PlanWords => (language === 'es' ? ES : EN);
