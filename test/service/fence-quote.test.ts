import { DateTime } from 'luxon';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { upsertRecords } from '../../src/register/record-store.ts';
import { SHIPPED_CATALOGUE } from '../../src/season/works-catalogue.ts';
import { amountAt, worksCost } from '../../src/season/works-cost.ts';
import {
  type FenceQuoteRequest,
  type FenceQuoteResult,
  fenceQuote,
  type WantedWorks,
} from '../../src/service/fence-quote.ts';
import { SAMPLE_NOW, sampleRegister } from '../web/sample-register.ts';

describe('a quote for works at a fence', () => {
  let sample: Awaited<ReturnType<typeof sampleRegister>>;
  beforeAll(async () => {
    sample = await sampleRegister({ swept: false });
  });
  afterAll(() => sample.remove());

  const ask = (works: readonly WantedWorks[], change: Partial<FenceQuoteRequest> = {}): Promise<FenceQuoteResult> =>
    fenceQuote(sample.register, {
      fenceRef: 'PR-02',
      works,
      taxPercent: 0,
      validDays: 30,
      currency: 'USD',
      cautions: ['Call before you dig.'],
      now: SAMPLE_NOW,
      ...change,
    });
  const quotedFor = async (works: readonly WantedWorks[], change: Partial<FenceQuoteRequest> = {}) => {
    const result = await ask(works, change);
    if (result.kind !== 'quoted') throw new Error(JSON.stringify(result));
    return result;
  };
  const reasonOf = async (works: readonly WantedWorks[]): Promise<string> => {
    const result = await ask(works);
    return result.kind === 'refused' ? result.reason : result.kind;
  };

  it('adds up to what the works cost in one visit, with tax on top', async () => {
    const { quote, parts } = await quotedFor(
      [
        { kind: 'groundline-treatment', posts: 'all' },
        { kind: 'post-swap', posts: [7, 3, 4] },
      ],
      { taxPercent: 8.25 },
    );
    // The swap comes first, so that the treatment goes on the posts that are left.
    expect(parts).toEqual([
      { kind: 'post-swap', posts: [3, 4, 7], postCount: 3, leftOut: [] },
      { kind: 'groundline-treatment', posts: [1, 2, 5, 6, 8, 9, 10, 11], postCount: 8, leftOut: [] },
    ]);
    expect(quote.lines.map(({ what, quantity, amount }) => [what, quantity, amount])).toEqual([
      ['post swap, posts 3–4, 7', 3, 55_500],
      ['groundline treatment, posts 1–2, 5–6, 8–11', 8, 30_400],
      ['getting there and setting up', 1, 15_000],
    ]);
    expect(quote.subtotal / 100).toBe(worksCost(parts, SHIPPED_CATALOGUE).price);
    expect([quote.tax, quote.total]).toEqual([8324, 109_224]);
    expect(quote).toMatchObject({
      owner: 'Pelican Reach Association',
      site: 'Pelican Reach, Bayou Vista, Texas',
      fenceRefs: ['PR-02'],
      issued: '2026-11-24',
      validUntil: '2026-12-24',
    });
  });

  it('says what has to be kept, then the cautions', async () => {
    const { quote } = await quotedFor([{ kind: 'rebuild', posts: 'all' }]);
    expect(quote.cautions).toEqual([
      'A permit may be needed: it is asked for before the works begin.',
      "Buried utilities are marked first: 3 days' notice before digging.",
      'Not done while the ground is frozen.',
      'New footings need 7 days before they have to hold a storm.',
      'Call before you dig.',
    ]);
    const inspection = await quotedFor([{ kind: 'inspect', posts: [2, 1] }]);
    expect(inspection.quote.cautions).toEqual(['Call before you dig.']);
    expect(inspection.quote.lines[0]).toMatchObject({ what: 'inspection, posts 1–2', amount: 1200 });
    const { quote: added } = await quotedFor([{ kind: 'added-posts', posts: 'all' }]);
    expect(added.lines[0]).toMatchObject({ what: 'added posts', quantity: 10 });
  });

  it('has the same number for the same quote, and another for another', async () => {
    const swap = [{ kind: 'post-swap', posts: [3] }] as const;
    const number = async (works: readonly WantedWorks[], change: Partial<FenceQuoteRequest> = {}): Promise<string> =>
      (await quotedFor(works, change)).quote.number;
    const first = await number(swap);
    expect(first).toMatch(/^Q-20261124-[0-9A-F]{8}$/);
    expect(await number(swap)).toBe(first);
    const tomorrow = () => DateTime.fromISO('2026-11-25T12:00:00Z', { zone: 'utc' });
    const others = await Promise.all([
      number(swap, { fenceRef: 'PR-03' }),
      number([{ kind: 'post-swap', posts: [4] }]),
      number([{ kind: 'steel-sleeve', posts: [3] }]),
      number(swap, { taxPercent: 1 }),
      number(swap, { validDays: 10 }),
      number(swap, { now: tomorrow }),
    ]);
    expect(new Set([first, ...others]).size).toBe(7);
  });

  it('is issued on the day it is at the site', async () => {
    const late = () => DateTime.fromISO('2026-11-25T03:00:00Z', { zone: 'utc' });
    const { quote } = await quotedFor([{ kind: 'inspect', posts: 'all' }], { now: late, validDays: 0 });
    expect(quote).toMatchObject({ issued: '2026-11-24', validUntil: '2026-11-24' });
  });

  it('tells which prices the office has not set', async () => {
    const shipped = SHIPPED_CATALOGUE.inspect;
    expect((await quotedFor([{ kind: 'inspect', posts: 'all' }])).shippedPrices).toEqual(['inspect']);
    await upsertRecords(
      sample.register.db,
      'catalogue',
      [
        {
          kind: 'inspect',
          personHoursFixed: shipped.personHours.fixed,
          personHoursPerPost: shipped.personHours.perPost,
          priceFixed: 75.5,
          pricePerPost: 7.25,
          ...shipped.rules,
          ...shipped.build,
          source: 'price list of the office for these tests',
        },
      ],
      '2026-11-24T12:00:00.000Z',
    );
    const { quote, shippedPrices } = await quotedFor([{ kind: 'inspect', posts: 'all' }]);
    await sample.register.db.deleteFrom('catalogue_lines').execute();
    expect(shippedPrices).toEqual([]);
    expect(quote.subtotal / 100).toBe(amountAt({ fixed: 75.5, perPost: 7.25 }, 11));
  });

  it('says at which posts the works do nothing', async () => {
    const { parts } = await quotedFor([
      { kind: 'post-swap', posts: [3] },
      { kind: 'groundline-treatment', posts: [2, 3] },
    ]);
    expect(parts[1]).toEqual({ kind: 'groundline-treatment', posts: [2], postCount: 1, leftOut: [3] });
  });

  it('is refused where works do not go together or make no sense', async () => {
    expect(await reasonOf([{ kind: 'drainage', posts: 'all' }])).toMatch(/no drainage: the soil/);
    expect(await reasonOf([{ kind: 'post-swap', posts: [12, 13, 99] }])).toBe(
      'the fence has no post 12–13, 99; its posts are 1–11',
    );
    expect(await reasonOf([{ kind: 'inspect', posts: [12] }])).toMatch(/no post 12/);
    expect(await reasonOf([{ kind: 'rebuild', posts: [3] }])).toMatch(/always done to the whole fence/);
    const all = (...kinds: readonly WantedWorks['kind'][]): readonly WantedWorks[] =>
      kinds.map((kind) => ({ kind, posts: 'all' }));
    expect(await reasonOf(all('inspect', 'inspect'))).toBe('inspect is asked for twice');
    expect(await reasonOf(all('post-swap', 'rebuild'))).toMatch(/none left to swap/);
    expect(await ask(all('inspect'), { fenceRef: 'PR-2' })).toEqual({ kind: 'no such fence', nearest: 'PR-02' });
  });
});
