/** Who asks for a list page. */
export type Reader = 'office' | 'board' | 'crew' | 'program';

/** One list page to be measured. SITE, SITENAME and OWNER in its path are filled in from the register. */
export interface ListedPage {
  readonly name: string;
  readonly path: string;
  /** The office where nobody is named. */
  readonly as?: Reader;
}

/** Every list page with the ways in which it is asked for; a new list page is one line more. */
export const LISTED_PAGES: readonly ListedPage[] = [
  { name: 'season brief', path: '/brief' },
  { name: 'fences, the worst first', path: '/fences' },
  { name: 'fences, last page', path: '/fences?page=1000000' },
  { name: 'fences, a page in the middle', path: '/fences?page=1000' },
  { name: 'fences by owner, the other way', path: '/fences?sort=owner&dir=desc' },
  { name: 'fences short, by once in N years', path: '/fences?standing=short&sort=once' },
  { name: 'fences clear, last page', path: '/fences?standing=clear&page=1000000' },
  { name: 'fences of one treatment, by site', path: '/fences?treatment=heavy-duty&sort=site' },
  { name: 'fences by age and short season', path: '/fences?from=2004&to=2012&short-to=2030&sort=installed' },
  { name: 'fences with weak ends, page 9', path: '/fences?ends=short&sort=lean&page=9' },
  { name: 'fences of one site', path: '/fences?site=SITE' },
  { name: 'fences of one owner', path: '/fences?owner=OWNER&sort=short' },
  { name: 'text found seldom', path: '/fences?q=0000123' },
  { name: 'text found often', path: '/fences?q=b-0000&sort=gust' },
  { name: 'text of a site', path: '/fences?q=SITENAME' },
  { name: 'notices', path: '/notices' },
  { name: 'outbox', path: '/outbox' },
  { name: 'outbox of one owner', path: '/outbox?owner=OWNER' },
  { name: 'outbox, what was sent', path: '/outbox?state=sent' },
  { name: 'answers', path: '/answers' },
  { name: 'season plans', path: '/plan' },
  { name: 'ledger of hours left', path: '/plan/hours' },
  { name: 'visits to come', path: '/visits' },
  { name: 'visits, all, page 20', path: '/visits?state=all&page=20' },
  { name: 'visits of one site', path: '/visits?site=SITE&state=all' },
  { name: 'materials', path: '/materials' },
  { name: 'owners', path: '/owners' },
  { name: 'owners by text', path: '/owners?q=12' },
  { name: 'one owner', path: '/owners/OWNER' },
  { name: 'sites', path: '/sites' },
  { name: 'sites by text, page 2', path: '/sites?q=1&page=2' },
  { name: 'one site', path: '/sites/SITE' },
  { name: 'records', path: '/records' },
  { name: 'crews', path: '/crews' },
  { name: 'catalogue', path: '/catalogue' },
  { name: 'seasons', path: '/seasons' },
  { name: 'climate zones', path: '/climate-zones' },
  { name: 'storms', path: '/storms' },
  { name: 'documents', path: '/documents' },
  { name: 'documents by text', path: '/documents?q=SITENAME' },
  { name: 'accounts', path: '/accounts' },
  { name: 'calendar links', path: '/feeds' },
  { name: 'board: its sites', path: '/board', as: 'board' },
  { name: 'board: its fences', path: '/fences', as: 'board' },
  { name: 'board: its fences by text', path: '/fences?q=b-0000&sort=gust', as: 'board' },
  { name: 'board: documents', path: '/documents', as: 'board' },
  { name: 'crew: today', path: '/today', as: 'crew' },
  { name: 'program: fences', path: '/api/v1/fences?limit=100', as: 'program' },
  { name: 'program: short fences', path: '/api/v1/fences?standing=short&limit=100', as: 'program' },
  { name: 'program: inspections', path: '/api/v1/records/inspections?limit=100', as: 'program' },
  { name: 'program: visits', path: '/api/v1/visits?limit=100', as: 'program' },
  { name: 'program: plans', path: '/api/v1/plans', as: 'program' },
  { name: 'program: notices held', path: '/api/v1/notices/held?limit=100', as: 'program' },
  { name: 'program: outbox', path: '/api/v1/outbox?limit=100', as: 'program' },
  { name: 'program: answers', path: '/api/v1/answers?limit=100', as: 'program' },
];
