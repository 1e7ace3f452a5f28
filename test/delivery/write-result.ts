import { readFileSync, writeFileSync } from 'node:fs';
import { packagePath } from '../../src/register/package-path.ts';

/** Prints a result and puts it between its marks in docs/delivery.md. */
export function writeResult(name: 'postfix' | 'kills', lines: readonly string[]): void {
  process.stdout.write(`${lines.join('\n')}\n`);
  const page = packagePath('docs', 'delivery.md');
  const text = readFileSync(page, 'utf8');
  const marks = new RegExp(`(<!-- ${name}: written by npm run ${name} -->\n)[\\s\\S]*?(<!-- end of ${name} -->)`);
  if (!marks.test(text)) throw new Error(`docs/delivery.md has no marks for ${name}`);
  writeFileSync(
    page,
    text.replace(marks, (_whole, begin: string, end: string) => `${begin}\n${lines.join('\n')}\n\n${end}`),
  );
}
