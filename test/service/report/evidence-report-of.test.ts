import fc from 'fast-check';
import { afterEach, describe, expect, it } from 'vitest';
import { climateBand } from '../../../src/decay/climate-band.ts';
import { reportBody } from '../../../src/drawing/report/report-html.ts';
import { forecastFence } from '../../../src/forecast/forecast-fence.ts';
import { seasonOneYear } from '../../../src/forecast/season-calendar.ts';
import { withdrawInspection } from '../../../src/register/evidence-withdrawal.ts';
import { loadFenceFacts } from '../../../src/register/fence-facts-store.ts';
import { acceptLearned, learnedInForceAt } from '../../../src/register/learned-store.ts';
import { readSettings } from '../../../src/register/settings-store.ts';
import { evidenceReportOf } from '../../../src/service/report/evidence-report-of.ts';
import { type LoadedFence, loadReportedFence } from '../../../src/service/report/load-reported-fence.ts';
import type { ReportParts } from '../../../src/service/report/report-result.ts';
import { forecastSettingsOf } from '../../../src/service/run-sweep.ts';
import { htmlText } from '../../pdf-reader.ts';
import { SAMPLE_NOW, sampleRegister } from '../../web/sample-register.ts';
import { enterSeen, inspectionOn, readingOf, type SeenRecords, stoodOn, treatedOn } from './reported-register.ts';

const REF = 'PR-03';
const ENTERED = '2026-11-24T12:00:00.000Z';

const containing = (text: string): unknown => expect.stringContaining(text);

let removals: (() => Promise<void>)[] = [];
afterEach(async () => {
  for (const remove of removals) await remove();
  removals = [];
});

async function registerWith(seen: SeenRecords): Promise<ReportParts> {
  const { register, remove } = await sampleRegister({ swept: false });
  removals.push(remove);
  await enterSeen(register, seen, ENTERED);
  return { register, now: SAMPLE_NOW, officeName: null };
}

const believed = async (parts: ReportParts, on: string | null): Promise<LoadedFence> => {
  const loaded = await loadReportedFence(parts, REF, on);
  if (loaded.kind !== 'fence') throw new Error(JSON.stringify(loaded));
  return loaded;
};

/** A few records about the fence, each on a day of its own. */
function recordsOn(
  days: readonly { readonly day: string; readonly what: 'read' | 'stood' | 'treated'; readonly size: number }[],
): SeenRecords {
  const of = (what: string) => days.filter((each) => each.what === what);
  return {
    inspections: of('read').map(({ day }) => inspectionOn(REF, day)),
    readings: of('read').map(({ day, size }) => readingOf(`I-${REF}-${day}`, 3, size * 2)),
    outcomes: of('stood').map(({ day, size }) => stoodOn(REF, day, 25 + 2 * size)),
    works: of('treated').map(({ day }) => treatedOn(REF, day)),
  };
}

const until = (seen: SeenRecords, on: string): SeenRecords => {
  const inspections = seen.inspections.filter(({ day }) => day <= on);
  const kept = new Set(inspections.map(({ ref }) => ref));
  return {
    inspections,
    readings: seen.readings.filter(({ inspectionRef }) => kept.has(inspectionRef)),
    outcomes: seen.outcomes.filter(({ day }) => day <= on),
    works: seen.works.filter(({ day }) => day <= on),
  };
};

const dayOf = (index: number): string =>
  `20${19 + Math.floor(index / 12)}-${String(1 + (index % 12)).padStart(2, '0')}-15`;
const someDay = fc.integer({ min: 0, max: 86 }).map(dayOf);

describe('what is believed of a fence on a past day', () => {
  it('is what a register without the later records gives, to the byte, whatever was seen before and after', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.uniqueArray(
          fc.record({
            day: someDay,
            what: fc.constantFrom('read' as const, 'stood' as const, 'treated' as const),
            size: fc.integer({ min: 1, max: 5 }),
          }),
          { minLength: 1, maxLength: 5, selector: ({ day }) => day },
        ),
        someDay,
        async (days, on) => {
          const all = recordsOn(days);
          const [full, early] = [await registerWith(all), await registerWith(until(all, on))];
          const then = await believed(full, on);
          // the oracle: the other register's own facts, forecast as the sweep would on that day
          const facts = (await loadFenceFacts(early.register, [REF])).get(REF)!;
          const settings = forecastSettingsOf(await readSettings(early.register.db));
          const oracle = forecastFence(facts, seasonOneYear(facts.site.seasonWindow, on), settings);
          expect(JSON.stringify(then.fence.forecast)).toBe(JSON.stringify(oracle));
          const without = await believed(early, on);
          expect(then.fence.inputHash).toBe(without.fence.inputHash);
          expect(then.fence.inspections.map(({ day }) => day)).toEqual(
            until(all, on)
              .inspections.map(({ day }) => day)
              .sort(),
          );
        },
      ),
      { numRuns: 12, seed: 20261126 },
    );
  }, 120_000);

  it('differs from today’s where something was read since', async () => {
    const parts = await registerWith(recordsOn([{ day: '2025-05-15', what: 'read', size: 5 }]));
    const [then, now] = [await believed(parts, '2025-05-14'), await believed(parts, '2025-05-15')];
    expect(then.fence.inspections).toEqual([]);
    expect(now.fence.inspections).toHaveLength(1);
    expect(then.fence.inputHash).not.toBe(now.fence.inputHash);
    expect(then.fence.forecast.evidence).toBeNull();
    expect(now.fence.forecast.evidence).not.toBeNull();
  });

  it('does not know what the register learned later', async () => {
    const parts = await registerWith(recordsOn([]));
    const { register } = parts;
    const { site } = (await loadFenceFacts(register, [REF])).get(REF)!;
    const value = {
      kind: 'pace',
      key: 'pace of the sample',
      treatmentClass: 'above-ground-stock',
      climateBand: climateBand(site.climate),
      logShift: 0.4,
      low: 0.2,
      high: 0.6,
      spread: 0.3,
      fences: 9,
      seen: 40,
    } as const;
    await acceptLearned(register, { at: '2026-03-01T10:00:00.000Z', by: 'office', note: '' }, [value]);
    expect((await believed(parts, null)).fence.facts.learned).not.toBeNull();
    expect((await believed(parts, '2026-02-28')).fence.facts.learned).toBeNull();
    expect(await learnedInForceAt(register.db, '2026-02-28T23:59:59.999Z')).toBeNull();
  });

  it('is refused before the fence was built and for a day that has not come', async () => {
    const parts = await registerWith(recordsOn([]));
    expect(await loadReportedFence(parts, REF, '2018-03-19')).toMatchObject({
      kind: 'refused',
      reason: containing('not built before 2018-03-20'),
    });
    expect(await loadReportedFence(parts, REF, '2026-11-25')).toMatchObject({
      kind: 'refused',
      reason: containing('has not come yet'),
    });
    expect(await loadReportedFence(parts, 'PR-33', null)).toEqual({
      kind: 'not found',
      what: 'fence "PR-33"',
      nearest: 'PR-03',
    });
  });
});

describe('the evidence file', () => {
  const SEEN = recordsOn([
    { day: '2024-05-15', what: 'read', size: 2 },
    { day: '2025-05-15', what: 'stood', size: 3 },
    { day: '2025-08-15', what: 'treated', size: 1 },
    { day: '2026-05-15', what: 'read', size: 4 },
  ]);
  const textOf = async (parts: ReportParts, on: string | null, language: 'en' | 'es' = 'en'): Promise<string> => {
    const result = await evidenceReportOf(parts, { ref: REF, on, language, currency: 'USD' });
    if (result.kind !== 'report') throw new Error(JSON.stringify(result));
    return htmlText(reportBody(result.report));
  };

  it('has who looked, with what, storms, works, the price of a rebuild, model and hash', async () => {
    const parts = await registerWith(SEEN);
    const text = await textOf(parts, null);
    for (const said of [
      'licensed wood inspector, No. 4711',
      'drill resistance',
      'resistance drill RD-2, calibrated 2026-01-04',
      'post 3: 0.31 in of rot on each face',
      'storm of 2025-05-15, gust 69 mph ± 10 %',
      'groundline treatment, the whole fence',
      'Rebuilding it in good time',
      '5,020 USD',
      'As believed on November 24, 2026',
      'Model 2026.11',
      (await believed(parts, null)).fence.inputHash,
      'Made 2026-11-24 06:00 CST; its days are those of America/Chicago, the time zone of the site.',
      'not a structural certification',
    ]) {
      expect(text).toContain(said);
    }
    expect(text).not.toContain('OFFICE NOTE');
    expect(text).not.toContain('board@pelican');
  });

  it('of a past day leaves out what came later, and says what it means', async () => {
    const parts = await registerWith(SEEN);
    const text = await textOf(parts, '2025-06-30');
    expect(text).toContain(
      'As believed on June 30, 2025: only what had been observed or done by the end of that day counts',
    );
    expect(text).toContain('It is not what was printed on that day.');
    expect(text).toContain('2 records observed by then came into the register only later');
    expect(text).toContain('data as of 2025-06-30');
    expect(text).toContain('2024-05-15');
    expect(text).not.toContain('2026-05-15');
    expect(text).not.toContain('groundline treatment, the whole fence');
  });

  it('says how much of that time was withdrawn since', async () => {
    const parts = await registerWith(SEEN);
    await withdrawInspection(parts.register, `I-${REF}-2024-05-15`, {
      because: 'wrong fence',
      by: 'office',
      at: ENTERED,
    });
    const text = await textOf(parts, '2025-06-30', 'es');
    expect(text).toContain(
      'Una inspección o un informe de tormenta de aquel tiempo se retiró desde entonces y no cuenta.',
    );
    expect(text).toContain('No consta ninguna inspección.');
  });
});
