import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { availableParallelism, tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { FenceFacts } from '../../src/forecast/fence-facts.ts';
import type { NumberEffect } from './number-effects.ts';
import { NUMBER_ROWS } from './number-rows.ts';

const CHILD = fileURLToPath(new URL('number-effects-child.ts', import.meta.url));

/** Moves every number, shared among as many processes as the machine has cores, up to four. Throws where one fails. */
export async function moveNumbers(facts: ReadonlyMap<string, FenceFacts>): Promise<readonly NumberEffect[]> {
  const folder = mkdtempSync(join(tmpdir(), 'numbers-'));
  const parts = Math.min(4, availableParallelism());
  try {
    const factsFile = join(folder, 'facts.json');
    writeFileSync(factsFile, JSON.stringify([...facts]));
    const found = await Promise.all(
      Array.from({ length: parts }, async (_, part) => {
        const out = join(folder, `effects-${part}.json`);
        const child = spawn(
          process.execPath,
          [...process.execArgv, CHILD, factsFile, out, String(part), String(parts)],
          {
            stdio: 'inherit',
          },
        );
        const [code] = (await once(child, 'exit')) as [number | null];
        if (code !== 0) throw new Error(`part ${part + 1} of the numbers failed: see above`);
        return JSON.parse(readFileSync(out, 'utf8')) as readonly NumberEffect[];
      }),
    );
    const byId = new Map(found.flat().map((effect) => [effect.id, effect]));
    return NUMBER_ROWS.map((row) => byId.get(row.id)!);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
