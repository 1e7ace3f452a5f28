import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

const PROGRAMS = ['pdftotext', 'pdfinfo', 'pdffonts'] as const;

/** True where the programs that read PDF files here are installed; says why the tests of them cannot run where not. */
export function pdfReaderIsThere(): boolean {
  if (PROGRAMS.every((program) => spawnSync(program, ['-v']).status === 0)) return true;
  process.stdout.write('NOT RUN: tests of PDF files: poppler-utils is not installed (apt-get install poppler-utils)\n');
  return false;
}

/** A word and where it stands [pt], from the upper left corner of its page. */
export interface PdfWord {
  readonly page: number;
  readonly text: string;
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** A PDF file as an independent reader sees it. */
export interface ReadPdf {
  readonly info: Readonly<Record<string, string>>;
  readonly pages: number;
  /** Width and height of its pages [pt]. */
  readonly size: readonly [number, number];
  /** Its text, blanks and line ends as single blanks. */
  readonly text: string;
  /** The text of each page. */
  readonly pageTexts: readonly string[];
  readonly words: readonly PdfWord[];
  /** Fonts by name, and whether each is embedded. */
  readonly fonts: readonly { readonly name: string; readonly embedded: boolean }[];
}

/** A text with every run of blanks and line ends as one blank. */
export const flat = (text: string): string => text.replace(/\s+/g, ' ').trim();

const entities = (text: string): string =>
  text
    .replace(/&lt;/g, '<')
    .replace(/&gt;/g, '>')
    .replace(/&quot;/g, '"')
    .replace(/&#39;/g, "'")
    .replace(/&amp;/g, '&');

function wordsOf(xml: string): readonly PdfWord[] {
  return xml
    .split('<page ')
    .slice(1)
    .flatMap((page, index) =>
      [...page.matchAll(/<word xMin="([\d.-]+)" yMin="([\d.-]+)" xMax="([\d.-]+)" yMax="([\d.-]+)">([^<]*)</g)].map(
        ([, left, top, right, bottom, text]): PdfWord => ({
          page: index + 1,
          text: entities(text ?? ''),
          left: Number(left),
          top: Number(top),
          right: Number(right),
          bottom: Number(bottom),
        }),
      ),
    );
}

/** Reads a PDF file with programs that have nothing to do with the one that made it. */
export function readPdf(bytes: Uint8Array): ReadPdf {
  const folder = mkdtempSync(join(tmpdir(), 'stormpale-pdf-'));
  try {
    const file = join(folder, 'report.pdf');
    writeFileSync(file, bytes);
    const run = (program: (typeof PROGRAMS)[number], args: readonly string[]): string =>
      execFileSync(program, args, { encoding: 'utf8', maxBuffer: 64 * 1024 * 1024 });
    const info = Object.fromEntries(
      run('pdfinfo', [file])
        .split('\n')
        .flatMap((line) => {
          const [, key, value] = /^([^:]+):\s*(.*)$/.exec(line) ?? [];
          return key === undefined ? [] : [[key, value ?? '']];
        }),
    );
    const [, width, height] = /([\d.]+) x ([\d.]+)/.exec(info['Page size'] ?? '') ?? [];
    const raw = run('pdftotext', ['-raw', file, '-']);
    return {
      info,
      pages: Number(info.Pages),
      size: [Number(width), Number(height)],
      text: flat(raw),
      pageTexts: raw.split('\f').slice(0, -1).map(flat),
      words: wordsOf(run('pdftotext', ['-bbox', file, '-'])),
      fonts: run('pdffonts', [file])
        .split('\n')
        .slice(2)
        .filter((line) => line.trim() !== '')
        .map((line) => {
          const [name = ''] = line.split(/\s+/);
          return { name, embedded: / yes yes (yes|no) +\d+ +\d+$/.test(line) };
        }),
    };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** The text of a page without its drawings, as a reader sees it: blanks and line ends as single blanks. */
export const htmlText = (html: string): string =>
  flat(
    entities(
      html
        .replace(/<style>[\s\S]*?<\/style>/g, ' ')
        .replace(/<title>[\s\S]*?<\/title>/g, ' ')
        .replace(/<svg[\s\S]*?<\/svg>/g, ' ')
        .replace(/<[^>]*>/g, ' '),
    ),
  );

/** How often each word is in a text. */
export function wordCounts(text: string): ReadonlyMap<string, number> {
  const counts = new Map<string, number>();
  for (const word of flat(text).split(' ')) counts.set(word, (counts.get(word) ?? 0) + 1);
  return counts;
}

/** Words of one text that another lacks, or has less often. */
export function missingWords(wanted: string, found: string): readonly string[] {
  const there = wordCounts(found);
  return [...wordCounts(wanted)].filter(([word, count]) => (there.get(word) ?? 0) < count).map(([word]) => word);
}
