/** Where the validation page is committed. */
export const VALIDATION_FILE = new URL('../../docs/validation.md', import.meta.url);
