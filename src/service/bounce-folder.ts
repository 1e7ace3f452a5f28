import { lstat, mkdir, readdir, readFile, rename, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Register } from '../register/database.ts';
import type { Clock } from './clock.ts';
import { NoDeliveryReport } from './delivery-report.ts';
import type { Logger } from './log.ts';
import { takeReport } from './take-report.ts';

/** Looks into the folder so often [ms]. */
const EVERY_MS = 60_000;
/** A file beside `new/` is taken once nobody has written to it for so long [ms]: it may not be whole before. */
const SETTLED_MS = 10_000;
const LARGEST_BYTES = 10 * 1024 * 1024;

/** What one look into the folder came to. */
interface FolderLook {
  readonly noted: number;
  /** Files that could not be used, with the reason. */
  readonly aside: readonly { readonly file: string; readonly reason: string }[];
  /** Addresses that were stopped. */
  readonly stopped: readonly string[];
}

/** Names of a folder's files in order; none where there is no such folder. */
async function filesIn(folder: string, wanted: (name: string) => boolean): Promise<readonly string[]> {
  try {
    const entries = await readdir(folder, { withFileTypes: true });
    return entries
      .filter((entry) => entry.isFile() && wanted(entry.name))
      .map(({ name }) => name)
      .sort();
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return [];
    throw error;
  }
}

/** Moves a file into a folder beside it under a name that is free there; returns the name. */
async function moveTo(path: string, folder: string, name: string): Promise<string> {
  await mkdir(folder, { recursive: true });
  const taken = new Set(await readdir(folder));
  let free = name;
  for (let count = 2; taken.has(free); count += 1) free = `${count}-${name}`;
  await rename(path, join(folder, free));
  return free;
}

/**
 * Takes the delivery reports of a mailbox folder: the files of `new/` (as Maildir has it) and `.eml` files beside it. What was
 * noted goes to `processed/`, what could not be used to `aside/` with the reason beside it. Begun anew after a kill, it notes
 * nothing twice. Throws where the folder is not there.
 */
export async function takeBounceFolder(
  register: Register,
  options: { readonly folder: string; readonly now: Clock },
): Promise<FolderLook> {
  const { folder, now } = options;
  if (!(await lstat(folder)).isDirectory()) throw new Error(`${folder} is no folder`);
  const fresh = (await filesIn(join(folder, 'new'), (name) => !name.startsWith('.'))).map((name) => join('new', name));
  const plain = await filesIn(folder, (name) => name.endsWith('.eml'));
  const aside: { file: string; reason: string }[] = [];
  const stopped: string[] = [];
  let noted = 0;
  for (const file of [...fresh, ...plain]) {
    const path = join(folder, file);
    const { mtimeMs, size } = await lstat(path);
    if (!file.startsWith('new') && now().toMillis() - mtimeMs < SETTLED_MS) continue;
    const name = file.replace(/^new[/\\]/, '');
    try {
      if (size > LARGEST_BYTES) throw new NoDeliveryReport(`it is larger than ${LARGEST_BYTES / 1024 / 1024} MB`);
      const taken = await takeReport(register, await readFile(path), { now });
      if (taken.noted.kind === 'stopped') stopped.push(taken.noted.address);
      noted += 1;
      await moveTo(path, join(folder, 'processed'), name);
    } catch (error) {
      if (!(error instanceof NoDeliveryReport)) throw error;
      const kept = await moveTo(path, join(folder, 'aside'), name);
      await writeFile(join(folder, 'aside', `${kept}.reason.txt`), `${error.message}\n`);
      aside.push({ file: kept, reason: error.message });
    }
  }
  return { noted, aside, stopped };
}

/** Looks into the folder now and every minute; what cannot be done is logged once and tried again. */
export function watchBounceFolder(
  register: Register,
  options: { readonly folder: string; readonly now: Clock; readonly log: Logger },
): { readonly close: () => Promise<void> } {
  const { log, folder } = options;
  let running: Promise<void> = Promise.resolve();
  let trouble = '';
  async function look(): Promise<void> {
    try {
      const { noted, aside, stopped } = await takeBounceFolder(register, options);
      if (noted + aside.length > 0) log.info({ noted, aside }, 'delivery reports taken');
      if (stopped.length > 0) log.warn({ stopped }, 'mail to these addresses is stopped; see "stormpale mail stopped"');
      trouble = '';
    } catch (error) {
      const reason = error instanceof Error ? error.message : String(error);
      if (reason !== trouble) log.error({ folder, reason }, 'delivery reports cannot be taken; it is tried again');
      trouble = reason;
    }
  }
  const ask = (): void => {
    running = running.then(look);
  };
  const timer = setInterval(ask, EVERY_MS);
  ask();
  return {
    close: async () => {
      clearInterval(timer);
      await running;
    },
  };
}
