import type { AccountRole } from '../../register/account-tables.ts';

/** One entry of the masthead. */
interface NavigationEntry {
  /** What pages that belong to it call it. */
  readonly section: string;
  readonly path: string;
  readonly roles: readonly AccountRole[];
  readonly words: Readonly<Record<'en' | 'es', string>>;
  /** The section under which it stands, in a line of its own; in the first line where there is none, or it is not for whoever looks. */
  readonly within?: string;
  /** True for the page that exists only where the service catches its own mail. */
  readonly whileCatching?: boolean;
}

/** The entries of the masthead in their order, and who is shown them. */
const NAVIGATION = [
  { section: 'brief', path: '/brief', roles: ['office'], words: { en: 'Season brief', es: 'Informe de temporada' } },
  {
    section: 'today',
    path: '/today',
    within: 'visits',
    roles: ['office', 'crew'],
    words: { en: 'Today', es: 'Hoy' },
  },
  { section: 'board', path: '/board', roles: ['board'], words: { en: 'Our fences', es: 'Nuestras cercas' } },
  { section: 'fences', path: '/fences', roles: ['office', 'crew', 'board'], words: { en: 'Fences', es: 'Cercas' } },
  { section: 'plan', path: '/plan', roles: ['office'], words: { en: 'Plan', es: 'Plan' } },
  { section: 'visits', path: '/visits', roles: ['office'], words: { en: 'Visits', es: 'Visitas' } },
  { section: 'notices', path: '/notices', roles: ['office'], words: { en: 'Notices', es: 'Avisos' } },
  {
    section: 'outbox',
    path: '/outbox',
    within: 'notices',
    roles: ['office'],
    words: { en: 'Outbox', es: 'Bandeja de salida' },
  },
  {
    section: 'answers',
    path: '/answers',
    within: 'notices',
    roles: ['office'],
    words: { en: 'Answers', es: 'Respuestas' },
  },
  {
    section: 'mail',
    path: '/mail',
    within: 'notices',
    roles: ['office'],
    words: { en: 'Caught mail', es: 'Correo retenido' },
    whileCatching: true,
  },
  {
    section: 'documents',
    path: '/documents',
    roles: ['office', 'crew', 'board'],
    words: { en: 'Documents', es: 'Documentos' },
  },
  { section: 'records', path: '/records', roles: ['office'], words: { en: 'Records', es: 'Registros' } },
  {
    section: 'owners',
    path: '/owners',
    within: 'records',
    roles: ['office'],
    words: { en: 'Owners', es: 'Propietarios' },
  },
  { section: 'sites', path: '/sites', within: 'records', roles: ['office'], words: { en: 'Sites', es: 'Sitios' } },
] as const satisfies readonly NavigationEntry[];

/** Which entry of the masthead a page belongs to; `account` for the visitor's own page. */
export type Section = (typeof NAVIGATION)[number]['section'] | 'account' | null;

/** Where each role begins: the page that `/` leads to. */
const BEGINNINGS: Readonly<Record<AccountRole, string>> = {
  office: '/brief',
  crew: '/today',
  board: '/board',
};

/** Path of the page with which a role begins. */
export const beginningOf = (role: AccountRole): string => BEGINNINGS[role];

/** What a role is shown on a page: the first line of the masthead, and the line of the section that the page belongs to. */
export function entriesFor(
  role: AccountRole,
  { section, catchesMail }: { readonly section: Section; readonly catchesMail: boolean },
): {
  readonly first: readonly NavigationEntry[];
  /** The section of the first line that is open; null where the page belongs to none. */
  readonly open: string | null;
  /** The section itself and what stands under it; empty where nothing does. */
  readonly second: readonly NavigationEntry[];
} {
  const shown = NAVIGATION.filter(
    (entry: NavigationEntry) => entry.roles.includes(role) && (catchesMail || entry.whileCatching !== true),
  ) as readonly NavigationEntry[];
  const parentOf = ({ within }: NavigationEntry): string | null =>
    within !== undefined && shown.some((entry) => entry.section === within) ? within : null;
  const own = shown.find((entry) => entry.section === section);
  const open = own ? (parentOf(own) ?? own.section) : null;
  const under = shown.filter((entry) => open !== null && parentOf(entry) === open);
  const second = under.length === 0 ? [] : [...shown.filter((entry) => entry.section === open), ...under];
  return { first: shown.filter((entry) => parentOf(entry) === null), open, second };
}
