import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'csv-parse/sync';
import type { OwnerRecord } from '../register/owner-record.ts';
import { packagePath } from '../register/package-path.ts';

interface DemoOwner {
  readonly ref: string;
  readonly name: string;
}

let demoOwners: ReadonlyMap<string, string> | null = null;

function readDemoOwners(): ReadonlyMap<string, string> {
  const text = readFileSync(join(packagePath('seeds-demo'), 'owners.csv'), 'utf8');
  return new Map(parse<DemoOwner>(text, { columns: true, bom: true }).map(({ ref, name }) => [ref, name]));
}

/** True for an owner of the demo: an invented person, to whom no letter can go. */
export function isDemoOwner({ ref, name }: Pick<OwnerRecord, 'ref' | 'name'>): boolean {
  demoOwners ??= readDemoOwners();
  return demoOwners.get(ref) === name;
}
