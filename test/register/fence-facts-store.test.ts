import { expect, test } from 'vitest';
import { nominalSection } from '../../src/capacity/post-section.ts';
import { listFenceRefs, loadFenceFacts } from '../../src/register/fence-facts-store.ts';
import { loadFenceParties } from '../../src/register/fence-parties-store.ts';
import { listRecords, readRecord, upsertRecords } from '../../src/register/record-store.ts';
import { NOW, seenRegister, soundRegister } from './made-up-register.ts';

test('the facts of a fence hold its site, climate, wind, posts and works', async () => {
  const register = await soundRegister();
  const facts = await loadFenceFacts(register, ['F-1', 'F-2', 'F-9', 'F-1']);
  expect([...facts.keys()]).toEqual(['F-1', 'F-2']);
  const first = facts.get('F-1');
  expect(first).toMatchObject({
    ref: 'F-1',
    site: {
      exposure: 'B',
      soilClass: 'medium-sand',
      soilSaturated: false,
      lateralBearingDoubled: false,
      topographicFactor: 1,
      elevationM: 0,
      climate: { kind: 'measured', dryMonths: 0 },
      wind: { kind: 'map', basis: 'ultimate', returnPeriodYears: 300, second: null, hurricane: false },
      seasonWindow: { opens: '01-01', closes: '12-31', share: 1 },
    },
    run: { heightM: 1.8288, solidity: 1, ends: [{ kind: 'return' }, { kind: 'gate' }] },
    wood: {
      section: nominalSection('4x4'),
      species: 'southern-pine',
      incised: false,
    },
    installed: { earliest: '2014-05-03', latest: '2014-05-03' },
    ground: { embedmentM: 0.6096, footing: 'concrete' },
    trimmer: { guards: null, yearlyCutMm: 0 },
  });
  expect(first?.site.wind.speedMps).toBeCloseTo(105 * 0.44704, 10);
  expect(first?.posts).toEqual([
    {
      number: 3,
      positionM: null,
      installed: { earliest: '2020-04-01', latest: '2020-04-30' },
      wood: {
        section: nominalSection('6x6'),
        species: 'southern-pine',
        grade: 'no-2',
        incised: false,
        treatmentClass: 'heavy-duty',
        momentCapacityNm: null,
      },
      sharedRun: null,
    },
  ]);
  expect(first?.works.map(({ kind, ref }) => `${ref} ${kind}`)).toEqual([
    'W-1 groundline-treatment',
    'W-2 post-swap',
    'W-4 steel-sleeve',
  ]);
});

test('the facts hold inspections by day and ref, their readings by post, and storm outcomes by day and ref', async () => {
  const register = await seenRegister();
  const facts = await loadFenceFacts(register, ['F-2', 'F-1']);
  const first = facts.get('F-1');
  expect(first?.inspections.map(({ ref }) => ref)).toEqual(['F-1/2024-05-02/awl-or-probe', 'I-1', 'I-2']);
  const nothing = {
    cavityMm: null,
    leanDegrees: null,
    collarCracked: null,
    railConnection: null,
    trimmerCutMm: null,
    closedOff: false,
  };
  expect(first?.inspections[0]).toEqual({
    ref: 'F-1/2024-05-02/awl-or-probe',
    day: '2024-05-02',
    method: 'awl-or-probe',
    readings: [
      {
        post: 2,
        groundline: { kind: 'depth', depthMm: 6.35 },
        cavityMm: null,
        leanDegrees: 4,
        collarCracked: true,
        railConnection: 0.5,
        trimmerCutMm: 6.35,
        closedOff: false,
      },
      { ...nothing, post: 9, groundline: { kind: 'broken' }, closedOff: true },
      { ...nothing, post: 10, groundline: { kind: 'sound-to', depthMm: 3.048 } },
    ],
  });
  expect(first?.inspections[1]?.readings).toEqual([
    { ...nothing, post: 8, groundline: { kind: 'depth', depthMm: 7.3 }, cavityMm: 25.4 },
    { ...nothing, post: 9, groundline: { kind: 'soft-to', depthMm: 12 }, cavityMm: 0 },
  ]);
  expect(first?.inspections[2]?.readings).toEqual([
    { ...nothing, post: 6, groundline: { kind: 'residual-width', widthMm: 78.74 }, collarCracked: false },
  ]);
  const storm = { storm: 'March gale', day: '2025-03-14', gustMps: 31.73984, gustSpread: 0.1 };
  expect(first?.outcomes).toEqual([
    { ...storm, ref: 'O-1', posts: [3, 9], result: 'leaned' },
    { ...storm, ref: 'O-2', posts: 'all', result: 'stood' },
  ]);
  expect(facts.get('F-2')).toMatchObject({
    inspections: [{ ref: 'I-3', readings: [{ post: 8, groundline: null, leanDegrees: 2.5 }] }],
    outcomes: [{ ref: 'O-3', gustMps: 33.3, gustSpread: 0.125, posts: [2], result: 'snapped' }],
  });
});

test('who inspected and what was noted is kept out of the facts', async () => {
  const register = await seenRegister();
  const before = await loadFenceFacts(register, ['F-1']);
  const inspection = await readRecord(register.db, 'inspections', 'I-2');
  if (!inspection) throw new Error('I-2 is missing');
  await upsertRecords(register.db, 'inspections', [{ ...inspection, inspector: 'Someone', notes: 'else' }], NOW);
  expect(await loadFenceFacts(register, ['F-1'])).toEqual(before);
});

test('evidence goes with its fence', async () => {
  const { db } = await seenRegister();
  await db.deleteFrom('fences').where('ref', '=', 'F-2').execute();
  expect((await listRecords(db, 'inspections')).map(({ ref }) => ref)).toEqual([
    'F-1/2024-05-02/awl-or-probe',
    'I-1',
    'I-2',
  ]);
  expect(await listRecords(db, 'readings')).toHaveLength(6);
  expect((await listRecords(db, 'outcomes')).map(({ ref }) => ref)).toEqual(['O-1', 'O-2']);
});

test('a shared corner carries the run of the other fence, asked for or not', async () => {
  const register = await soundRegister();
  const corner = (await loadFenceFacts(register, ['F-2'])).get('F-2')?.posts[0];
  const other = (await loadFenceFacts(register, ['F-1'])).get('F-1');
  expect(corner?.sharedRun).toEqual({ fenceRef: 'F-1', run: other?.run, end: 0 });
});

test('irrigated ground counts as having at least 500 mm of rain', async () => {
  const register = await soundRegister();
  const zone = await readRecord(register.db, 'climate-zones', 'gulf');
  if (!zone) throw new Error('gulf is missing');
  const rainOf = async (rainMmPerYear: number): Promise<unknown> => {
    await upsertRecords(register.db, 'climate-zones', [{ ...zone, rainMmPerYear, irrigated: true }], NOW);
    return (await loadFenceFacts(register, ['F-1'])).get('F-1')?.site.climate;
  };
  expect(await rainOf(200)).toMatchObject({ rainMmPerYear: 500 });
  expect(await rainOf(900)).toMatchObject({ rainMmPerYear: 900 });
});

test('fences are walked over in the order of their refs, a page at a time', async () => {
  const register = await soundRegister();
  const fence = await readRecord(register.db, 'fences', 'F-1');
  if (!fence) throw new Error('F-1 is missing');
  const refs = ['b', 'B', 'F-10', 'a'];
  await upsertRecords(
    register.db,
    'fences',
    refs.map((ref) => ({ ...fence, ref })),
    NOW,
  );
  const walked: string[] = [];
  for (let page = await listFenceRefs(register, null, 2); page.length > 0; ) {
    walked.push(...page.map(({ ref }) => ref));
    page = await listFenceRefs(register, walked.at(-1) ?? null, 2);
  }
  expect(walked).toEqual(['B', 'F-1', 'F-10', 'F-2', 'a', 'b']);
  expect((await listFenceRefs(register, null, 1))[0]).toEqual({
    ref: 'B',
    timeZone: 'America/Chicago',
    seasonWindow: { opens: '01-01', closes: '12-31', share: 1 },
  });
});

test('the parties of a fence are its site and its owners, the first owner first', async () => {
  const register = await soundRegister();
  const fence = await readRecord(register.db, 'fences', 'F-2');
  if (!fence) throw new Error('F-2 is missing');
  await upsertRecords(register.db, 'fences', [{ ...fence, secondOwnerRef: 'oda' }], NOW);
  const parties = await loadFenceParties(register, ['F-2', 'F-1', 'nothing']);
  expect([...parties.keys()]).toEqual(['F-1', 'F-2']);
  expect(parties.get('F-2')?.owners.map(({ ref, channel }) => `${ref} ${channel}`)).toEqual(['hoa letter', 'oda mail']);
  expect(parties.get('F-2')?.site).toEqual({
    ref: 'quill',
    name: 'Quillback Commons',
    place: 'Quillback',
    region: 'Coast',
    units: 'us',
    timeZone: 'America/Chicago',
    windSource: 'invented map',
    seasonCloses: '12-31',
  });
});
