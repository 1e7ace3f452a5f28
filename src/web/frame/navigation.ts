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
  { section: 'today', path: '/today', roles: ['office', 'crew'], words: { en: 'Today', es: 'Hoy' } },
  { section: 'fences', path: '/fences', roles: ['office', 'crew', 'board'], words: { en: 'Fences', es: 'Cercas' } },
  { section: 'outbox', path: '/outbox', roles: ['office'], words: { en: 'Outbox', es: 'Bandeja de salida' } },
  {
    section: 'mail',
    path: '/mail',
    roles: ['office'],
    words: { en: 'Caught mail', es: 'Correo retenido' },
    whileCatching: true,
  },
  { section: 'accounts', path: '/accounts', roles: ['office'], words: { en: 'Accounts', es: 'Cuentas' } },
] as const satisfies readonly NavigationEntry[];

/** Which entry of the masthead a page belongs to; `account` for the visitor's own page. */
export type Section = (typeof NAVIGATION)[number]['section'] | 'account' | null;

/** Where each role begins: the page that `/` leads to. */
const BEGINNINGS: Readonly<Record<AccountRole, string>> = {
  office: '/fences',
  crew: '/today',
  board: '/fences',
};

/** Path of the page with which a role begins. */
export const beginningOf = (role: AccountRole): string => BEGINNINGS[role];

/** The entries that a role is shown. */
export const entriesFor = (role: AccountRole, catchesMail: boolean): readonly NavigationEntry[] =>
  NAVIGATION.filter(
    (entry: NavigationEntry) => entry.roles.includes(role) && (catchesMail || entry.whileCatching !== true),
  );
