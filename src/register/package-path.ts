import { existsSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

function packageRoot(): string {
  let folder = dirname(fileURLToPath(import.meta.url));
  while (!existsSync(join(folder, 'package.json'))) {
    const parent = dirname(folder);
    if (parent === folder) throw new Error('package.json not found above the program');
    folder = parent;
  }
  return folder;
}

/** Path of a file or folder that ships with the program, from its top level. */
export const packagePath = (...parts: readonly string[]): string => join(packageRoot(), ...parts);
