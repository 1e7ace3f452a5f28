import type { RecordKind } from './record-store.ts';

/**
 * The key behind the name of a record within its kind, its parts in the order of `recordsAfter`; null for a text that names none.
 * Names are as `recordName` writes them: a ref, `fence post 3`, a kind of works, or that and a material's name.
 */
export function recordKeyOf(kind: RecordKind, name: string): readonly (string | number)[] | null {
  if (kind === 'posts' || kind === 'readings') {
    const [, ref, post] = /^(.+) post (\d{1,9})$/s.exec(name) ?? [];
    return ref === undefined ? null : [ref, Number(post)];
  }
  if (kind === 'materials') {
    const [, works, material] = /^(\S+) (.+)$/s.exec(name) ?? [];
    return works === undefined ? null : [works, material!];
  }
  return [name];
}
