import { listed } from './fence-phrases-es.ts';
import { dayInWords, daysInWords, weekdayInWords } from './plain-words.ts';
import type { VisitDays } from './visit-facts.ts';
import type { VisitWords } from './visit-words.ts';

const day = (text: string): string => weekdayInWords(text, 'es');
const hour = (startsAt: string): string => startsAt.replace(/^0/, '');

const when = ({ firstDay, lastDay, startsAt }: VisitDays): string => {
  const [from, to] = daysInWords(firstDay, lastDay, 'es');
  const days = firstDay === lastDay ? `el ${day(firstDay)}` : `del ${from} al ${to}`;
  return startsAt === null ? days : `${days}, desde las ${hour(startsAt)}`;
};

/** Days without `el` or `del`. */
const span = ({ firstDay, lastDay }: VisitDays): string =>
  firstDay === lastDay ? day(firstDay) : daysInWords(firstDay, lastDay, 'es').join(' al ');

const someTime = ({ firstDay, lastDay, startsAt }: VisitDays): string =>
  startsAt === null && firstDay === lastDay ? ', a alguna hora del día' : '';

const many = (count: number, one: string, several: string): string => `${count} ${count === 1 ? one : several}`;

/** What is said of visits in Spanish. */
export const VISIT_WORDS_ES: VisitWords = {
  works: {
    inspect: 'revisión a ras de suelo',
    'groundline-treatment': 'tratamiento a ras de suelo',
    liner: 'forros',
    drainage: 'drenaje',
    'trimmer-guard': 'protectores contra la desbrozadora',
    'footing-reset': 'cimientos nuevos',
    'post-swap': 'postes nuevos en lugar de los viejos',
    'steel-sleeve': 'fundas de acero',
    'added-posts': 'postes añadidos',
    rebuild: 'reconstrucción',
  },
  posts: (numbers, count) => `${count === 1 ? 'poste' : 'postes'} ${numbers}`,
  morePosts: (count) => `${count} más`,
  when,
  fences: (refs) =>
    `${refs.length === 1 ? 'Cerca' : 'Cercas'} ${refs.length > 3 ? `${refs.slice(0, 2).join(', ')} y ${refs.length - 2} más` : listed(refs)}`,
  subject: {
    'visit proposed': (v, fences, on) => `${fences} en ${v.siteName}: una cuadrilla podría ir ${on}`,
    'visit confirmed': (v, fences, on) => `${fences} en ${v.siteName}: la cuadrilla va ${on}`,
    'visit changed': (v, fences, on) => `${fences} en ${v.siteName}: la visita cambió, ahora es ${on}`,
    'visit missed': (v, fences) => `${fences} en ${v.siteName}: la cuadrilla no fue, y qué pasa ahora`,
    'visit cancelled': (v, fences, on) => `${fences} en ${v.siteName}: no va ninguna cuadrilla ${on}`,
  },
  answer: {
    'visit proposed': (v, on) => [
      `Una cuadrilla podría ir ${on}${someTime(v)}. Es una propuesta: nada está prometido hasta que lo confirmemos.`,
      `Si el día no le conviene, díganoslo a más tardar el ${dayInWords(v.answerBy, 'es')}.`,
    ],
    'visit confirmed': (v, on) => [
      `La cuadrilla (${v.crewName}) va ${on}${someTime(v)}.`,
      v.before !== null && v.before.firstDay !== v.firstDay
        ? `Es en lugar del ${span(v.before)}, que habíamos propuesto.`
        : 'El día está prometido: si lo movemos, se lo decimos.',
    ],
    'visit changed': (v, on) => [
      `La visita es ahora ${on}, con ${v.crewName}${v.state === 'proposed' ? '; sigue siendo una propuesta' : ''}.`,
      v.before === null ||
      (v.before.firstDay === v.firstDay && v.before.lastDay === v.lastDay && v.before.startsAt === v.startsAt)
        ? 'El día es el mismo; cambió la cuadrilla o lo que se hace, como está abajo.'
        : `Antes era ${when(v.before)}. Eso ya no vale.`,
    ],
    'visit missed': (_, on) => [
      `La cuadrilla debía ir ${on} y no fue. Lo sentimos.`,
      'No se hizo nada. El trabajo está otra vez en nuestro plan, y le escribiremos con un día nuevo.',
    ],
    'visit cancelled': (v, on) => [
      `La visita ${on} queda cancelada: entonces no va ninguna cuadrilla a ${v.siteName} por usted.`,
      'No se pierde nada: el trabajo está otra vez en nuestro plan, y le escribiremos cuando haya un día nuevo.',
    ],
  },
  covering: {
    'visit proposed': 'Esto es lo que nuestro plan de la temporada tiene para usted.',
    'visit confirmed': 'Abajo está lo que se hace, lo que puede costar y lo que ayuda ese día.',
    'visit changed': 'Abajo está la visita tal como queda ahora.',
    'visit missed': 'Abajo está lo que se iba a hacer.',
    'visit cancelled': 'Abajo está lo que se iba a hacer.',
  },
  next: {
    'visit proposed': (answerBy) =>
      `Si el día le conviene, no tiene que hacer nada. Si no, responda a este mensaje o llámenos a más tardar el ${dayInWords(answerBy, 'es')}, y buscamos otro.`,
    'visit confirmed': () => 'Si surge algo, responda a este mensaje o llámenos lo antes que pueda.',
    'visit changed': (answerBy) =>
      `Si el nuevo día no le conviene, responda a este mensaje o llámenos a más tardar el ${dayInWords(answerBy, 'es')}.`,
    'visit missed': () => 'No tiene que hacer nada. Si prefiere acordar un día ya, llámenos.',
    'visit cancelled': () => 'No tiene que hacer nada. Si de todos modos quiere que se haga, llámenos.',
  },
  dayChoice: {
    choose: 'O elija usted otro día de esa semana, con el enlace a sus visitas de abajo.',
    mark: 'Esta visita va también a cercas de otros: con el enlace a sus visitas de abajo, marque todos los días de esa semana que le convienen para que empiece, con los días que entonces dura. Cada dueño tiene una voz, y confirmamos el día que conviene a más.',
  },
  several: {
    subject: (matter, visits, first, last) => {
      const days =
        first === last
          ? `el ${dayInWords(first, 'es')}`
          : `del ${dayInWords(first, 'es')} al ${dayInWords(last, 'es')}`;
      const count = many(visits, 'visita', 'visitas');
      if (matter === 'visit proposed') return `${count} a sus cercas que podrían hacerse, ${days}`;
      if (matter === 'visit confirmed') return `${count} a sus cercas, ${days}: los días están prometidos`;
      return `Novedades de ${count} a sus cercas, ${days}`;
    },
    counted: (matter, visits) =>
      ({
        'visit proposed': `Una cuadrilla podría ir ${visits === 1 ? 'una vez' : `${visits} veces`}: ${visits === 1 ? 'es una propuesta' : 'son propuestas'}, y nada está prometido hasta que lo confirmemos.`,
        'visit confirmed': `Una cuadrilla va ${visits === 1 ? 'una vez' : `${visits} veces`}, en ${visits === 1 ? 'un día prometido' : 'días prometidos'}.`,
        'visit changed': `${visits === 1 ? 'Cambió una visita' : `Cambiaron ${visits} visitas`} que usted ya conoce.`,
        'visit missed': `La cuadrilla no fue ${visits === 1 ? 'una vez' : `${visits} veces`}. Lo sentimos.`,
        'visit cancelled': `${visits === 1 ? 'Queda cancelada una visita' : `Quedan canceladas ${visits} visitas`}.`,
      })[matter],
    covering: 'Abajo está cada visita por separado: su día, lo que se hace y lo que puede costar.',
    heading: 'Cada visita en sus páginas',
    open: (visit, on) => `La visita a ${visit.siteName} ${on}`,
    openNote: 'Cada uno lleva a esa visita entre todas las suyas.',
    calendar:
      'El archivo de calendario adjunto tiene todas estas visitas; un mensaje posterior sobre una de ellas cambia solo esa entrada.',
  },
  budget:
    'Es una cifra para presupuestar, no una cotización: sin impuestos, con nuestros precios usuales. Lo que la cuadrilla encuentre en el suelo puede cambiarla.',
  totalCost: (range) => `En total, ${range}.`,
  reminder: {
    locate:
      'Se excavan postes. Antes hacemos marcar las líneas públicas enterradas; muestre a la cuadrilla las privadas que nadie más conoce: riego, luces, drenes.',
    permit: 'Puede hacer falta un permiso. La oficina lo pide; avísenos si su asociación o su ciudad le ha dicho algo.',
    'licensed-applicator': 'El preservante lo aplica un aplicador con licencia donde la ley lo pide.',
    'frozen-ground': 'Si ese día el suelo está helado, el trabajo espera y le avisamos.',
  },
  onTheDay: [
    'Deje que la cuadrilla llegue a los dos lados de la cerca: abra las puertas y aparte autos, macetas y muebles.',
    'Mantenga alejados a niños y animales mientras trabaja, y mientras la cerca esté abierta.',
  ],
  calendar: {
    state: { proposed: 'Propuesto: ', confirmed: '', done: '', missed: 'No se hizo: ', cancelled: 'Cancelado: ' },
    request:
      'La entrada de calendario adjunta pone el día en su calendario; un mensaje posterior cambia la misma entrada.',
    cancel: 'La entrada de calendario adjunta quita el día de su calendario.',
  },
  headings: {
    works: 'Qué se hace, y qué puede costar',
    next: 'Qué le pedimos',
    onTheDay: 'Ese día',
    why: 'Por qué, y por qué ahora',
  },
  board: {
    subject: (visits, sites, firstDay, lastDay) =>
      `Plan de la temporada: ${many(visits, 'visita', 'visitas')} en ${many(sites, 'lugar', 'lugares')}, ${firstDay === lastDay ? `el ${dayInWords(firstDay, 'es')}` : `del ${dayInWords(firstDay, 'es')} al ${dayInWords(lastDay, 'es')}`}`,
    answer: ({ visits, fences, sites, firstDay, lastDay, total }) => [
      `Nuestro plan de la temporada tiene ${many(visits, 'visita', 'visitas')} a ${many(fences, 'cerca suya', 'cercas suyas')} en ${many(sites, 'lugar', 'lugares')}, terminadas a más tardar el ${dayInWords(lastDay, 'es')}; la primera es el ${dayInWords(firstDay, 'es')}.`,
      `En total, ${total}: una cifra para presupuestar, no una cotización.`,
    ],
    nothingPlanned: [
      'Nuestro nuevo plan de la temporada no tiene ninguna visita a sus cercas.',
      'Lo que se había propuesto queda cancelado, como está abajo.',
    ],
    covering: 'Abajo está lo que se planea en cada uno de sus lugares, para cuándo y a qué costo, para su reunión.',
    siteCost: (site, range, lastDay) =>
      `${site}, todas las visitas: terminado a más tardar el ${dayInWords(lastDay, 'es')}, ${range}.`,
    columns: ['Cerca', 'Qué se hace', 'Puede costar'],
    standing: { proposed: 'propuesto', confirmed: 'prometido' },
    noLonger: 'Estos días se habían propuesto y quedan cancelados; las cercas siguen en nuestro plan:',
    next: 'Los días propuestos quedan prometidos cuando la oficina los confirma; entonces avisamos de cada uno con una entrada para el calendario. Si su junta quiere otro orden u otros días, responda a este mensaje antes.',
    csv: 'El archivo adjunto tiene lo mismo para una hoja de cálculo.',
    more: (rows) => `Y ${rows} más: vea la tabla adjunta.`,
    headings: {
      planned: 'Qué se planea, lugar por lugar',
      noLonger: 'Ya no se planea',
      next: 'Qué le pedimos',
      why: 'Por qué estas cercas',
    },
  },
};
