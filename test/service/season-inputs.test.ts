import fc from 'fast-check';
import { DateTime } from 'luxon';
import { describe, expect, it } from 'vitest';
import { listRecords, upsertRecords } from '../../src/register/record-store.ts';
import { roundTripHours } from '../../src/season/travel.ts';
import { SHIPPED_CATALOGUE } from '../../src/season/works-catalogue.ts';
import { type KeptVisits, mondayFrom, planCrews, seasonFences } from '../../src/service/season-inputs.ts';
import { type CrewInRegister, loadCrews } from '../../src/service/season-register.ts';
import { addDays } from '../../src/units/calendar-day.ts';
import { importFiles, SEASON_FILES, soundRegister } from '../register/made-up-register.ts';
import { at, changeFences, fenceRegister, type RegisterPlan } from './fence-register.ts';

const WRITTEN = '2027-01-15T00:00:00.000Z';
const NOTHING_KEPT: KeptVisits = new Map();

describe('the first Monday on or after a day', () => {
  it('is the day itself where that is a Monday', () => {
    expect(mondayFrom('2027-01-04')).toBe('2027-01-04');
    expect(mondayFrom('2027-01-05')).toBe('2027-01-11');
    expect(mondayFrom('2027-01-10')).toBe('2027-01-11');
    expect(mondayFrom('2026-12-29')).toBe('2027-01-04');
  });

  it('is a Monday within a week, on every day from 1970 on', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 60_000 }), (days) => {
        const day = addDays('1970-01-01', days);
        const monday = mondayFrom(day);
        expect(DateTime.fromISO(monday, { zone: 'utc' }).weekday).toBe(1);
        expect([0, 1, 2, 3, 4, 5, 6].map((past) => addDays(day, past))).toContain(monday);
      }),
      { numRuns: 300, seed: 31 },
    );
  });
});

const member = (ref: string, parts: Partial<CrewInRegister['times']['members'][number]> = {}) => ({
  ref,
  hoursPerWeek: 40,
  skills: [],
  languages: ['en'],
  fromDay: null,
  toDay: null,
  ...parts,
});
const crewOf = (
  members: readonly ReturnType<typeof member>[],
  parts: Partial<CrewInRegister> = {},
): CrewInRegister => ({
  ref: 'salt',
  name: 'Salt crew',
  base: { latitude: 31, longitude: -81 },
  speedMps: 15,
  times: { members, daysOff: [], weatherReserve: 0.25 },
  ...parts,
});
const WEEKS = ['2027-03-01', '2027-03-08'];

describe('crews as the plan sees them', () => {
  const siteAt = async (site: NonNullable<RegisterPlan['site']>) => {
    const register = await fenceRegister({ fences: [], site: { latitude: 31.2, longitude: -81, ...site } });
    return listRecords(register.db, 'sites');
  };

  it('have the hours of their people week by week, less what is kept for weather', async () => {
    const crew = crewOf([member('fox'), member('reyes', { hoursPerWeek: 20, fromDay: '2027-03-08' })]);
    const [planned] = planCrews([crew], await siteAt({}), WEEKS);
    expect(planned!.personHoursByWeek[0]).toBeCloseTo(40 * 0.75, 9);
    expect(planned!.personHoursByWeek[1]).toBeCloseTo(60 * 0.75, 9);
  });

  it('have the skills and languages of those who are there in these weeks, each once and in order', async () => {
    const crew = crewOf([
      member('fox', { skills: ['inspector', 'licensed-applicator'], languages: ['es', 'en'] }),
      member('reyes', { skills: ['digging', 'inspector'] }),
      member('gone', { skills: ['welding'], languages: ['fr'], toDay: '2027-02-26' }),
    ]);
    const [planned] = planCrews([crew], await siteAt({}), WEEKS);
    expect(planned).toMatchObject({
      ref: 'salt',
      skills: ['digging', 'inspector', 'licensed-applicator'],
      languages: ['en', 'es'],
    });
  });

  it('go to every site and back, all of them, at what an hour on the road costs', async () => {
    const sites = await siteAt({});
    const [planned] = planCrews([crewOf([member('fox'), member('reyes')])], sites, WEEKS);
    // a fifth of a degree of latitude is 22.24 km; there and back at 15 m/s that is 0.8237 h, for two 1.647 h, at 45 an hour
    expect(planned!.travel.map(({ siteRef }) => siteRef)).toEqual(['HERON']);
    const { personHours, cost } = planned!.travel[0]!;
    expect(personHours).toBeCloseTo(1.647, 3);
    expect(cost).toBeCloseTo(74.13, 1);
    const alone = 2 * roundTripHours({ latitude: 31, longitude: -81 }, { latitude: 31.2, longitude: -81 }, 15);
    expect(personHours).toBe(alone);
  });

  it('lose no hours on a way whose beginning or end nobody knows, and go with one person where none is there', async () => {
    const nowhere = await siteAt({ latitude: null, longitude: null });
    const free = [{ siteRef: 'HERON', personHours: 0, cost: 0 }];
    expect(planCrews([crewOf([member('fox')])], nowhere, WEEKS)[0]!.travel).toEqual(free);
    const known = await siteAt({});
    expect(planCrews([crewOf([member('fox')], { base: null })], known, WEEKS)[0]!.travel).toEqual(free);
    const [empty] = planCrews([crewOf([])], known, WEEKS);
    expect(empty).toMatchObject({ personHoursByWeek: [0, 0], skills: [] });
    expect(empty!.travel[0]!.personHours).toBeCloseTo(1.647 / 2, 3);
  });

  it('come out of a register with their people and days off', async () => {
    const register = await soundRegister();
    await importFiles(register, SEASON_FILES);
    const crews = planCrews(await loadCrews(register.db), [], ['2027-05-03', '2027-05-10']);
    expect(crews.map(({ ref }) => ref)).toEqual(['reed', 'salt']);
    // Fox is at a course from 3 to 7 May; Reyes has 32 hours, a fifth of them kept for weather
    expect(crews[0]!.personHoursByWeek).toEqual([0, 0]);
    expect(crews[1]!.personHoursByWeek[0]).toBeCloseTo(32 * 0.8, 9);
    expect(crews[1]!.personHoursByWeek[1]).toBeCloseTo(72 * 0.8, 9);
    expect(crews[1]!.skills).toEqual(['inspector', 'licensed-applicator']);
  });
});

const partsAt = (iso: string, parts: Partial<Parameters<typeof seasonFences>[1]> = {}) => ({
  now: () => at(iso),
  catalogue: SHIPPED_CATALOGUE,
  kept: NOTHING_KEPT,
  onProgress: () => undefined,
  ...parts,
});
const INSPECTION = {
  ref: 'I-1',
  fenceRef: 'F-001',
  day: '2026-10-02',
  inspector: 'Nell Fox',
  qualification: '',
  method: 'eye',
  instrument: '',
  notes: '',
} as const;
const READING = {
  inspectionRef: 'I-1',
  post: 3,
  groundlineKind: null,
  groundlineMm: null,
  cavityMm: null,
  leanDegrees: null,
  collarCracked: null,
  railConnection: null,
  trimmerCutMm: null,
  closedOff: false,
  sure: false,
  notes: '',
} as const;

describe('fences as the season plan sees them', () => {
  it('are all there in the order of their refs, with site, region, consequence and the season ahead', async () => {
    const register = await fenceRegister({ fences: [{ ref: 'F-001', consequence: 'pool-barrier' }, { ref: 'F-000' }] });
    const seen: (readonly [number, number])[] = [];
    const onProgress = (done: number, total: number): void => {
      seen.push([done, total]);
    };
    const { fences, sites, unseen } = await seasonFences(register, partsAt('2027-01-15T12:00:00Z', { onProgress }));
    expect(fences.map(({ candidates }) => candidates.fenceRef)).toEqual(['F-000', 'F-001']);
    expect(fences.map(({ consequence }) => consequence)).toEqual(['ordinary', 'pool-barrier']);
    expect(fences[0]).toMatchObject({
      siteRef: 'HERON',
      region: 'coast',
      calendar: { today: '2027-01-15', opensOn: '2027-06-01', frozen: null },
      season: { opensOn: '2027-06-01', closesOn: '2027-11-30', allYear: false },
      dangerPosts: [],
      promised: null,
      previous: null,
    });
    expect(fences[1]!.candidates.terms.snapLoss).toBeGreaterThan(fences[0]!.candidates.terms.snapLoss);
    expect(sites.map(({ ref }) => ref)).toEqual(['HERON']);
    expect(unseen).toEqual([]);
    expect(seen).toEqual([
      [1, 2],
      [2, 2],
    ]);
  });

  it('are seen on the day it is at their site, and weighed by the season that runs there', async () => {
    const register = await fenceRegister({ fences: [{}] });
    // in Georgia it is still the evening of 31 May
    const eve = (await seasonFences(register, partsAt('2027-06-01T03:30:00Z'))).fences[0]!;
    expect(eve.calendar).toMatchObject({ today: '2027-05-31', opensOn: '2027-06-01' });
    const opened = (await seasonFences(register, partsAt('2027-06-01T04:30:00Z'))).fences[0]!;
    expect(opened.calendar).toMatchObject({ today: '2027-06-01', opensOn: '2028-06-01' });
    expect(opened.season.opensOn).toBe('2027-06-01');
    const late = (await seasonFences(register, partsAt('2027-11-25T12:00:00Z'))).fences[0]!;
    expect(late.season.opensOn).toBe('2028-06-01');
  });

  it('have the frozen ground of their site', async () => {
    const frozen = await fenceRegister({ fences: [{}], site: { frozenFrom: '12-01', frozenTo: '02-28' } });
    const { fences } = await seasonFences(frozen, partsAt('2027-01-15T12:00:00Z'));
    expect(fences[0]!.calendar.frozen).toEqual({ opens: '12-01', closes: '02-28' });
  });

  it('name the posts that are broken, lean or are closed off, in order', async () => {
    const register = await fenceRegister({ fences: [{ ref: 'F-000' }, { ref: 'F-001' }] });
    await upsertRecords(register.db, 'inspections', [INSPECTION], WRITTEN);
    const readings = [
      { ...READING, post: 9, groundlineKind: 'broken' as const },
      { ...READING, post: 4, leanDegrees: 20, closedOff: true },
      { ...READING, post: 6, closedOff: true },
      { ...READING, post: 2, leanDegrees: 5 },
    ];
    await upsertRecords(register.db, 'readings', readings, WRITTEN);
    const { fences } = await seasonFences(register, partsAt('2027-01-15T12:00:00Z'));
    expect(fences.map(({ dangerPosts }) => dangerPosts)).toEqual([[], [4, 6, 9]]);
    // something can be done that leaves none of them dangerous, without setting the whole fence anew
    const mending = fences[1]!.candidates.candidates.filter(
      (each) => each.kind === 'works' && [4, 6, 9].every((post) => each.mends.includes(post)),
    );
    expect(mending.map(({ key }) => key)).toContain('post-swap at 6 9 + footing-reset at 4');
  });

  it('keep what was promised and planned, by fence', async () => {
    const register = await fenceRegister({ fences: [{ ref: 'F-000' }, { ref: 'F-001' }] });
    const promised = { week: '2027-03-01', crewRef: 'salt', optionKey: null };
    const previous = { week: '2027-03-08', crewRef: 'salt', optionKey: 'rebuild' };
    const kept = new Map([['F-001', { promised, previous }]]);
    const { fences } = await seasonFences(register, partsAt('2027-01-15T12:00:00Z', { kept }));
    expect(fences[0]).toMatchObject({ promised: null, previous: null });
    expect(fences[1]).toMatchObject({ promised, previous });
  });

  it('are left out with the reason where they cannot be looked at, and the others stay', async () => {
    const register = await fenceRegister({ fences: [{ ref: 'F-000' }, { ref: 'F-002' }] });
    const [site] = await listRecords(register.db, 'sites');
    await upsertRecords(
      register.db,
      'sites',
      [{ ...site!, ref: 'ICE', frozenFrom: '01-01', frozenTo: '12-31' }],
      WRITTEN,
    );
    await changeFences(register, [{ ref: 'F-001', siteRef: 'ICE' }]);
    const { fences, unseen } = await seasonFences(register, partsAt('2027-01-15T12:00:00Z'));
    expect(fences.map(({ candidates }) => candidates.fenceRef)).toEqual(['F-000', 'F-002']);
    expect(unseen.map(({ ref }) => ref)).toEqual(['F-001']);
    expect(unseen[0]!.message).toMatch(/frozen all year; give the first and last/);
  });

  it('are passed over where the caller leaves them out, and still counted as done', async () => {
    const register = await fenceRegister({ fences: [{ ref: 'F-000' }, { ref: 'F-001' }] });
    let last = 0;
    const { fences, unseen } = await seasonFences(
      register,
      partsAt('2027-01-15T12:00:00Z', {
        leaveOut: new Set(['F-000']),
        onProgress: (done) => {
          last = done;
        },
      }),
    );
    expect(fences.map(({ candidates }) => candidates.fenceRef)).toEqual(['F-001']);
    expect(unseen).toEqual([]);
    expect(last).toBe(2);
  });

  it('are none in an empty register', async () => {
    const register = await fenceRegister({ fences: [] });
    expect((await seasonFences(register, partsAt('2027-01-15T12:00:00Z'))).fences).toEqual([]);
  });
});
