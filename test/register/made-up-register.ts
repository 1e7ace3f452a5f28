import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';
import { importCsv } from '../../src/register/csv/import-csv.ts';
import { type ImportReport, remarkText } from '../../src/register/csv/import-report.ts';
import { openRegister, type Register } from '../../src/register/database.ts';

export const TODAY = '2026-11-25';
export const NOW = '2026-11-25T12:00:00.000Z';

/** A folder that goes when the test is over. */
export function temporaryFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'register-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}

/** An empty register in a file of its own, closed when the test is over. */
export async function temporaryRegister(): Promise<Register> {
  const register = await openRegister(join(temporaryFolder(), 'register.sqlite'));
  onTestFinished(() => register.close());
  return register;
}

export const OWNERS = `ref,name,kind,channel,email,postal_address
oda,Oda Marlowe,person,mail,oda@example.org,
hoa,Quillback Commons Association,association,letter,,"1 Quill Lane
Quillback"
`;
export const ZONES = `ref,name,rain_in,mean_temperature_f,dry_months,source
gulf,Humid and warm,63,67.1,0,invented
`;
export const SITES = `ref,name,place,region,time_zone,climate_zone,exposure,soil_class,wind_kind,wind_basis,design_gust_mph,return_period_years,wind_source
quill,Quillback Commons,Quillback,Coast,America/Chicago,gulf,B,medium-sand,map,ultimate,105,300,invented map
`;
export const FENCES = `ref,site,owner,style,height_in,run_length_ft,post_spacing_ft,named_end,end_a,end_a_return_ft,end_b,section,species,grade,treatment_class,installed,embedment_in,footing,footing_diameter_in,retention_pcf
F-1,quill,oda,solid-board,72,80,8,house,return,24,gate,4x4,southern-pine,no-2,ground-contact,2014-05-03,24,concrete,9,0.15
F-2,quill,hoa,solid-board,72,40,8,corner,return,80,free,4x4,southern-pine,no-2,above-ground-stock,2008/2012,,,,
`;
export const POSTS = `fence,post,section,treatment_class,shared_with,shared_end,installed
F-1,3,6x6,heavy-duty,,,2020-04
F-2,1,,,F-1,A,
`;
export const WORKS = `ref,fence,day,kind,posts,section,species,treatment_class,moment_capacity_lbft,positions_ft
W-1,F-1,2021-03-01,groundline-treatment,all,,,,,
W-2,F-1,2022-04-05,post-swap,4 5,4x4,southern-pine,ground-contact,,
W-3,F-2,2023-06-07,added-posts,all,4x4,southern-pine,ground-contact,,4 12
W-4,F-1,2024-06-07,steel-sleeve,2,,,,3000,
`;

/** The six files of a small sound register. */
export const SOUND_FILES = [
  { name: 'works.csv', text: WORKS },
  { name: 'posts.csv', text: POSTS },
  { name: 'fences.csv', text: FENCES },
  { name: 'sites.csv', text: SITES },
  { name: 'climate-zones.csv', text: ZONES },
  { name: 'owners.csv', text: OWNERS },
] as const;

export const INSPECTIONS = `ref,fence,day,inspector,qualification,method,instrument,notes
F-1/2024-05-02/awl-or-probe,F-1,2024-05-02,Nell Fox,crew lead,awl-or-probe,marked awl,
I-2,F-1,2026-05-02,"Fox, Nell",,caliper,,second look
I-1,F-1,2026-05-02,Nell Fox,,drill-resistance,,
I-3,F-2,2025-04-01,Oda,owner,level,,
`;
export const READINGS = `inspection,post,depth_in,depth_mm,residual_width_in,sound_to_in,soft_to_mm,broken,cavity_in,lean_degrees,collar_cracked,rail_connection,trimmer_cut_in,closed_off,notes
F-1/2024-05-02/awl-or-probe,10,,,,0.12,,,,,,,,,
F-1/2024-05-02/awl-or-probe,2,0.25,,,,,no,,4,yes,0.5,0.25,,=leans
F-1/2024-05-02/awl-or-probe,9,,,,,,yes,,,,,,yes,
I-2,6,,,3.1,,,,,,no,,,,
I-1,8,,7.3,,,,,1,,,,,no,
I-1,9,,,,,12,,0,,,,,,
I-3,8,,,,,,,,2.5,,,,,set later
`;
export const OUTCOMES = `ref,storm,fence,day,gust_mph,gust_mps,gust_spread_percent,posts,result,gust_source,reported_by,notes
O-2,March gale,F-1,2025-03-14,71,,,all,stood,airfield,Oda,
O-1,March gale,F-1,2025-03-14,71,,,3 9,leaned,airfield,Oda,
O-3,Ice storm,F-2,2024-01-05,,33.3,12.5,2,snapped,,"Fox, Nell",down
`;

/** The three files of what was seen at the sound register's fences. */
export const EVIDENCE_FILES = [
  { name: 'outcomes.csv', text: OUTCOMES },
  { name: 'readings.csv', text: READINGS },
  { name: 'inspections.csv', text: INSPECTIONS },
] as const;

/** Files of a storm season, two crews and a catalogue of its own. */
export const SEASON_FILES = [
  {
    name: 'storm-seasons.csv',
    text: `ref,name,opens,closes,share,source
bay,Bay season,11-15,02-28,0.7,invented
`,
  },
  {
    name: 'catalogue.csv',
    text: `kind,person_hours_per_post,price_per_post,cure_days,embedment_in,source
post-swap,2.5,210,10,42,invented
`,
  },
  {
    name: 'materials.csv',
    text: `kind,name,unit,quantity_fixed,quantity_per_post,unit_cost
post-swap,'=heavy post,piece,,1,31
post-swap,"gravel, washed",bag,1,2,6.5
`,
  },
  {
    name: 'crews.csv',
    text: `ref,name,base_latitude,base_longitude,speed_mph,weather_reserve
salt,Salt crew,30.1,-90.9,38,0.2
reed,Reed crew,,,35,
`,
  },
  {
    name: 'crew-members.csv',
    text: `ref,crew,name,hours_per_week,languages,skills,from_day,to_day
fox,salt,Nell Fox,40,en es,licensed-applicator inspector,,
reyes,salt,Tomas Reyes,32,es,,2027-01-11,2027-12-31
`,
  },
  {
    name: 'days-off.csv',
    text: `ref,crew,member,first_day,last_day,reason
fox-may,salt,fox,2027-05-03,2027-05-07,course
salt-year-end,salt,,2026-12-24,2027-01-03,
`,
  },
] as const;

export type NamedText = { readonly name: string; readonly text: string };

/** Imports with the tests' day and moment. */
export const importFiles = (
  register: Register,
  files: readonly NamedText[],
  options: Partial<Parameters<typeof importCsv>[2]> = {},
): Promise<ImportReport> =>
  importCsv(register, files, { acceptValid: false, dryRun: false, today: TODAY, now: NOW, ...options });

/** A register that holds the sound files. */
export async function soundRegister(): Promise<Register> {
  const register = await temporaryRegister();
  const report = await importFiles(register, SOUND_FILES);
  if (report.faults.length > 0) throw new Error(report.faults.map(remarkText).join('\n'));
  return register;
}

/** The sound register with inspections and storm outcomes. */
export async function seenRegister(): Promise<Register> {
  const register = await soundRegister();
  const report = await importFiles(register, EVIDENCE_FILES);
  if (report.faults.length > 0) throw new Error(report.faults.map(remarkText).join('\n'));
  return register;
}

/** The faults of a report as the lines people read. */
export const faultLines = (report: ImportReport): readonly string[] => report.faults.map(remarkText);

/** A CSV of one row, from its cells by column. */
export const rowCsv = (cells: Readonly<Record<string, string>>): string => {
  const quoted = (cell: string): string => `"${cell.replaceAll('"', '""')}"`;
  return `${Object.keys(cells).join(',')}\n${Object.values(cells).map(quoted).join(',')}\n`;
};
