import type { AccountRole } from '../../register/account-tables.ts';

/** One entry of the masthead. */
interface NavigationEntry {
  /** What pages that belong to it call it. */
  readonly section: string;
  readonly path: string;
  readonly roles: readonly AccountRole[];
  readonly words: Readonly<Record<'en' | 'es', string>>;
  /** True for the page that exists only where the service catches its own mail. */
  readonly whileCatching?: boolean;
}

/** The entries of the masthead in their order, and who is shown them. */
const NAVIGATION = [
  { section: 'board', path: '/board', roles: ['board'], words: { en: 'Our fences', es: 'Nuestras cercas' } },
  { section: 'fences', path: '/fences', roles: ['office', 'crew', 'board'], words: { en: 'Fences', es: 'Cercas' } },
  { section: 'owners', path: '/owners', roles: ['office'], words: { en: 'Owners', es: 'Propietarios' } },
  { section: 'sites', path: '/sites', roles: ['office'], words: { en: 'Sites', es: 'Sitios' } },
  { section: 'notices', path: '/notices', roles: ['office'], words: { en: 'Notices', es: 'Avisos' } },
  {
    section: 'documents',
    path: '/documents',
    roles: ['office', 'crew', 'board'],
    words: { en: 'Documents', es: 'Documentos' },
  },
  { section: 'outbox', path: '/outbox', roles: ['office'], words: { en: 'Outbox', es: 'Bandeja de salida' } },
  { section: 'answers', path: '/answers', roles: ['office'], words: { en: 'Answers', es: 'Respuestas' } },
  {
    section: 'mail',
    path: '/mail',
    roles: ['office'],
    words: { en: 'Caught mail', es: 'Correo retenido' },
    whileCatching: true,
  },
  { section: 'records', path: '/records', roles: ['office'], words: { en: 'Records', es: 'Registros' } },
] as const satisfies readonly NavigationEntry[];

/** Which entry of the masthead a page belongs to; `account` for the visitor's own page. */
export type Section = (typeof NAVIGATION)[number]['section'] | 'account' | null;

/** Where each role begins: the page that `/` leads to. */
const BEGINNINGS: Readonly<Record<AccountRole, string>> = {
  office: '/fences',
  crew: '/fences',
  board: '/board',
};

/** Path of the page with which a role begins. */
export const beginningOf = (role: AccountRole): string => BEGINNINGS[role];

/** The entries that a role is shown. */
export const entriesFor = (role: AccountRole, catchesMail: boolean): readonly NavigationEntry[] =>
  NAVIGATION.filter(
    (entry: NavigationEntry) => entry.roles.includes(role) && (catchesMail || entry.whileCatching !== true),
  );
