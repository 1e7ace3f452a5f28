import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const FOLDER = fileURLToPath(new URL('./phone/', import.meta.url));

/** The scripts that run on the phone, as they are in the folder `phone`: plain JavaScript, served as it stands. */
const SCRIPTS: ReadonlyMap<string, string> = new Map(
  readdirSync(FOLDER)
    .filter((name) => name.endsWith('.js'))
    .sort()
    .map((name) => [name, readFileSync(`${FOLDER}${name}`, 'utf8')]),
);

/** The worker that keeps pages on the phone: at the top, for it has to see every page that signs out. */
export const CREW_WORKER_PATH = '/crew-worker.js';
const WORKER = 'crew-worker.js';

const version = createHash('sha256')
  .update([...SCRIPTS.values()].join('\n'))
  .digest('hex')
  .slice(0, 12);

/** Folder of the page's scripts; it changes with what they say, so that they may be kept for long. */
const SCRIPT_FOLDER = `/crew-script/${version}/`;

/** The script that a page of the crew begins with. */
export const PHONE_SCRIPT_PATH = `${SCRIPT_FOLDER}crew-page.js`;

/** A script of the page by version and name; null where there is none. */
export const pageScript = (asked: string, name: string): string | null =>
  asked === version && name !== WORKER ? (SCRIPTS.get(name) ?? null) : null;

/** The worker. */
export const workerScript = (): string => SCRIPTS.get(WORKER) ?? '';

/** Bytes of all scripts together [bytes]. */
export const scriptBytes = (): number =>
  [...SCRIPTS.values()].reduce((sum, text) => sum + Buffer.byteLength(text, 'utf8'), 0);
