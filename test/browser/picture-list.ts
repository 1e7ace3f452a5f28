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
  { name: 'fences', path: '/fences', as: 'The office', width: 1280, height: 900 },
  { name: 'fence', path: '/fences/CT-11', as: 'The office', width: 1280, height: 1130 },
  { name: 'fence-phone', path: '/fences/CT-11', as: 'The office', width: 390, height: 900 },
  { name: 'reasons', path: '/fences/CT-11/reasons', as: 'The office', width: 1280, height: 1000 },
  { name: 'outbox', path: '/outbox', as: 'The office', width: 1280, height: 640 },
  { name: 'notices', path: '/notices', as: 'The office', width: 1280, height: 900 },
  { name: 'import', path: '/import', as: 'The office', width: 1280, height: 900 },
  { name: 'sites', path: '/sites', as: 'The office', width: 1280, height: 700 },
  { name: 'records', path: '/records', as: 'The office', width: 1280, height: 1000 },
];
