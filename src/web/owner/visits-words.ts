import type { PageLanguage } from '../frame/page-language.ts';

interface VisitsWords {
  readonly title: string;
  readonly lead: (visits: number) => string;
  readonly none: string;
  readonly at: (site: string) => string;
  readonly fence: (ref: string, works: string) => string;
  readonly proposed: (first: string, last: string | null) => string;
  readonly confirmed: (first: string, last: string | null, time: string | null) => string;
  readonly choose: string;
  readonly chooseHint: string;
  /** Days one after the other; no last one where the first is all. */
  readonly span: (first: string, last: string | null) => string;
  /** Of a visit that takes several days: what a choice among them means. */
  readonly longVisit: string;
  readonly chooseBeginning: string;
  readonly markBeginnings: string;
  readonly weekday: readonly [string, string, string, string, string, string, string];
  readonly button: string;
  /** Of a visit that goes to fences of others too. */
  readonly proposedToAll: (first: string, last: string | null) => string;
  readonly withOthers: string;
  readonly mark: string;
  readonly markHint: string;
  readonly markButton: string;
  readonly noneButton: string;
  readonly marked: string;
  readonly youSaid: (days: string) => string;
  readonly youSaidNone: string;
  readonly nothingMarked: { readonly title: string; readonly what: string; readonly wayOut: string };
  readonly nothingLeft: string;
  readonly change: string;
  readonly notOffered: { readonly title: string; readonly what: string; readonly wayOut: string };
  readonly noVisit: { readonly title: string; readonly what: string; readonly wayOut: string };
  readonly noted: string;
  readonly already: string;
}

/** The words of the page on which an owner chooses the day of a visit, by language. */
export const VISITS_WORDS: Readonly<Record<PageLanguage, VisitsWords>> = {
  en: {
    title: 'Visits',
    lead: (visits) =>
      visits === 1 ? 'One visit to your fences is planned.' : `${visits} visits to your fences are planned.`,
    none: 'No visit to your fences is planned now. When one is proposed, you can choose its day here.',
    at: (site) => `Visit at ${site}`,
    fence: (ref, works) => `Fence ${ref}: ${works}`,
    proposed: (first, last) =>
      `Proposed for ${first}${last === null ? '' : ` to ${last}`}. Nothing is promised until you choose a day, or the office does.`,
    confirmed: (first, last, time) =>
      `The crew comes on ${first}${time === null ? '' : `, at ${time}`}${last === null ? '' : `${time === null ? '' : ','} and stays until ${last}`}.`,
    choose: 'Choose a day',
    chooseHint:
      'On these days the crew has hours beside its other visits, and what the works ask for (marked lines, ground that is not frozen, time for a footing) is kept.',
    span: (first, last) => (last === null ? first : `${first}, to ${last}`),
    longVisit:
      'This visit takes more than one day. Each line names the day on which it may begin and the last of the days that it then takes: take a line only where all of its days suit you.',
    chooseBeginning: 'Choose the day to begin on',
    markBeginnings: 'Mark the days to begin on that suit you',
    weekday: ['Sunday', 'Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday'],
    button: 'Choose this day',
    proposedToAll: (first, last) =>
      `Proposed for ${first}${last === null ? '' : ` to ${last}`}. Nothing is promised until the office confirms a day.`,
    withOthers:
      'This visit goes to fences of others too. Mark what suits you: each owner has one voice, the office sees how many each day suits and confirms one, and then you are told.',
    mark: 'Mark the days that suit you',
    markHint:
      'On these days the crew has hours beside its other visits, and what the works ask for (marked lines, ground that is not frozen, time for a footing) is kept. You can change it until a day is confirmed.',
    markButton: 'Send the days that suit',
    noneButton: 'None of these days suits',
    marked: 'Thank you. The office sees which days suit you. Nothing is promised yet.',
    youSaid: (days) => `You said that these suit you: ${days}.`,
    youSaidNone: 'You said that none of these days suits you. The office sees it and looks for another.',
    nothingMarked: {
      title: 'No day was marked',
      what: 'No day was ticked, so nothing was sent.',
      wayOut: 'Go back and tick the days that suit you, or press the button that says that none does.',
    },
    nothingLeft: 'No day of that week is left to choose. The office will propose another, or ask for a call.',
    change: 'To move it, ask for a call.',
    notOffered: {
      title: 'That day cannot be chosen',
      what: 'It is not, or no longer, among the days that are offered. Nothing was changed.',
      wayOut: 'Go back to the visits, load the page again and choose among the days it shows.',
    },
    noVisit: {
      title: 'No such visit',
      what: 'This link opens no visit of that name; it may be over or called off.',
      wayOut: 'Open the list of visits.',
    },
    noted: 'Thank you. The day is promised.',
    already: 'That day was promised already.',
  },
  es: {
    title: 'Visitas',
    lead: (visits) =>
      visits === 1 ? 'Hay una visita prevista a sus cercas.' : `Hay ${visits} visitas previstas a sus cercas.`,
    none: 'Ahora no hay ninguna visita prevista a sus cercas. Cuando se proponga una, podrá elegir aquí su día.',
    at: (site) => `Visita en ${site}`,
    fence: (ref, works) => `Cerca ${ref}: ${works}`,
    proposed: (first, last) =>
      `Propuesta para el ${first}${last === null ? '' : ` al ${last}`}. Nada queda prometido hasta que usted elija un día, o lo haga la oficina.`,
    confirmed: (first, last, time) =>
      `La cuadrilla viene el ${first}${time === null ? '' : `, a las ${time}`}${last === null ? '' : `${time === null ? '' : ','} y se queda hasta el ${last}`}.`,
    choose: 'Elija un día',
    chooseHint:
      'En estos días la cuadrilla tiene horas junto a sus otras visitas, y se cumple lo que piden las obras (líneas marcadas, suelo sin helar, tiempo para un cimiento).',
    span: (first, last) => (last === null ? first : `${first}, hasta el ${last}`),
    longVisit:
      'Esta visita dura más de un día. Cada línea nombra el día en que puede empezar y el último de los días que entonces dura: tome una línea solo si le convienen todos sus días.',
    chooseBeginning: 'Elija el día en que empieza',
    markBeginnings: 'Marque los días para empezar que le convienen',
    weekday: ['domingo', 'lunes', 'martes', 'miércoles', 'jueves', 'viernes', 'sábado'],
    button: 'Elegir este día',
    proposedToAll: (first, last) =>
      `Propuesta para el ${first}${last === null ? '' : ` al ${last}`}. Nada queda prometido hasta que la oficina confirme un día.`,
    withOthers:
      'Esta visita va también a cercas de otros. Marque lo que le conviene: cada dueño tiene una voz, la oficina ve a cuántos conviene cada día y confirma uno, y entonces se lo decimos.',
    mark: 'Marque los días que le convienen',
    markHint:
      'En estos días la cuadrilla tiene horas junto a sus otras visitas, y se cumple lo que piden las obras (líneas marcadas, suelo sin helar, tiempo para un cimiento). Puede cambiarlo hasta que se confirme un día.',
    markButton: 'Enviar los días que me convienen',
    noneButton: 'Ninguno de estos días me conviene',
    marked: 'Gracias. La oficina ve qué días le convienen. Todavía no hay nada prometido.',
    youSaid: (days) => `Usted dijo que le convienen: ${days}.`,
    youSaidNone: 'Usted dijo que ninguno de estos días le conviene. La oficina lo ve y busca otro.',
    nothingMarked: {
      title: 'No se marcó ningún día',
      what: 'No había ningún día marcado, así que no se envió nada.',
      wayOut: 'Vuelva y marque los días que le convienen, o pulse el botón que dice que ninguno le conviene.',
    },
    nothingLeft: 'No queda ningún día de esa semana por elegir. La oficina propondrá otra, o pida una llamada.',
    change: 'Para cambiarla, pida una llamada.',
    notOffered: {
      title: 'Ese día no se puede elegir',
      what: 'No está, o ya no está, entre los días que se ofrecen. No se cambió nada.',
      wayOut: 'Vuelva a las visitas, cargue la página otra vez y elija entre los días que muestra.',
    },
    noVisit: {
      title: 'No existe esa visita',
      what: 'Este enlace no abre ninguna visita con ese nombre; puede haber pasado o haberse cancelado.',
      wayOut: 'Abra la lista de visitas.',
    },
    noted: 'Gracias. El día queda prometido.',
    already: 'Ese día ya estaba prometido.',
  },
};
