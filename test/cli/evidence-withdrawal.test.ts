import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { listRecords } from '../../src/register/record-store.ts';
import { changeCount } from '../../src/register/register-changes.ts';
import { sampleRegister } from '../web/sample-register.ts';
import { command } from './command-line.ts';

describe('taking evidence back', () => {
  let sample: Awaited<ReturnType<typeof sampleRegister>>;
  beforeEach(async () => {
    sample = await sampleRegister({ swept: true });
  });
  afterEach(() => sample.remove());

  const run = (...args: readonly string[]) => command(sample.folder, args);
  const inspect = (day: string, ...posts: readonly string[]) =>
    run(
      ...['inspect', 'PR-02', '--day', day, '--inspector', 'Nell Fox', '--method', 'awl-or-probe'],
      ...posts.flatMap((post) => ['--post', post]),
    );
  const storm = (...args: readonly string[]) =>
    run(
      ...['storm', 'PR-02', '--day', '2026-03-14', '--gust', '71mph', '--name', 'Gale', '--reported-by', 'Nell'],
      ...args,
    );
  const storedForecast = () =>
    sample.register.db
      .selectFrom('forecasts')
      .select(['input_hash', 'detail'])
      .where('fence_ref', '=', 'PR-02')
      .executeTakeFirstOrThrow();

  it('keeps what an inspection said, and gives the forecast back that there was without it', async () => {
    const before = await storedForecast();
    await inspect('2026-10-02', '3 depth 6mm', '4 depth 7mm note wet');
    expect((await run('sweep')).out).toMatch(/^1 forecast/);
    expect((await storedForecast()).input_hash).not.toBe(before.input_hash);
    const changes = await changeCount(sample.register.db);
    const ref = 'PR-02/2026-10-02/awl-or-probe';
    const { code, out, err } = await run('inspect', 'withdraw', ref, '--because', 'read at PR-03', '--by', 'Nell Fox');
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(out).toContain(`Withdrawn: inspection ${ref} of fence PR-02 with 2 readings.\n`);
    expect(await listRecords(sample.register.db, 'inspections')).toEqual([]);
    expect(await listRecords(sample.register.db, 'readings')).toEqual([]);
    expect(await changeCount(sample.register.db)).toBeGreaterThan(changes);
    expect((await run('sweep')).out).toMatch(/^1 forecast/);
    expect(await storedForecast()).toEqual(before);
    const listed = JSON.parse((await run('inspect', 'list', 'PR-02', '--json')).out) as unknown;
    expect(listed).toMatchObject({
      inspections: [],
      withdrawn: [
        {
          ref,
          because: 'read at PR-03',
          by: 'Nell Fox',
          at: '2026-11-24T12:00:00.000Z',
          record: {
            inspector: 'Nell Fox',
            readings: [
              { post: 3, groundlineMm: 6 },
              { post: 4, notes: 'wet' },
            ],
          },
        },
      ],
    });
    // the ref is free again
    expect((await inspect('2026-10-02', '5 depth 6mm')).code).toBe(0);
    const db = sample.register.db;
    await expect(db.deleteFrom('withdrawals').execute()).rejects.toThrow('never deleted');
    await expect(db.updateTable('withdrawals').set({ because: 'x' }).execute()).rejects.toThrow('never edited');
  });

  it('takes back all that one storm command stored, or one outcome of it', async () => {
    await storm('--stood', 'all', '--leaned', '3', '--snapped', '5');
    const ref = 'PR-02/2026-03-14/Gale';
    const spreading = await run('storm', 'withdraw', `${ref}/snapped`, '--because', 'it was PR-03');
    expect(spreading.code).toBe(3);
    expect(spreading.err).toContain(
      `without ${ref}/snapped, outcome ${ref}/stood (all posts stood) would speak of post 5 too`,
    );
    expect(await listRecords(sample.register.db, 'outcomes')).toHaveLength(3);
    const sure = await run('storm', 'withdraw', `${ref}/snapped`, '--because', 'it was PR-03', '--sure', '--json');
    expect(JSON.parse(sure.out)).toMatchObject({
      withdrawn: [
        { kind: 'outcome', ref: `${ref}/snapped`, fenceRef: 'PR-02', record: { posts: [5], gustMps: 31.73984 } },
      ],
    });
    const all = await run('storm', 'withdraw', ref, '--because', 'another street');
    expect(all.code).toBe(0);
    expect(all.out).toMatch(/stood of fence PR-02\.\nWithdrawn: storm outcome .*leaned of fence PR-02\.\n/);
    expect(await listRecords(sample.register.db, 'outcomes')).toEqual([]);
    const { out } = await run('storm', 'list', 'PR-02');
    expect(out).toMatch(/^No storm was reported of fence PR-02\.\n\nWithdrawn:\n/);
    expect(out).toContain(`  ${ref}/snapped, on 2026-11-24: it was PR-03\n`);
  });

  it('refuses what is not there and what gives no reason', async () => {
    for (const what of ['inspect', 'storm']) {
      const unknown = await run(what, 'withdraw', 'XX-1', '--because', 'why not');
      expect(unknown.code).toBe(4);
      expect(unknown.err).toContain('Nothing was withdrawn.');
      expect((await run(what, 'withdraw', 'XX-1')).code).toBe(2);
      expect((await run(what, 'withdraw', 'XX-1', '--because', ' ')).err).toContain('--because: empty');
      expect((await run(what, 'list', 'XX-1')).code).toBe(4);
    }
  });

  it('lists every reading of a post with its day, and every storm', async () => {
    await inspect('2025-10-02', '3 depth 6mm', '4 depth 7mm');
    await inspect('2026-10-02', '3 depth 8mm');
    const { out } = await run('inspect', 'list', 'PR-02');
    expect(out.split('\n').slice(0, 4)).toEqual([
      expect.stringMatching(/^Post +Day +Found +Method +Inspector +Inspection$/),
      expect.stringMatching(
        /^ +3 +2025-10-02 +0\.24 in of rot on each face +awl or probe +Nell Fox +PR-02\/2025-10-02/,
      ),
      expect.stringMatching(/^ +2026-10-02 +0\.31 in of rot on each face +awl or probe/),
      expect.stringMatching(/^ +4 +2025-10-02 +0\.28 in of rot/),
    ]);
    await storm('--stood', 'all', '--leaned', '3');
    expect((await run('storm', 'list', 'PR-02')).out).toMatch(
      /2026-03-14 +Gale +71 mph +all other posts stood +Nell +PR-02\/2026-03-14\/Gale\/stood/,
    );
  });

  it('shows how to enter in the help of inspect and of storm', async () => {
    const { code, out } = await run('inspect', '--help');
    expect(code).toBe(0);
    expect(out).toContain('withdraw [options] <ref>');
    expect(out).toContain('--method <method>');
    expect(out).toContain('What --post says');
    expect((await run('storm', '--help')).out).toContain('--unseen <posts>');
  });
});
