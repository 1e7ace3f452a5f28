import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

const SEEDS = join(import.meta.dirname, '..', 'seeds-demo');

/** The demo's owners, climate zones and sites as files to import, without its fences. */
export const surroundings = (): readonly { readonly name: string; readonly text: string }[] =>
  readdirSync(SEEDS)
    .filter((name) => /^(owners|climate-zones|sites)\.csv$/.test(name))
    .map((name) => ({ name, text: readFileSync(join(SEEDS, name), 'utf8') }));

/** A file of so many made-up fences, spread over the demo's sites, treatments, ages and sizes; the same on every call. */
export function fencesCsv(count: number): string {
  const refsOf = (file: string): readonly string[] =>
    readFileSync(join(SEEDS, file), 'utf8')
      .split('\n')
      .slice(1)
      .map((line) => line.split(',')[0]!)
      .filter((ref) => /^[a-z0-9-]+$/.test(ref));
  const sites = refsOf('sites.csv');
  const owners = refsOf('owners.csv');
  const treatments = ['ground-contact', 'above-ground-stock', 'heavy-duty', 'unknown-treated', 'refractory-incised'];
  const header =
    'ref,site,owner,style,height_in,run_length_ft,post_spacing_ft,named_end,end_a,end_b,section,species,grade,treatment_class,installed,embedment_in,footing,footing_diameter_in';
  const rows = Array.from({ length: count }, (_, n) =>
    [
      `B-${String(n).padStart(7, '0')}`,
      sites[n % sites.length],
      owners[(n * 7) % owners.length],
      'solid-board',
      [48, 60, 72, 72, 96][n % 5],
      24 + ((n * 13) % 160),
      8,
      'street',
      'building',
      n % 3 === 0 ? 'gate' : 'free',
      n % 9 === 0 ? '6x6' : '4x4',
      'southern-pine',
      'no-2',
      treatments[(n * 3) % treatments.length],
      `${2001 + (n % 25)}-${String(1 + (n % 12)).padStart(2, '0')}-15`,
      24 + 6 * (n % 3),
      'concrete',
      9 + (n % 4),
    ].join(','),
  );
  return `${[header, ...rows].join('\n')}\n`;
}
