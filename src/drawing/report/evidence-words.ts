import type { ChartLanguage } from '../chart-words.ts';

/** The words of an evidence file that no other report has. */
export interface EvidenceWords {
  readonly today: (day: string) => string;
  /** What a past day means: what counts, what does not. */
  readonly past: (day: string, model: string) => readonly string[];
  readonly late: (count: number) => string;
  readonly withdrawn: (count: number) => string;
  readonly basis: string;
  readonly wind: (gust: string, source: string) => string;
  readonly exposure: (exposure: string, soil: string) => string;
  readonly replacement: string;
  readonly rebuild: string;
  readonly rebuildFrom: (posts: number) => string;
  readonly shippedPrice: string;
  readonly ownPrice: string;
  readonly consequence: string;
  readonly notices: string;
  readonly noticesCaption: string;
  readonly noticeColumns: readonly [decided: string, matter: string, owner: string, told: string];
  readonly noNotices: string;
  readonly answers: string;
  readonly answerKinds: Readonly<Record<string, string>>;
  readonly noAnswers: string;
  readonly told: (channel: 'mail' | 'letter', day: string) => string;
  readonly notTold: (why: 'under way' | 'to print' | 'parked' | 'cancelled' | 'unwritten') => string;
  readonly matters: Readonly<Record<string, string>>;
  readonly checked: string;
  readonly checkedBy: (command: string) => string;
  /** When it was made, and by which zone its days go. */
  readonly madeThere: (moment: string, timeZone: string) => string;
}

const EN: EvidenceWords = {
  today: (day) => `As believed on ${day}, from everything observed and done until then.`,
  past: (day, model) => [
    `As believed on ${day}: only what had been observed or done by the end of that day counts; later inspections, storms and works are left out, and so is what the register learned from its other fences later.`,
    `It is judged by today's model, ${model}, with today's settings, and with fence and site as they are recorded today. It is not what was printed on that day.`,
  ],
  late: (count) =>
    `${count === 1 ? 'One record' : `${count} records`} observed by then came into the register only later; ${count === 1 ? 'it counts' : 'they count'}, and the day of entry stands with ${count === 1 ? 'it' : 'them'}.`,
  withdrawn: (count) =>
    `${count === 1 ? 'One inspection or storm report' : `${count} inspections or storm reports`} of that time ${count === 1 ? 'was' : 'were'} withdrawn since, and ${count === 1 ? 'does' : 'do'} not count.`,
  basis: 'On which basis',
  wind: (gust, source) => `It is judged against a design gust of ${gust}. Source of the wind: ${source}.`,
  exposure: (exposure, soil) => `Exposure category ${exposure}; soil: ${soil}.`,
  replacement: 'Replacement value',
  rebuild: 'Rebuilding it in good time',
  rebuildFrom: (posts) => `${posts} posts, rails and boards, before tax`,
  shippedPrice: 'an order of magnitude that comes with the program: ask the office for a quote',
  ownPrice: "from the office's own prices",
  consequence: 'What hangs on it',
  notices: 'Notices to its owners',
  noticesCaption: 'Notices decided until then, newest first',
  noticeColumns: ['Decided', 'Matter', 'Owner', 'Told'],
  noNotices: 'No notice was decided.',
  answers: 'What its owners answered',
  answerKinds: {
    read: 'has read how it stands',
    'day chosen': 'chose a day for its visit',
    'quote accepted': 'accepted a quote for it',
  },
  noAnswers:
    'The register keeps what was sent, and what was answered by the links of its messages. Answers by mail or by telephone are not in it.',
  told: (channel, day) => (channel === 'mail' ? `by mail, sent ${day}` : `by letter, posted ${day}`),
  notTold: (why) =>
    ({
      'under way': 'not sent by then',
      'to print': 'letter not posted by then',
      parked: 'the mail server refused it',
      cancelled: 'cancelled by the office',
      unwritten: 'not written by then',
    })[why],
  matters: {
    dangerous: 'dangerous',
    'short from new': 'short from new',
    short: 'short',
    closing: 'closing',
    reminder: 'reminder before the season',
    'ends short': 'ends short',
    'once in 10': 'holds a gust that comes once in 10 years',
    'once in 25': 'holds a gust that comes once in 25 years',
    'once in 50': 'holds a gust that comes once in 50 years',
    'two thirds': 'two thirds of its strength left',
    'works done': 'works done',
    better: 'better',
  },
  checked: 'How this can be checked',
  checkedBy: (command) =>
    `“${command}” makes this file again from the same records; the forecast in it then has the same hash.`,
  madeThere: (moment, timeZone) => `Made ${moment}; its days are those of ${timeZone}, the time zone of the site.`,
};

const ES: EvidenceWords = {
  today: (day) => `Según lo que se cree el ${day}, con todo lo observado y hecho hasta entonces.`,
  past: (day, model) => [
    `Según lo que se cree el ${day}: cuenta solo lo observado o hecho hasta el final de ese día; las inspecciones, tormentas y trabajos posteriores quedan fuera, y también lo que el registro aprendió después de sus otras cercas.`,
    `Se juzga con el modelo de hoy, ${model}, con los ajustes de hoy y con la cerca y el sitio como constan hoy. No es lo que se imprimió aquel día.`,
  ],
  late: (count) =>
    count === 1
      ? 'Un dato observado para entonces se registró solo después; cuenta, y lleva su día de registro.'
      : `${count} datos observados para entonces se registraron solo después; cuentan, y llevan su día de registro.`,
  withdrawn: (count) =>
    count === 1
      ? 'Una inspección o un informe de tormenta de aquel tiempo se retiró desde entonces y no cuenta.'
      : `${count} inspecciones o informes de tormenta de aquel tiempo se retiraron desde entonces y no cuentan.`,
  basis: 'Sobre qué base',
  wind: (gust, source) => `Se juzga frente a una ráfaga de diseño de ${gust}. Fuente del viento: ${source}.`,
  exposure: (exposure, soil) => `Categoría de exposición ${exposure}; suelo: ${soil}.`,
  replacement: 'Valor de reposición',
  rebuild: 'Reconstruirla a tiempo',
  rebuildFrom: (posts) => `${posts} postes, travesaños y tablas, sin impuestos`,
  shippedPrice: 'un orden de magnitud que trae el programa: pida una cotización a la oficina',
  ownPrice: 'con los precios de la oficina',
  consequence: 'Qué depende de ella',
  notices: 'Avisos a sus dueños',
  noticesCaption: 'Avisos decididos hasta entonces, el más reciente primero',
  noticeColumns: ['Decidido', 'Asunto', 'Dueño', 'Comunicado'],
  noNotices: 'No se decidió ningún aviso.',
  answers: 'Qué respondieron sus dueños',
  answerKinds: {
    read: 'leyó cómo está',
    'day chosen': 'eligió un día para su visita',
    'quote accepted': 'aceptó un presupuesto para ella',
  },
  noAnswers:
    'El registro guarda lo que se envió y lo que se respondió con los enlaces de sus mensajes. Las respuestas por correo o por teléfono no constan en él.',
  told: (channel, day) => (channel === 'mail' ? `por correo electrónico, el ${day}` : `por carta, el ${day}`),
  notTold: (why) =>
    ({
      'under way': 'sin enviar para entonces',
      'to print': 'carta sin enviar para entonces',
      parked: 'el servidor de correo lo rechazó',
      cancelled: 'cancelado por la oficina',
      unwritten: 'sin escribir para entonces',
    })[why],
  matters: {
    dangerous: 'peligrosa',
    'short from new': 'insuficiente desde nueva',
    short: 'insuficiente',
    closing: 'cerca del límite',
    reminder: 'recordatorio antes de la temporada',
    'ends short': 'extremos insuficientes',
    'once in 10': 'aguanta una ráfaga que llega una vez en 10 años',
    'once in 25': 'aguanta una ráfaga que llega una vez en 25 años',
    'once in 50': 'aguanta una ráfaga que llega una vez en 50 años',
    'two thirds': 'le quedan dos tercios de su resistencia',
    'works done': 'trabajos hechos',
    better: 'mejoró',
    'visit proposed': 'visita propuesta',
    'visit confirmed': 'visita confirmada',
    'visit changed': 'visita cambiada',
    'visit missed': 'visita fallida',
    'visit cancelled': 'visita anulada',
    'plan for the board': 'plan de la temporada',
  },
  checked: 'Cómo se puede comprobar',
  checkedBy: (command) =>
    `«${command}» hace de nuevo esta constancia con los mismos datos; el pronóstico tiene entonces la misma huella.`,
  madeThere: (moment, timeZone) => `Hecha ${moment}; sus días son los de ${timeZone}, la zona horaria del sitio.`,
};

/** The words of an evidence file in one language. */
export const evidenceWords = (language: ChartLanguage): EvidenceWords => (language === 'es' ? ES : EN);
