import type { ChartLanguage } from './chart-words.ts';

/** The fixed words of a day sheet, on paper and on a phone. */
export interface DaySheetLabels {
  readonly title: (sheets: string) => string;
  readonly subject: (crew: string, day: string) => string;
  readonly goingOut: (people: string) => string;
  readonly nobody: string;
  readonly load: string;
  readonly nothingToLoad: string;
  readonly loadedBefore: string;
  readonly fence: (ref: string) => string;
  readonly posts: (ref: string) => string;
  readonly done: string;
  readonly post: string;
  readonly todo: string;
  readonly lastRead: string;
  readonly soundWidthFound: (unit: string) => string;
  readonly widthFound: (unit: string) => string;
  readonly lean: string;
  readonly after: (post: number) => string;
  readonly newPostAfter: (post: number) => string;
  readonly gettingThere: string;
  readonly aboutIt: string;
  readonly fromTheSide: (ref: string) => string;
  readonly drawn: (ref: string, posts: number) => string;
  readonly allDone: string;
  readonly hoursUsed: (planned: string) => string;
  readonly leftUndone: string;
  readonly ownerOf: (fences: string) => string;
  readonly hoursPlanned: (atSite: string, onTheWay: string, visit: string) => string;
}

const EN: DaySheetLabels = {
  title: (sheets) => `Day sheet: ${sheets}`,
  subject: (crew, day) => `Day sheet of ${crew} for ${day}`,
  goingOut: (people) => `Going out: ${people}`,
  nobody: 'Nobody of the crew is down to go out this day.',
  load: 'Load',
  nothingToLoad: 'Nothing to load.',
  loadedBefore: 'Nothing to load: what goes on was loaded on its first day.',
  fence: (ref) => `Fence ${ref}`,
  posts: (ref) => `Posts of fence ${ref}`,
  done: 'Done',
  post: 'Post',
  todo: 'To do',
  lastRead: 'Last read',
  soundWidthFound: (unit) => `Sound width found, ${unit}`,
  widthFound: (unit) => `Width found, ${unit}`,
  lean: 'Lean, °',
  after: (post) => `after ${post}`,
  newPostAfter: (post) => `new post, midway between post ${post} and the next`,
  gettingThere: 'Getting there:',
  aboutIt: 'About it:',
  fromTheSide: (ref) => `Fence ${ref} from the side`,
  drawn: (ref, posts) => `Fence ${ref} with ${posts} posts`,
  allDone: 'all done',
  hoursUsed: (planned) => `People’s hours used (planned ${planned})`,
  leftUndone: 'Left undone, and why',
  ownerOf: (fences) => `Owner of ${fences}`,
  hoursPlanned: (atSite, onTheWay, visit) =>
    `People’s hours planned: ${atSite} at the site, ${onTheWay} on the way. Visit ${visit}.`,
};

const ES: DaySheetLabels = {
  title: (sheets) => `Hoja del día: ${sheets}`,
  subject: (crew, day) => `Hoja del día de ${crew} para el ${day}`,
  goingOut: (people) => `Salen: ${people}`,
  nobody: 'Este día no está anotado nadie de la cuadrilla para salir.',
  load: 'Para cargar',
  nothingToLoad: 'Nada que cargar.',
  loadedBefore: 'Nada que cargar: lo que continúa se cargó el primer día.',
  fence: (ref) => `Cerca ${ref}`,
  posts: (ref) => `Postes de la cerca ${ref}`,
  done: 'Hecho',
  post: 'Poste',
  todo: 'Qué hacer',
  lastRead: 'Última medición',
  soundWidthFound: (unit) => `Ancho sano encontrado, ${unit}`,
  widthFound: (unit) => `Ancho encontrado, ${unit}`,
  lean: 'Inclinación, °',
  after: (post) => `después del ${post}`,
  newPostAfter: (post) => `poste nuevo, a medio camino entre el poste ${post} y el siguiente`,
  gettingThere: 'Cómo entrar:',
  aboutIt: 'Sobre ella:',
  fromTheSide: (ref) => `La cerca ${ref} de lado`,
  drawn: (ref, posts) => `Cerca ${ref} con ${posts} postes`,
  allDone: 'todo hecho',
  hoursUsed: (planned) => `Horas usadas, entre todos (planeadas: ${planned})`,
  leftUndone: 'Qué quedó sin hacer, y por qué',
  ownerOf: (fences) => `Dueño de ${fences}`,
  hoursPlanned: (atSite, onTheWay, visit) =>
    `Horas planeadas, entre todos: ${atSite} en el sitio, ${onTheWay} de camino. Visita ${visit}.`,
};

/** The fixed words of a day sheet, by language. */
export const DAY_SHEET_LABELS: Readonly<Record<ChartLanguage, DaySheetLabels>> = { en: EN, es: ES };
