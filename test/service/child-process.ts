import type { ChildProcess } from 'node:child_process';
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { fileURLToPath } from 'node:url';
import { onTestFinished } from 'vitest';

/** A program of the test folder at work in a process of its own. */
export interface Child {
  readonly process: ChildProcess;
  /** Settles with the first line of its output that has the text in it; rejects where it ends before. */
  line(text: string): Promise<string>;
  /** Kills it on the spot, as a power cut would, and waits until it is gone. */
  kill(): Promise<void>;
}

/** Starts a TypeScript file beside this one with arguments. It is killed when the test is over. */
export function startChild(file: string, ...args: readonly string[]): Child {
  const path = fileURLToPath(new URL(file, import.meta.url));
  const child = spawn(process.execPath, ['--import', 'tsx', path, ...args], { stdio: ['ignore', 'pipe', 'pipe'] });
  let output = '';
  let errors = '';
  const waiting = new Set<() => void>();
  const wake = (): void => {
    for (const look of waiting) look();
  };
  child.stdout.on('data', (chunk: Buffer) => {
    output += chunk.toString();
    wake();
  });
  child.stderr.on('data', (chunk: Buffer) => {
    errors += chunk.toString();
  });
  const ended = once(child, 'exit').then(wake);
  const kill = async (): Promise<void> => {
    child.kill('SIGKILL');
    await ended;
  };
  onTestFinished(kill);
  return {
    process: child,
    line: (text) =>
      new Promise((resolve, reject) => {
        const look = (): void => {
          const found = output.split('\n').find((each) => each.includes(text));
          if (found === undefined && child.exitCode === null && child.signalCode === null) return;
          waiting.delete(look);
          if (found === undefined) reject(new Error(`${file} ended without saying ${text}: ${errors || output}`));
          else resolve(found);
        };
        waiting.add(look);
        look();
      }),
    kill,
  };
}
