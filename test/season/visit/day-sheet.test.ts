import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { daySheet, daysOfWeek } from '../../../src/season/visit/day-sheet.ts';
import type { Visit } from '../../../src/season/visit/visit.ts';
import { SHIPPED_CATALOGUE } from '../../../src/season/works-catalogue.ts';
import { sheetSurroundings } from '../../../src/service/visit-surroundings.ts';
import { madeUpVisit, visitingRegister } from '../../service/visiting-register.ts';

describe('a day of a crew', () => {
  let sample: Awaited<ReturnType<typeof visitingRegister>>;
  beforeAll(async () => {
    sample = await visitingRegister();
  });
  afterAll(() => sample.remove());

  const sheet = async (visits: readonly Visit[], day = '2027-01-11') =>
    daySheet({
      crew: { ref: 'north', name: 'North crew', base: null },
      day,
      people: ['Orla Finch'],
      visits,
      ...(await sheetSurroundings(sample.register, visits)),
      catalogue: SHIPPED_CATALOGUE,
    });
  const [item] = madeUpVisit({ uid: 'x' }).items;

  it('has the visits of the day that are still gone to, or were', async () => {
    const states = ['proposed', 'confirmed', 'done', 'missed', 'cancelled'] as const;
    const { stops } = await sheet(states.map((state) => madeUpVisit({ uid: state, state })));
    expect(stops.map(({ uid }) => uid)).toEqual(['confirmed', 'done', 'proposed']);
    expect((await sheet([madeUpVisit({ uid: 'a' })], '2027-01-12')).stops).toEqual([]);
  });

  it('loads everything on the first day of a visit and nothing on the others, nor for what is done', async () => {
    const long = madeUpVisit({ uid: 'a', lastDay: '2027-01-13' });
    const first = await sheet([long]);
    expect(first.load.find(({ name }) => name === 'treated post, 10 ft')).toMatchObject({ toTake: 2 });
    expect(first.stops[0]).toMatchObject({ dayOfVisit: 1, daysOfVisit: 3 });
    const second = await sheet([long], '2027-01-12');
    expect(second.load).toEqual([]);
    expect(second.stops[0]).toMatchObject({ dayOfVisit: 2, daysOfVisit: 3 });
    expect((await sheet([{ ...long, state: 'done' }])).load).toEqual([]);
  });

  it('names each owner once, with the fences that are theirs', async () => {
    const visit = madeUpVisit({
      uid: 'a',
      items: ['PR-02', 'PR-03', 'PR-04'].map((fenceRef) => ({
        ...item!,
        fenceRef,
        works: [{ kind: 'inspect', posts: [1], postCount: 1 }],
      })),
    });
    const { stops } = await sheet([visit]);
    expect(stops[0]!.owners.map(({ name, fenceRefs }) => [name, fenceRefs])).toEqual([
      ['Pelican Reach Association', ['PR-02', 'PR-03']],
      ['Rosa Quinn', ['PR-04']],
    ]);
    expect(stops[0]!.fences.map(({ ref, posts }) => [ref, posts.length])).toEqual([
      ['PR-02', 11],
      ['PR-03', 11],
      ['PR-04', 11],
    ]);
  });

  it('warns of frozen ground only where and when it may be frozen', async () => {
    const visit = madeUpVisit({ uid: 'a' });
    const { sites, fences } = await sheetSurroundings(sample.register, [visit]);
    const kinds = (frozen: { opens: string; closes: string } | null) =>
      daySheet({
        crew: { ref: 'north', name: 'North crew', base: null },
        day: '2027-01-11',
        people: [],
        visits: [visit],
        sites: new Map([['PELICAN', { ...sites.get('PELICAN')!, frozen }]]),
        fences,
        catalogue: SHIPPED_CATALOGUE,
      }).stops[0]!.reminders.map(({ kind }) => kind);
    expect(kinds(null)).toEqual(['locate']);
    expect(kinds({ opens: '12-15', closes: '02-28' })).toEqual(['locate', 'frozen-ground']);
    expect(kinds({ opens: '02-01', closes: '02-28' })).toEqual(['locate']);
  });

  it('refuses a visit to a site that was not handed over', async () => {
    const inputs = {
      crew: { ref: 'n', name: 'N', base: null },
      day: '2027-01-11',
      people: [],
      visits: [madeUpVisit({ uid: 'a' })],
      catalogue: SHIPPED_CATALOGUE,
    };
    expect(() => daySheet({ ...inputs, sites: new Map(), fences: new Map() })).toThrow(/site PELICAN/);
  });
});

describe('the week of a day', () => {
  it('runs from Monday to Sunday, over the turn of a year', () => {
    const week = ['2026-12-28', '2026-12-29', '2026-12-30', '2026-12-31', '2027-01-01', '2027-01-02', '2027-01-03'];
    for (const day of week) expect(daysOfWeek(day)).toEqual(week);
  });
});
