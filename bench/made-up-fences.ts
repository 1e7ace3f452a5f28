import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

const SEEDS = join(import.meta.dirname, '..', 'seeds-demo');

/** The demo's owners, climate zones, sites, crews and works catalogue as files to import, without its fences. */
export const surroundings = (): readonly { readonly name: string; readonly text: string }[] =>
  readdirSync(SEEDS)
    .filter((name) => /^(owners|climate-zones|sites|crews|crew-members|days-off|catalogue|materials)\.csv$/.test(name))
    .map((name) => ({ name, text: readFileSync(join(SEEDS, name), 'utf8') }));

const refOf = (n: number): string => `B-${String(n).padStart(7, '0')}`;

/** Files of what was recorded of so many made-up fences: each inspected once, some worked at, some seen after a storm. */
export function recordFiles(count: number): readonly { readonly name: string; readonly text: string }[] {
  const every = (step: number): readonly number[] =>
    Array.from({ length: count }, (_, n) => n).filter((n) => n % step === 0);
  const file = (name: string, header: string, rows: readonly string[]) => ({
    name,
    text: `${[header, ...rows].join('\n')}\n`,
  });
  return [
    file(
      'inspections.csv',
      'ref,fence,day,inspector,qualification,method,instrument,notes',
      every(1).map((n) => `I-${n},${refOf(n)},2026-05-12,Ina Tolliver,crew lead,awl-or-probe,marked awl,`),
    ),
    file(
      'readings.csv',
      'inspection,post,depth_in,lean_degrees',
      every(4).flatMap((n) => [`I-${n},2,0.1,`, `I-${n},3,0.15,2`]),
    ),
    file(
      'works.csv',
      'ref,fence,day,kind,posts,years_effective',
      every(5).map((n) => `K-${n},${refOf(n)},2026-03-18,groundline-treatment,all,5`),
    ),
    file(
      'outcomes.csv',
      'ref,storm,fence,day,gust_mph,gust_spread_percent,posts,result,gust_source,reported_by,notes',
      every(5).map((n) => `O-${n},Autumn squall,${refOf(n)},2026-09-11,45,8,all,stood,made up,Ina Tolliver,`),
    ),
  ];
}

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
      refOf(n),
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
