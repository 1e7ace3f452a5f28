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
];
