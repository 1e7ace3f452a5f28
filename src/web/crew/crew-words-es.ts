import { monthName } from '../../drawing/month-name.ts';
import type { CatalogueKind } from '../../season/catalogue-entry.ts';
import type { VisitReminder } from '../../season/visit/visit-reminders.ts';
import { type CalendarDay, dayNumber } from '../../units/calendar-day.ts';
import type { CrewWords } from './crew-words.ts';

const WEEK_DAYS = 'jueves viernes sábado domingo lunes martes miércoles'.split(' ');

function longDay(day: CalendarDay): string {
  const [year, month, date] = day.split('-').map(Number) as [number, number, number];
  // 1970-01-01 was a Thursday
  return `${WEEK_DAYS[((dayNumber(day) % 7) + 7) % 7]} ${date} de ${monthName(month, 'es')} de ${year}`;
}

const WORKS: Readonly<Record<CatalogueKind, string>> = {
  inspect: 'inspección',
  'groundline-treatment': 'tratamiento a ras de suelo',
  liner: 'forro',
  drainage: 'drenaje',
  'trimmer-guard': 'protectores contra la desbrozadora',
  'footing-reset': 'nuevo cimiento',
  'post-swap': 'cambio de postes',
  'steel-sleeve': 'fundas de acero',
  'added-posts': 'postes añadidos',
  rebuild: 'reconstrucción',
};

const UNITS: Readonly<Record<string, readonly [one: string, many: string]>> = {
  bag: ['saco', 'sacos'],
  piece: ['pieza', 'piezas'],
  set: ['juego', 'juegos'],
  roll: ['rollo', 'rollos'],
  box: ['caja', 'cajas'],
  pail: ['cubeta', 'cubetas'],
  can: ['lata', 'latas'],
  tube: ['tubo', 'tubos'],
};

const count = (number: number, one: string, many: string): string => `${number} ${number === 1 ? one : many}`;

function reminder(each: VisitReminder): string {
  const where = `en ${each.fenceRefs.join(', ')}`;
  const what = each.works.map((kind) => WORKS[kind]).join(', ');
  switch (each.kind) {
    case 'locate':
      return `Cave solo donde las líneas enterradas estén marcadas (${what} ${where}): hay que llamar al 811 a más tardar el ${each.askBy}, ${count(each.noticeDays, 'día', 'días')} antes. Sin marcas no se cava.`;
    case 'permit':
      return `Puede hacer falta un permiso para ${what} ${where}: pídalo a la oficina.`;
    case 'licensed-applicator':
      return `Solo un aplicador con licencia hace esto donde la ley lo pide: ${what} ${where}.`;
    case 'frozen-ground':
      return `El suelo puede estar helado: entonces no se hace ${what} ${where}.`;
  }
}

const postsWord = (posts: string): string => (/\D/.test(posts) ? 'postes' : 'poste');

/** Spanish, as a crew reads it on a phone. */
export const CREW_WORDS_ES: CrewWords = {
  today: 'Hoy',
  crew: 'Cuadrilla',
  allCrews: 'Todas las cuadrillas',
  chooseCrew: 'Qué cuadrilla',
  show: 'Mostrar',
  day: longDay,
  shortDay: (day) => longDay(day).replace(/ de \d{4}$/, ''),
  visitsToday: (number) => `${count(number, 'visita', 'visitas')} hoy.`,
  noCrews: 'El registro todavía no tiene ninguna cuadrilla.',
  nothingToday: 'Hoy no hay visitas.',
  nextOn: (day) => `La próxima es el ${day}.`,
  leftOver: 'Sin terminar',
  leftOverWhy: 'Su día ya pasó. Termine lo que se hizo; la oficina mueve el resto.',
  nextDays: 'Próximos días',
  nothingAhead: 'No hay nada planeado para las próximas dos semanas.',
  anyTime: 'a cualquier hora',
  goesOn: 'continúa',
  dayOf: (day, days) => `día ${day} de ${days}`,
  state: {
    proposed: 'todavía sin prometer',
    confirmed: 'prometida al dueño',
    done: 'hecha',
    missed: 'no se hizo',
    cancelled: 'cancelada',
  },
  directions: 'Cómo llegar',
  noPlace: 'La oficina no ha anotado la posición de este sitio.',
  position: 'Posición',
  firstThings: 'Antes de empezar',
  reminder,
  works: WORKS,
  worksText: (kind, posts, postCount) =>
    kind === 'added-posts'
      ? `${WORKS[kind]}, ${postCount} más`
      : posts === ''
        ? WORKS[kind]
        : `${WORKS[kind]}, ${postsWord(posts)} ${posts}`,
  gettingThere: 'Cómo entrar',
  aboutIt: 'Sobre ella',
  officeSays: 'La oficina dice',
  owner: 'Dueño',
  materials: 'Para cargar',
  noMaterials: 'Nada que cargar.',
  amount: (amount, unit) => {
    const [one, many] = UNITS[unit] ?? [unit, unit];
    return `${Number(amount.toFixed(2))} ${amount === 1 ? one : many}`;
  },
  fences: 'Cercas',
  fence: (ref) => `Cerca ${ref}`,
  postCount: (posts) => count(posts, 'poste', 'postes'),
  entered: (read, posts) => `${read} de ${count(posts, 'poste', 'postes')} anotados`,
  openFence: (ref) => `Abrir la cerca ${ref}`,
  openVisit: 'Abrir esta visita',
  visitOf: (site) => `Visita a ${site}`,
  personHours: (hours) => `${hours} horas de trabajo planeadas, entre todos.`,
  backToVisit: 'Volver a la visita',
  backToToday: 'Volver a hoy',
  consequence: {
    'pool-barrier': 'barrera de piscina',
    'over-footpath': 'junto a un paso de gente',
    livestock: 'encierra ganado',
    'other-high': 'mucho depende de ella',
  },
  fenceInShort: (height, length) => `${height} de alto, ${length} de largo`,
  countedFrom: (end) => `Los postes se cuentan desde el extremo A (${end}).`,
  finding: (kind, posts) =>
    ({
      closedOff: `Anotado como peligroso y acordonado: ${postsWord(posts)} ${posts}. Mantenga alejada a la gente.`,
      broken: `Anotado como roto: ${postsWord(posts)} ${posts}.`,
      leaning: `Anotado como inclinado: ${postsWord(posts)} ${posts}. No se acerque con viento.`,
      crackedCollars: `Collar de concreto agrietado: ${postsWord(posts)} ${posts}.`,
      hollow: `Hueco: ${postsWord(posts)} ${posts}.`,
    })[kind],
  method: '¿Cómo lo revisa?',
  methodHint: 'Elija una vez. Vale para todos los postes de esta cerca.',
  useMethod: 'Revisar así',
  methods: {
    'awl-or-probe': 'Punzón o sonda',
    caliper: 'Calibrador, madera sana',
    'drill-resistance': 'Resistencia al taladro',
    'circumference-tape': 'Cinta de contorno',
    level: 'Solo nivel',
    eye: 'Solo a la vista',
  },
  methodFirst: 'Diga primero cómo revisa: luego se puede anotar cada poste.',
  posts: 'Postes',
  post: (post) => `Poste ${post}`,
  along: (length) => `a ${length}`,
  before: 'Antes',
  neverRead: 'todavía sin revisar',
  believed: (range) => `ancho sano estimado ${range}`,
  now: 'En esta visita',
  look: 'mirar',
  newPostAfter: 'un poste nuevo a medio camino del siguiente',
  asSet: (section) => `puesto de ${section}`,
  round: (figure) => `${figure} redondo`,
  condition: {
    broken: 'roto',
    leaning: 'inclinado',
    closedOff: 'acordonado',
    collarCracked: 'collar agrietado',
    sleeved: 'con funda de acero',
  },
  enter: 'Anotar lo que encuentra',
  change: 'Cambiarlo',
  field: {
    depth: 'Pudrición, de una cara hacia adentro',
    sound_to: 'Sano hasta una profundidad de',
    soft_to: 'Blando hasta una profundidad de, por lo menos',
    residual_width: 'Ancho sano que queda, de lado a lado',
    residual_circumference: 'Contorno sano que queda, todo alrededor',
    broken: 'Roto a ras de suelo',
    cavity: 'Hueco en el centro, de lado a lado',
    lean_degrees: 'Inclinación, grados',
    collar_cracked: 'Collar de concreto agrietado',
    rail_connection: 'Peor unión de travesaño',
    trimmer_cut: 'Corte de desbrozadora, profundidad',
    notes: 'Comentario',
  },
  fieldHint: {
    depth: '0 donde la madera está sana. No es el ancho que queda.',
    sound_to: 'Nada blando hasta donde llegó la punta.',
    soft_to: 'Blando todo el camino, y la punta no llegó más lejos.',
    residual_width: 'Las dos puntas sobre madera raspada y sana. No es lo que se perdió.',
    residual_circumference: 'La cinta sobre madera raspada y sana.',
    cavity: '0 donde buscó y no encontró.',
  },
  tooDeep: (most) =>
    `Más de lo que puede tener este poste: a lo sumo ${most}, según su medida anotada. Mida otra vez, o dígale la medida a la oficina.`,
  notLooked: 'no se miró',
  yes: 'sí',
  no: 'no',
  rail: { '1': 'firme', '0.5': 'floja', '0': 'suelta' },
  railHint: 'Floja cuenta como media unión sana, suelta como nada.',
  save: (post) => `Guardar el poste ${post}`,
  sure: 'Es así: tómelo como está',
  takeBack: 'Retirar esta anotación',
  closeOff: 'Peligroso: acordonado',
  closedOffNow: 'Peligroso y acordonado.',
  closedOffBefore: 'Acordonado desde una inspección anterior.',
  undo: 'Deshacer',
  photo: 'Foto',
  photos: 'Fotos',
  addPhoto: 'Tomar una foto',
  sendPhoto: 'Guardar la foto',
  photoOf: (where, when, by) => `${where}, ${when}, ${by}`,
  stored: 'Guardado.',
  doubt: (doubt) => `Dudoso: ${doubt}`,
  notStored: 'No se guardó.',
  refusal: {
    noVisit: 'Esta visita ya no está en el registro. Pregunte a la oficina cuál es ahora.',
    anotherCrew: 'Ahora otra cuadrilla tiene esta visita. Pida a la oficina que se la devuelva y envíelo otra vez.',
    off: 'La oficina tiene esta visita como no hecha o cancelada. Pídale que la planee otra vez.',
    fenceNotOnIt:
      'Esta cerca ya no está en esta visita. Diga a la oficina lo que encontró, o pídale que añada la cerca.',
    noPicture: 'Eso no es una foto que se pueda guardar. Tómela como JPEG, PNG o WebP.',
    tooLarge: 'La foto pasa de 8 MiB. Tómela más pequeña.',
    otherContent: 'Este formulario ya se envió con otra cosa. Cargue la página otra vez y anótelo de nuevo.',
    badForm: 'Falta algo en el formulario. Cargue la página otra vez y anótelo de nuevo.',
    form: 'El formulario del teléfono es muy viejo. Cargue la página otra vez; lo anotado se queda.',
  },
  almostNothing:
    'Eso deja menos de la cuarta parte del poste, y un poste así casi nunca sigue en pie. Si cedió, diga roto. Si puso lo perdido en vez del ancho, o al revés, corríjalo. Si es así, confírmelo.',
  notInspected: (fences) =>
    `La cerca ${fences} se iba a inspeccionar y todavía no hay nada anotado. Anote lo que encontró, o quite la marca de la inspección.`,
  badPosts: (text) => `«${text}» no son números de postes. Escríbalos como 2, 5-8.`,
  badHours: (text) => `«${text}» no es un número de horas. Escríbalo como 6.5.`,
  finish: 'Terminar la visita',
  finishLead:
    'Quite la marca de lo que no se hizo; una cerca por inspeccionar se marca cuando hay un poste anotado. Una cerca sin ninguna marca vuelve al plan.',
  doneAt: (ref) => `Hecho en la cerca ${ref}`,
  atPosts: 'en los postes',
  somethingElse: 'Otra cosa',
  nothingElse: 'nada más',
  elseAtPosts: 'En los postes (vacío: donde haga falta)',
  hours: 'Horas usadas, entre todos',
  hoursHint: (planned) => `Sin el camino. Planeadas: ${planned}. Déjelo vacío si nadie las contó.`,
  doneOn: 'Día en que se hizo',
  remarks: 'Comentarios para la oficina',
  remarksHint: 'Qué quedó sin hacer y por qué, qué traer la próxima vez.',
  finishButton: 'La visita está hecha',
  sureHours: 'Las horas están bien así',
  isDone: 'Esta visita está hecha.',
  isOff: 'Esta visita está anulada: no se puede anotar nada en ella.',
  doneText: (fence, text) => `Cerca ${fence}: ${text}`,
  returnedText: (fences) => `Vuelve al plan: ${fences}.`,
  reading: {
    noRot: 'sin pudrición',
    depth: (figure) => `${figure} de pudrición en cada cara`,
    width: (figure) => `quedan ${figure} de ancho sano`,
    girth: (figure) => `quedan ${figure} de contorno sano`,
    soundTo: (figure) => `sano hasta ${figure}`,
    softTo: (figure) => `blando hasta ${figure} por lo menos`,
    broken: 'roto a ras de suelo',
    noHollow: 'sin hueco',
    hollow: (figure) => `hueco de ${figure}`,
    plumb: 'a plomo',
    lean: (degrees) => `${degrees}° fuera de plomo`,
    collarCracked: 'collar agrietado',
    collarSound: 'collar sano',
    rail: (percent) => `la unión de travesaño más débil, al ${percent} % de una sana`,
    noCut: 'sin corte de desbrozadora',
    cut: (figure) => `corte de desbrozadora de ${figure}`,
    closedOff: 'peligroso, acordonado',
  },
  phone: {
    locale: 'es',
    waitingOne: '1 anotación espera en este teléfono para enviarse.',
    waitingMany: '{n} anotaciones esperan en este teléfono para enviarse.',
    refusedOne: '1 anotación no se aceptó: vea abajo por qué.',
    refusedMany: '{n} anotaciones no se aceptaron: vea abajo por qué.',
    noSignal: 'Sin señal. Puede seguir: se envía solo.',
    sending: 'Enviando…',
    signIn: 'Su sesión está cerrada. Lo que anotó se queda en este teléfono hasta que la abra otra vez.',
    signInLink: 'Abrir la sesión y enviar',
    otherAccount: 'Anotado con otra sesión: se envía cuando esa persona la abra en este teléfono.',
    sent: 'Enviado.',
    waiting: 'Espera para enviarse',
    refused: 'No se aceptó',
    again: 'Enviar otra vez',
    confirm: 'Es así: enviarlo',
    throwAway: 'Tirarlo',
    throwAwaySure: 'Tirarlo de verdad',
    open: 'Abrir su página',
    holdsBack: 'La visita se termina cuando sus otras anotaciones se envíen o se tiren.',
    takeLevel: 'Tomarla del teléfono',
    levelAsk: 'Ponga el borde largo contra el poste y toque: {n}°',
    levelNone: 'Este teléfono no da el nivel. Léalo en el suyo.',
    photoAdded: 'Foto',
    kept: 'Las páginas de hoy quedan en este teléfono y se abren sin señal.',
    notKept: 'Estas páginas se abren solo con señal: el teléfono las guarda cuando se sirven por HTTPS.',
  },
};
