import { randomUUID } from 'node:crypto';
import { linkSync, mkdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Clock } from './clock.ts';
import { isoUtc } from './clock.ts';
import { isProcessGone, processStart } from './process-start.ts';

/** The service that runs on a data folder, as its file says. */
interface ServiceHolder {
  readonly pid: number;
  readonly processStart: string | null;
  /** ISO text in UTC. */
  readonly since: string;
}

/** A held data folder. */
export interface ServiceClaim {
  /** Gives the folder back. */
  release(): void;
}

const codeOf = (error: unknown): string | undefined => (error as NodeJS.ErrnoException).code;

function readText(path: string): string | null {
  try {
    return readFileSync(path, 'utf8');
  } catch (error) {
    if (codeOf(error) === 'ENOENT') return null;
    throw error;
  }
}

/** The holder a file names; null where it names none, as a file does that a power cut left empty. */
function holderIn(text: string): ServiceHolder | null {
  try {
    const { pid, processStart: start, since } = JSON.parse(text) as Partial<ServiceHolder>;
    return typeof pid === 'number' ? { pid, processStart: start ?? null, since: since ?? 'an unknown time' } : null;
  } catch {
    return null;
  }
}

/** Puts a finished file at the path; false where there is one already. */
function put(own: string, path: string): boolean {
  try {
    linkSync(own, path);
    return true;
  } catch (error) {
    if (codeOf(error) === 'EEXIST') return false;
    throw error;
  }
}

/** Takes away what a dead service left. What came in its place meanwhile is put back. */
function takeAway(path: string, left: string): void {
  const aside = `${path}.${randomUUID()}`;
  try {
    renameSync(path, aside);
  } catch (error) {
    if (codeOf(error) === 'ENOENT') return;
    throw error;
  }
  if (readText(aside) !== left) put(aside, path);
  rmSync(aside, { force: true });
}

/**
 * Claims a data folder for one service, in a file of it. A claim whose process is gone is taken over at once.
 * Throws where another service runs on the folder.
 */
export function claimDataFolder(dataFolder: string, now: Clock): ServiceClaim {
  mkdirSync(dataFolder, { recursive: true });
  const path = join(dataFolder, 'service.lock');
  const own = `${path}.${randomUUID()}`;
  const holder: ServiceHolder = {
    pid: process.pid,
    processStart: processStart(process.pid),
    since: isoUtc(now()),
  };
  const text = `${JSON.stringify({ ...holder, token: own })}\n`;
  writeFileSync(own, text);
  try {
    while (!put(own, path)) {
      const standing = readText(path);
      if (standing === null) continue;
      const other = holderIn(standing);
      if (other && !isProcessGone(other)) {
        throw new Error(
          `another service (process ${other.pid}, since ${other.since}) already runs on this register, ${dataFolder}: stop that one, or name another data folder with --data or STORMPALE_DATA`,
        );
      }
      takeAway(path, standing);
    }
  } finally {
    rmSync(own, { force: true });
  }
  return {
    release: () => {
      if (readText(path) === text) rmSync(path, { force: true });
    },
  };
}
