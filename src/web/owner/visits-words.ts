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
  readonly weekday: readonly [string, string, string, string, string, string, string];
  readonly button: string;
  readonly withOthers: string;
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
      'On these days of that week the crew has hours, and what the works ask for (marked lines, ground that is not frozen, time for a footing) is kept.',
    weekday: ['Sunday', 'Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday'],
    button: 'Choose this day',
    withOthers:
      'This visit goes to fences of others too, so the office sets the day. Ask for a call if a day does not suit you.',
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
      'En estos días de esa semana la cuadrilla tiene horas, y se cumple lo que piden las obras (líneas marcadas, suelo sin helar, tiempo para un cimiento).',
    weekday: ['domingo', 'lunes', 'martes', 'miércoles', 'jueves', 'viernes', 'sábado'],
    button: 'Elegir este día',
    withOthers:
      'Esta visita va también a cercas de otros, así que el día lo fija la oficina. Pida una llamada si un día no le conviene.',
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
