import { readFileSync } from 'node:fs';

/** Fields of `/proc/PID/stat` after the program's name, in which only the last closing bracket is sure. */
const START_FIELD = 19;

/**
 * When a process was started: the boot of its system and the clock ticks since. Process numbers repeat (in a container
 * every start has number 1), numbers with their start do not. Null where the system has no `/proc` or no such process.
 */
export function processStart(pid: number): string | null {
  try {
    const boot = readFileSync('/proc/sys/kernel/random/boot_id', 'utf8').trim();
    const stat = readFileSync(`/proc/${pid}/stat`, 'utf8');
    const ticks = stat.slice(stat.lastIndexOf(')') + 2).split(' ')[START_FIELD];
    return ticks ? `${boot} ${ticks}` : null;
  } catch {
    return null;
  }
}

function isAlive(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === 'EPERM';
  }
}

/** True where a process that noted its number and start is gone, also where another has got its number since. */
export function isProcessGone(noted: { readonly pid: number; readonly processStart: string | null }): boolean {
  if (!isAlive(noted.pid)) return true;
  const start = processStart(noted.pid);
  return start !== null && noted.processStart !== null && start !== noted.processStart;
}
