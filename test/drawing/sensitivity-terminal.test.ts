import { describe, expect, it } from 'vitest';
import { sensitivityLines } from '../../src/drawing/sensitivity-terminal.ts';
import { SENSITIVE_FENCES, sensitivityNamed } from './sensitivity-fences.ts';

const USUAL = sensitivityNamed('usual');
const WIDE = sensitivityLines(USUAL, { units: 'us', columns: 99 });
/** Characters of a line that belong to its bar. */
const barLength = (line: string): number => [...line].filter((character) => '█▒▶'.includes(character)).length;

describe('the sensitivity on a terminal', () => {
  const cases = SENSITIVE_FENCES.flatMap((name) => [60, 80, 99, 140].map((columns) => ({ name, columns })));

  it.each(cases)('keeps within its width and names every input: $name, $columns', ({ name, columns }) => {
    const sensitivity = sensitivityNamed(name);
    const lines = sensitivityLines(sensitivity, { units: 'us', columns });
    for (const line of lines) expect(line.length, line).toBeLessThanOrEqual(columns);
    const text = lines.join(' ').toLowerCase();
    for (const input of [...sensitivity.bars.map((bar) => bar.input), ...sensitivity.without])
      expect(text).toContain(input);
  });

  it('gives each input one line with both values, their years and the swing', () => {
    const pace = WIDE.find((line) => line.startsWith('Rot pace'));
    expect(pace).toMatch(/^Rot pace +fast, 1 in 10 → 2022 █+│█+ slow, 1 in 10 → 2050 +27 years$/);
    expect(WIDE.find((line) => line.startsWith('Height'))).toMatch(
      /6\.25 ft → 2029 ▒+│▒+ 5\.75 ft → 2033 +3\.7 years$/,
    );
  });

  it('draws longer bars for longer swings', () => {
    const lengths = USUAL.bars.map(({ input }) =>
      barLength(WIDE.find((line) => line.toLowerCase().startsWith(input))!),
    );
    for (const [index, length] of lengths.slice(1).entries()) expect(length).toBeLessThanOrEqual(lengths[index]! + 1);
    expect(lengths[0]! / lengths[4]!).toBeGreaterThan(2);
  });

  it('puts values on a line of their own where there is no room beside the bars', () => {
    const narrow = sensitivityLines(USUAL, { units: 'metric', columns: 60 });
    expect(narrow).toContain('Height, 3.7 years: 1.91 m → 2029, 1.75 m → 2033');
  });

  it('ends a bar that runs beyond sixty years in an arrow', () => {
    const lines = sensitivityLines(sensitivityNamed('with an end beyond sixty years'), { units: 'us', columns: 99 });
    expect(lines.find((line) => line.startsWith('Rot pace'))).toMatch(/█▶ slow, 1 in 10 → 60\+ +over \d\d years$/);
  });

  it('says in a sentence that nothing moves it', () => {
    const lines = sensitivityLines(sensitivityNamed('of steel'), { units: 'us', columns: 99 });
    expect(lines[0]).toBe('No input, moved by itself, changes when this fence goes short (not in 60 years).');
  });
});
