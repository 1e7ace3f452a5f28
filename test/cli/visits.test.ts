import { DateTime } from 'luxon';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Visit } from '../../src/season/visit/visit.ts';
import { visitingRegister } from '../service/visiting-register.ts';
import { type CommandEnd, command } from './command-line.ts';

/** Short, and the plan has a post added in each of its bays. */
const MENDED = 'PR-03';

interface Listed {
  readonly standing: string;
  readonly snapMps: number;
}

describe('visits from the plan to the sweep', () => {
  let sample: Awaited<ReturnType<typeof visitingRegister>>;
  let day = '2026-11-24';
  beforeAll(async () => {
    sample = await visitingRegister();
  });
  afterAll(() => sample.remove());
  const run = (...args: readonly string[]): Promise<CommandEnd> =>
    command(sample.folder, args, { clock: () => DateTime.fromISO(`${day}T18:00:00Z`, { zone: 'utc' }) });
  const good = async (...args: readonly string[]): Promise<string> => {
    const { code, out, err } = await run(...args);
    expect({ code, err }, args.join(' ')).toEqual({ code: 0, err: '' });
    return out;
  };
  const visits = async (...args: readonly string[]): Promise<readonly Visit[]> =>
    JSON.parse(await good('visit', 'list', '--json', ...args)) as readonly Visit[];
  const forecastOf = (ref: string): Promise<Listed> => {
    const { db } = sample.register;
    return db
      .selectFrom('forecasts')
      .select(['standing', 'snap_mps as snapMps'])
      .where('fence_ref', '=', ref)
      .executeTakeFirstOrThrow();
  };

  it('says what to do where nothing was planned yet', async () => {
    expect(await good('plan', 'list')).toBe('No season plan has been made yet: stormpale plan\n');
    expect(await run('plan', 'show')).toMatchObject({
      code: 4,
      err: expect.stringContaining('"stormpale plan"') as string,
    });
    expect(await run('plan', 'accept', '3')).toMatchObject({ code: 4 });
    expect(await good('visit', 'list')).toMatch(/^No such visits/);
    expect(await run('visit', 'show', 'V1')).toMatchObject({ code: 4 });
  });

  it('stores the plan it made, but not one that is only to be seen', async () => {
    await good('sweep');
    expect(await good('plan', '--weeks', '8', '--dry-run')).toMatch(/Nothing was stored: this was a dry run\./);
    expect(await good('plan', 'list')).toMatch(/^No season plan/);
    expect(await good('plan', '--weeks', '8')).toMatch(
      /Stored as plan 1\. To propose its visits: stormpale plan accept 1/,
    );
    expect(await good('plan', 'list')).toMatch(/\n +1 +2026-11-24 +2026-11-30 +8 +\d+ +not accepted\n/);
    expect(await good('plan', 'show')).toMatch(/^Season plan 1, made 2026-11-24 .*not accepted\n/);
    expect(await visits('--state', 'all')).toEqual([]);
  });

  it('proposes the visits of a plan that is accepted, once', async () => {
    expect(await good('plan', 'accept', '1', '--by', 'Nell')).toMatch(/^Plan 1 is accepted: 0 visits kept/);
    const proposed = await visits();
    expect(proposed.length).toBeGreaterThan(1);
    for (const visit of proposed) expect(visit).toMatchObject({ state: 'proposed', sequence: 0, planId: 1 });
    const early = await run('visit', 'miss', proposed[0]!.uid, '--because', 'rain');
    expect(early).toMatchObject({ code: 3, err: expect.stringMatching(/still to come/) as string });
    expect(await run('plan', 'accept', '1')).toMatchObject({
      code: 3,
      err: expect.stringMatching(/^plan 1 was accepted 2026-11-24/) as string,
    });
  });

  it('promises a day, unless the crew stays at home then, and no later plan moves it', async () => {
    const visit = (await visits()).find(({ items }) => items.some(({ fenceRef }) => fenceRef === MENDED))!;
    const saturday = await run('visit', 'confirm', visit.uid, '--day', '2026-12-05');
    expect(saturday).toMatchObject({ code: 3, err: expect.stringMatching(/does not go out on 2026-12-05/) as string });
    expect(await run('visit', 'confirm', visit.uid, '--day', '2026-11-20')).toMatchObject({
      code: 3,
      err: expect.stringMatching(/2026-11-20 is past/) as string,
    });
    await good('visit', 'confirm', visit.uid, '--day', '2026-12-02', '--at', '08:30', '--by', 'Nell');
    const [confirmed] = await visits('--state', 'confirmed');
    expect(confirmed).toMatchObject({ uid: visit.uid, firstDay: '2026-12-02', startsAt: '08:30', sequence: 1 });
    const text = await good('plan', '--weeks', '8');
    expect(text).toMatch(new RegExp(`${visit.items.length} fences? on promised dates`));
    await good('plan', 'accept', '2');
    expect(await visits('--state', 'confirmed')).toEqual([confirmed]);
    const open = (await visits()).flatMap(({ items }) => items.map(({ fenceRef }) => fenceRef));
    expect(new Set(open).size).toBe(open.length);
  });

  it('enters what was done, and the next sweep shows what it is good for', async () => {
    const [visit] = await visits('--state', 'confirmed');
    const { uid } = visit!;
    const fenceRef = MENDED;
    expect(await run('visit', 'done', uid, '--day', '2026-12-02', '--only', fenceRef)).toMatchObject({
      code: 3,
      err: expect.stringMatching(/2026-12-02 is still to come/) as string,
    });
    day = '2026-12-02';
    await good('sweep');
    const before = await forecastOf(fenceRef);
    expect(before.standing).toMatch(/^short/);
    const hours = visit!.items.find((each) => each.fenceRef === fenceRef)!.personHours * 1.5;
    const out = await good('visit', 'done', uid, '--day', day, '--only', fenceRef, '--hours', `${fenceRef}=${hours}`);
    expect(out).toContain(`works ${uid}.001`);
    expect(await run('visit', 'done', uid, '--day', day)).toMatchObject({
      code: 3,
      err: expect.stringMatching(/done already/) as string,
    });
    expect(await good('sweep')).toMatch(/^1 forecast/);
    const after = await forecastOf(fenceRef);
    expect(after.snapMps).toBeGreaterThan(before.snapMps * 1.1);
    expect(after.standing).toBe('clear');
    const shown = await good('visit', 'show', uid);
    expect(shown).toMatch(new RegExp(`${fenceRef} +added posts, 10 more.*works ${uid}\\.001`));
    expect(shown).toMatch(/proposed, .*\n.*confirmed, .*by Nell\n.*done, /);
  });

  it('gives the fences of visits that came to nothing back to the plan, and plans with the hours that were used', async () => {
    const proposed = await visits('--state', 'proposed');
    const missed = proposed[0]!;
    expect(missed.firstDay <= day).toBe(true);
    await good('visit', 'miss', missed.uid, '--because', 'rain', '--by', 'Orla');
    const { uid, items } = proposed.at(-1)!;
    await good('visit', 'cancel', uid, '--because', 'the owner is away');
    expect(await run('visit', 'confirm', uid, '--day', '2026-12-10')).toMatchObject({
      code: 3,
      err: expect.stringMatching(/it is cancelled, and its fences are back in the plan/) as string,
    });
    const made = JSON.parse(await good('plan', '--weeks', '8', '--json')) as {
      readonly hours: readonly { readonly kind: string; readonly factor: number; readonly visits: number }[];
      readonly visits: readonly { readonly items: readonly { readonly jobRef: string }[] }[];
      readonly unserved: readonly { readonly jobRef: string }[];
    };
    expect(made.hours).toMatchObject([{ kind: 'added-posts', visits: 1 }]);
    expect(made.hours[0]!.factor).toBeGreaterThan(1.05);
    const seen = [...made.visits.flatMap(({ items }) => items), ...made.unserved].map(({ jobRef }) => jobRef);
    for (const { fenceRef } of [...items, ...missed.items]) expect(seen).toContain(fenceRef);
    expect(await good('plan', 'accept', '3')).toMatch(/^Plan 3 is accepted/);
    expect((await visits('--state', 'all')).find((each) => each.uid === uid)).toMatchObject({ state: 'cancelled' });
    expect(await good('plan', '--weeks', '8', '--dry-run')).toMatch(/added posts 1\.\d\d x, from 1 visit \(/);
  });
});
