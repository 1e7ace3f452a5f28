import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import BetterSqlite3 from 'better-sqlite3';
import { describe, expect, test } from 'vitest';
import { openRegister } from '../../src/register/database.ts';
import { listFenceRefs, loadFenceFacts } from '../../src/register/fence-facts-store.ts';
import { loadFenceParties } from '../../src/register/fence-parties-store.ts';
import { packagePath } from '../../src/register/package-path.ts';
import { listRecords, upsertRecords } from '../../src/register/record-store.ts';
import { SHIPPED_STORM_SEASONS } from '../../src/season/storm-season.ts';
import { importFiles, NOW, soundRegister, temporaryFolder, temporaryRegister } from './made-up-register.ts';

const STORM_SEASONS = `ref,name,opens,closes,share,source
bay,Bay season,11-15,02-28,0.7,invented
`;

test('a new register holds the storm seasons that come with the program, and no other', async () => {
  const { db } = await temporaryRegister();
  const stored = await listRecords(db, 'storm-seasons');
  const shipped = SHIPPED_STORM_SEASONS.map(({ ref, name, window }) => ({ ref, name, ...window }));
  expect(stored.map(({ ref, name, opens, closes, share }) => ({ ref, name, opens, closes, share }))).toEqual(
    [...shipped].sort((a, b) => (a.ref < b.ref ? -1 : 1)),
  );
  const judged = SHIPPED_STORM_SEASONS.filter(({ share }) => share.tag === 'judgement').map(({ ref }) => ref);
  expect(stored.filter(({ source }) => /share: judgement/.test(source)).map(({ ref }) => ref)).toEqual(judged.sort());
});

test('a register of an older program gets them too, and its sites keep their own seasons', async () => {
  const path = join(temporaryFolder(), 'register.sqlite');
  const sqlite = new BetterSqlite3(path);
  const old = [
    '0001-records',
    '0002-sweep-and-notices',
    '0003-void-notices-and-changes',
    '0004-inspections-and-storms',
    '0005-learned-values',
    '0006-withdrawn-evidence',
  ];
  for (const name of old) sqlite.exec(readFileSync(join(packagePath('migrations'), `${name}.sql`), 'utf8'));
  sqlite.pragma(`user_version = ${old.length}`);
  sqlite.exec(`insert into climate_zones (ref, name, decay_zone, irrigated, source, created_at, updated_at)
    values ('z', 'Zone', 2, 0, 'invented', '${NOW}', '${NOW}')`);
  sqlite.exec(`insert into sites (ref, name, place, region, time_zone, units, climate_zone_ref, exposure, elevation_m,
      topographic_factor, soil_class, soil_saturated, lateral_bearing_doubled, wind_kind, wind_basis, design_gust_mps,
      return_period_years, hurricane, wind_source, season_opens, season_closes, season_share, created_at, updated_at)
    values ('s', 'Site', 'Place', '', 'America/Chicago', 'us', 'z', 'B', 0, 1, 'stiff-clay', 0, 0, 'map', 'ultimate', 45,
      300, 0, 'invented', '06-01', '11-30', 0.85, '${NOW}', '${NOW}')`);
  sqlite.close();
  const register = await openRegister(path);
  const { db } = register;
  try {
    expect(await listRecords(db, 'storm-seasons')).toHaveLength(SHIPPED_STORM_SEASONS.length);
    expect(await listRecords(db, 'sites')).toMatchObject([
      {
        seasonOpens: '06-01',
        seasonCloses: '11-30',
        seasonShare: 0.85,
        stormSeasonRef: null,
        latitude: null,
        longitude: null,
        frozenFrom: null,
        frozenTo: null,
      },
    ]);
  } finally {
    await register.close();
  }
});

describe('a site that names a storm season', () => {
  test('has its window and share in the facts, on the list of fences and in notices', async () => {
    const register = await soundRegister();
    const { db } = register;
    await importFiles(register, [{ name: 'storm-seasons.csv', text: STORM_SEASONS }]);
    const [site] = await listRecords(db, 'sites');
    await upsertRecords(db, 'sites', [{ ...site!, stormSeasonRef: 'bay' }], NOW);
    const window = { opens: '11-15', closes: '02-28', share: 0.7 };
    expect((await loadFenceFacts(register, ['F-1'])).get('F-1')?.site.seasonWindow).toEqual(window);
    expect((await listFenceRefs(register, null, 1))[0]?.seasonWindow).toEqual(window);
    expect((await loadFenceParties(register, ['F-1'])).get('F-1')?.site.seasonCloses).toBe('02-28');
  });

  test('keeps it in the register: a storm season that a site names cannot go', async () => {
    const register = await soundRegister();
    const { db } = register;
    const [site] = await listRecords(db, 'sites');
    await upsertRecords(db, 'sites', [{ ...site!, stormSeasonRef: 'noreaster' }], NOW);
    await expect(db.deleteFrom('storm_seasons').where('ref', '=', 'noreaster').execute()).rejects.toThrow(
      /FOREIGN KEY/,
    );
  });
});
