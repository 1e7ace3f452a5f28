/** One picture of the docs: a page of the demo, as whom, and how large the window is. */
export interface PictureWanted {
  /** Name of the file under `docs/pictures`, without its ending. */
  readonly name: string;
  readonly path: string;
  /** Button of the demo's entrance by which the page is reached. */
  readonly as: 'The office' | 'A crew' | 'A board' | 'An owner' | 'An owner (Spanish)';
  readonly width: number;
  readonly height: number;
  /** True where the whole page is wanted, however long. */
  readonly whole?: boolean;
}

/** Every picture of a page in the docs. */
export const PICTURES: readonly PictureWanted[] = [
  { name: 'brief', path: '/brief', as: 'The office', width: 1280, height: 900, whole: true },
  { name: 'brief-phone', path: '/brief', as: 'The office', width: 390, height: 900 },
  { name: 'fences', path: '/fences', as: 'The office', width: 1280, height: 900 },
  { name: 'fence', path: '/fences/CT-11', as: 'The office', width: 1280, height: 1130 },
  { name: 'fence-phone', path: '/fences/CT-11', as: 'The office', width: 390, height: 900 },
  { name: 'reasons', path: '/fences/CT-11/reasons', as: 'The office', width: 1280, height: 1000 },
  { name: 'board', path: '/board', as: 'A board', width: 1280, height: 1000 },
  { name: 'board-phone', path: '/board', as: 'A board', width: 390, height: 900 },
  { name: 'evidence', path: '/fences/CT-05/evidence', as: 'A board', width: 1280, height: 1000 },
  { name: 'documents', path: '/documents?fence=CT-05', as: 'The office', width: 1280, height: 900 },
  { name: 'owner', path: '', as: 'An owner', width: 1280, height: 900 },
  { name: 'owner-fence-phone', path: '/fences/AS-01', as: 'An owner', width: 390, height: 900 },
  { name: 'owner-preferences-phone', path: '/preferences', as: 'An owner (Spanish)', width: 390, height: 1200 },
  { name: 'answers', path: '/answers', as: 'The office', width: 1280, height: 800 },
  { name: 'outbox', path: '/outbox', as: 'The office', width: 1280, height: 640 },
  { name: 'notices', path: '/notices', as: 'The office', width: 1280, height: 900 },
  { name: 'import', path: '/import', as: 'The office', width: 1280, height: 900 },
  { name: 'sites', path: '/sites', as: 'The office', width: 1280, height: 700 },
  { name: 'records', path: '/records', as: 'The office', width: 1280, height: 1000 },
  { name: 'what-if', path: '/fences/CT-08/what-if', as: 'The office', width: 1280, height: 1100 },
  { name: 'plan', path: '/plan/1', as: 'The office', width: 1280, height: 1100 },
  { name: 'plan-hours', path: '/plan/hours', as: 'The office', width: 1280, height: 1000 },
  { name: 'visits', path: '/visits', as: 'The office', width: 1280, height: 900 },
  { name: 'materials', path: '/materials', as: 'The office', width: 1280, height: 900 },
  { name: 'feeds', path: '/feeds', as: 'The office', width: 1280, height: 700 },
  { name: 'owners', path: '/owners', as: 'The office', width: 1280, height: 800 },
  { name: 'one-owner', path: '/owners/cloverline', as: 'The office', width: 1280, height: 900 },
  { name: 'catalogue', path: '/catalogue', as: 'The office', width: 1280, height: 900 },
  { name: 'crews', path: '/crews', as: 'The office', width: 1280, height: 900 },
  { name: 'seasons', path: '/seasons', as: 'The office', width: 1280, height: 800 },
  { name: 'settings', path: '/settings', as: 'The office', width: 1280, height: 1000 },
  { name: 'learned', path: '/learned', as: 'The office', width: 1280, height: 900 },
  { name: 'inspect', path: '/fences/CT-11/inspect', as: 'The office', width: 1280, height: 900 },
  { name: 'storms', path: '/storms?site=cloverline', as: 'The office', width: 1280, height: 900 },
  { name: 'accounts', path: '/accounts', as: 'The office', width: 1280, height: 800 },
  { name: 'fence-report', path: '/fences/CT-11/report', as: 'The office', width: 1280, height: 1100 },
  { name: 'board-plan', path: '/sites/cloverline/plan', as: 'A board', width: 1280, height: 1100 },
  { name: 'owner-spanish-phone', path: '', as: 'An owner (Spanish)', width: 390, height: 900 },
  { name: 'today', path: '/today', as: 'A crew', width: 1280, height: 900 },
  { name: 'today-phone', path: '/today', as: 'A crew', width: 390, height: 900 },
];
