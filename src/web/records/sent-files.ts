import type { DraftFile } from '../../register/import-draft-store.ts';
import { type SentForm, textField } from '../frame/text-field.ts';

/** Most lines of all files of one import together. */
const MOST_LINES = 30_000;
/** Longest name of a file that is kept [characters]. */
const LONGEST_NAME = 100;

/** The name without folders and characters that cannot be shown. */
const plainName = (name: string, index: number): string =>
  (name.split(/[\\/]/).at(-1) ?? '').replace(/\p{C}/gu, '').trim().slice(-LONGEST_NAME) || `file-${index + 1}.csv`;

const asFiles = (value: unknown): readonly File[] =>
  (Array.isArray(value) ? value : [value]).filter((each): each is File => each instanceof File && each.size > 0);

async function textOf(file: File): Promise<string | null> {
  try {
    return new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(await file.arrayBuffer());
  } catch {
    return null;
  }
}

/** The files of a form, uploaded and pasted, or why they cannot be looked at. */
export async function sentFiles(form: SentForm): Promise<readonly DraftFile[] | string> {
  const files: DraftFile[] = [];
  for (const [index, file] of asFiles(form.files).entries()) {
    const name = plainName(file.name, index);
    const text = await textOf(file);
    if (text === null) return `${name} is not UTF-8 text. Save it as CSV with the encoding UTF-8, and send it again.`;
    files.push({ name, text });
  }
  const pasted = textField(form, 'pasted');
  if (pasted.trim() !== '') files.push({ name: 'pasted.csv', text: pasted });
  if (files.length === 0) return 'No file was chosen and nothing was pasted. Choose one or several CSV files.';
  const lines = files.reduce((sum, { text }) => sum + text.split('\n').length, 0);
  if (lines > MOST_LINES) {
    return `The files have ${lines} lines, and one import here takes ${MOST_LINES}. Cut a file in two, each with the line of column names, or use “stormpale import”, which takes any number.`;
  }
  return files;
}
