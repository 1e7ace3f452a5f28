/** Where the committed ranks and their picture lie. */
export const RANKS_FILE = new URL('../../docs/calibration.json', import.meta.url);
export const PICTURE_FILE = new URL('../../docs/pictures/calibration.png', import.meta.url);
