import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { judgedGroup, seasonOne } from '../../src/forecast/fence-forecast.ts';
import { forecastFence } from '../../src/forecast/forecast-fence.ts';
import { loadFenceFacts } from '../../src/register/fence-facts-store.ts';
import { listRecords } from '../../src/register/record-store.ts';
import { sampleRegister } from '../web/sample-register.ts';
import { command } from './command-line.ts';

describe('inspect and storm', () => {
  let sample: Awaited<ReturnType<typeof sampleRegister>>;
  beforeEach(async () => {
    sample = await sampleRegister({ swept: false });
  });
  afterEach(() => sample.remove());

  const inspect = (...args: readonly string[]) =>
    command(sample.folder, [
      'inspect',
      'PR-02',
      '--day',
      '2026-10-02',
      '--inspector',
      '=Nell Fox',
      '--method',
      'awl-or-probe',
      ...args,
    ]);
  const storm = (...args: readonly string[]) =>
    command(sample.folder, [
      'storm',
      'PR-02',
      '--day',
      '2026-03-14',
      '--gust',
      '71mph',
      '--name',
      'Märch gale',
      '--reported-by',
      'Nell Fox',
      ...args,
    ]);

  it('stores an inspection with its readings as an import would, and says what it means', async () => {
    const { code, out, err } = await inspect(
      '--qualification',
      'crew lead',
      '--post',
      '3 depth 6mm note wet, and soft',
      '--post',
      '4 sound-to 0.12 in collar-sound',
      '--post',
      '7 broken closed-off lean 20deg rail 0.5 cut 0.25in',
    );
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(out).toContain(
      'Stored inspection PR-02/2026-10-02/awl-or-probe of fence PR-02: 2026-10-02, =Nell Fox, awl or probe.',
    );
    expect(out).toContain('\n  post 4: sound to 0.12 in, collar sound\n');
    expect(out).toContain('The next sweep takes it in; to have it now: stormpale sweep');
    expect(out).toContain('not a structural certification');
    const { db } = sample.register;
    expect(await listRecords(db, 'inspections')).toEqual([
      {
        ref: 'PR-02/2026-10-02/awl-or-probe',
        fenceRef: 'PR-02',
        day: '2026-10-02',
        inspector: '=Nell Fox',
        qualification: 'crew lead',
        method: 'awl-or-probe',
        instrument: '',
        notes: '',
      },
    ]);
    expect(await listRecords(db, 'readings')).toMatchObject([
      { post: 3, groundlineKind: 'depth', groundlineMm: 6, notes: 'wet, and soft', closedOff: false },
      { post: 4, groundlineKind: 'sound-to', groundlineMm: 3.048, collarCracked: false },
      {
        post: 7,
        groundlineKind: 'broken',
        groundlineMm: null,
        leanDegrees: 20,
        railConnection: 0.5,
        trimmerCutMm: 6.35,
        closedOff: true,
      },
    ]);
  });

  it('shows the snap speed and standing that the next sweep finds, before and after', async () => {
    const settings = { standingReturnPeriodYears: 300, lookAheadSeasons: 2 };
    const forecast = async () => {
      const facts = (await loadFenceFacts(sample.register, ['PR-02'])).get('PR-02');
      if (!facts) throw new Error('PR-02 is missing');
      return forecastFence(facts, 2026, settings);
    };
    const before = await forecast();
    const { out } = await inspect('--json', '--post', '3 depth 1mm', '--post', '5 depth 1mm', '--post', '8 depth 2mm');
    const body = JSON.parse(out) as Record<'before' | 'after', { snapMps: { p50: number }; standing: string }>;
    const after = await forecast();
    expect(body.before.snapMps).toEqual(judgedGroup(seasonOne(before)).snapMps);
    expect(body.after.snapMps).toEqual(judgedGroup(seasonOne(after)).snapMps);
    expect(body.after.snapMps.p50).toBeGreaterThan(body.before.snapMps.p50);
    expect([body.before.standing, body.after.standing]).toEqual([before.standing, after.standing]);
  });

  it('adds readings to an inspection that is there, and replaces none', async () => {
    expect((await inspect('--post', '3 depth 6mm')).code).toBe(0);
    const added = await inspect('--post', '5 depth 7mm');
    expect(added.out).toContain('Added to inspection PR-02/2026-10-02/awl-or-probe of fence PR-02.\n  post 5: ');
    const twice = await inspect('--post', '3 depth 9mm');
    expect(twice.code).toBe(3);
    expect(twice.err).toMatch(
      /--post: inspection PR-02\/2026-10-02\/awl-or-probe has a reading of post 3 already\nNothing was stored\. .*--ref/,
    );
    const other = await command(sample.folder, [
      ...['inspect', 'PR-03', '--ref', 'PR-02/2026-10-02/awl-or-probe', '--day', '2026-10-02', '--inspector', 'Nell'],
      ...['--method', 'awl-or-probe', '--post', '3 depth 6mm'],
    ]);
    expect(other.code).toBe(3);
    expect(other.err).toContain('that inspection is there already: fence PR-02, 2026-10-02, =Nell Fox, awl-or-probe');
    expect((await listRecords(sample.register.db, 'readings')).map(({ groundlineMm }) => groundlineMm)).toEqual([6, 7]);
  });

  it('changes nothing in a dry run, and computes the same', async () => {
    const dry = await inspect('--dry-run', '--post', '3 depth 6mm');
    expect(dry.code).toBe(0);
    expect(dry.out).toContain('Would store inspection');
    expect(dry.out).toContain('Nothing was changed: this was a dry run.');
    expect(await listRecords(sample.register.db, 'inspections')).toEqual([]);
    const speeds = (text: string): string | undefined => /Snap speed .*/.exec(text)?.[0];
    const stored = await inspect('--post', '3 depth 6mm');
    expect(speeds(dry.out)).toMatch(
      /^Snap speed of the line posts in season 2026, mph: \d+ \(\d+–\d+\) without this, \d+ \(\d+–\d+\) with it\.$/,
    );
    expect(speeds(stored.out)).toBe(speeds(dry.out));
  });

  it('refuses by the rules of an import, naming the argument, and stores nothing', async () => {
    const { code, err } = await inspect(
      '--post',
      '3 depth 6mm',
      '--post',
      '4 depth 3.1in',
      '--post',
      '99 width 80mm cavity 1in',
    );
    expect(code).toBe(3);
    expect(err).toMatch(
      /--post "4 depth 3\.1in", depth: deeper than half of the post as installed, 44\.\d mm \(1\.75 in\); did you mean the width left\?/,
    );
    expect(err).toContain(
      '--post "99 width 80mm cavity 1in", width: a residual width, but an inspection by awl-or-probe gives',
    );
    expect(err).toContain('--post "99 width 80mm cavity 1in", cavity: a hollow is measured by drill-resistance');
    expect(err).toContain('--post "99 width 80mm cavity 1in": fence PR-02 had posts 1 to 11 on 2026-10-02');
    expect(err).toMatch(/Nothing was stored; correct that and try again\.\n$/);
    const json = await inspect('--json', '--post', '4 depth 3.1in');
    expect(json.code).toBe(3);
    expect(JSON.parse(json.out)).toMatchObject({
      applied: false,
      faults: [expect.stringContaining('--post "4 depth 3.1in"')],
    });
    expect((await inspect('--post', '3 depth 6mm', '--notes', '#REF!')).err).toContain(
      '--notes "#REF!": an error of a spreadsheet',
    );
    expect(await listRecords(sample.register.db, 'inspections')).toEqual([]);
  });

  it('says what is doubtful and stores it all the same', async () => {
    await inspect('--post', '3 depth 12mm');
    const later = await command(sample.folder, [
      ...['inspect', 'PR-02', '--day', '2026-11-02', '--inspector', 'Nell', '--method', 'awl-or-probe'],
      ...['--post', '3 depth 2mm'],
    ]);
    expect(later.code).toBe(0);
    expect(later.err).toMatch(
      /^Doubtful: --post "3 depth 2mm", depth: post 3: 2\.0 mm of depth on 2026-11-02 \(inspection PR-02\/2026-11-02\/awl-or-probe\), but 12\.0 mm of depth on 2026-10-02 \(inspection PR-02\/2026-10-02\/awl-or-probe\), more/,
    );
  });

  it.each([
    ['depth 6mm', 'it does not begin with the number of a post'],
    ['3', 'it does not say what was found'],
    ['3 depth 6', 'depth "6": without a unit'],
    ['3 depth 6ft', 'depth "6ft": the unit "ft" is not known'],
    ['3 depth', 'depth "": not a number with its unit'],
    ['3 rotten', '"rotten" is none of the words it can hold'],
    ['3 depth 6mm depth 7mm', 'depth is said twice'],
    ['3 lean a-lot', 'lean needs a number after it, as lean 4'],
    ['3 constructor', '"constructor" is none of the words it can hold'],
  ])('ends with 2 where --post %j cannot be understood', async (post, reason) => {
    const { code, err } = await inspect('--post', post);
    expect(code).toBe(2);
    expect(err).toContain(reason);
    expect(err.trimEnd().split('\n')).toHaveLength(2);
  });

  it('ends with 2 without what is needed, and with 4 for a fence that is not there', async () => {
    expect((await inspect()).code).toBe(2);
    expect((await inspect('--post', '3 depth 6mm', '--post', '03 depth 6mm')).err).toContain('post 3 is named twice');
    expect((await storm()).err).toContain('none of --stood, --leaned and --snapped is given');
    const nowhere = await command(sample.folder, [
      ...[
        'storm',
        'XX-1',
        '--day',
        '2026-03-14',
        '--gust',
        '71mph',
        '--name',
        'Gale',
        '--reported-by',
        'Nell',
        '--stood',
        'all',
      ],
    ]);
    expect(nowhere.code).toBe(4);
  });

  it('stores what a storm did as one outcome a result', async () => {
    const { code, out, err } = await storm(
      '--stood',
      'all',
      '--leaned',
      '3, 4',
      '--snapped',
      '5',
      '--gust-spread',
      '15%',
    );
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(out).toContain('Stored of fence PR-02 in storm "Märch gale", 2026-03-14, gust 71 mph ± 15 %:');
    expect(out).toContain('\n  all other posts stood: posts 1, 2, 6-11 (PR-02/2026-03-14/March-gale/stood)\n');
    const shared = {
      storm: 'Märch gale',
      day: '2026-03-14',
      gustMps: 31.73984,
      gustSpread: 0.15,
      reportedBy: 'Nell Fox',
    };
    expect(await listRecords(sample.register.db, 'outcomes')).toMatchObject([
      { ...shared, ref: 'PR-02/2026-03-14/March-gale/leaned', posts: [3, 4], result: 'leaned' },
      { ...shared, ref: 'PR-02/2026-03-14/March-gale/snapped', posts: [5], result: 'snapped' },
      { ...shared, ref: 'PR-02/2026-03-14/March-gale/stood', posts: 'all', result: 'stood' },
    ]);
    const again = await storm('--snapped', '6');
    expect(again.code).toBe(3);
    expect(again.err).toContain(
      'PR-02/2026-03-14/March-gale/snapped is reported already: storm "Märch gale" of 2026-03-14, post 5 snapped',
    );
  });

  it('refuses a post with two results, posts that are not there and a gust without a unit', async () => {
    const twice = await storm('--leaned', '3,4', '--snapped', '4');
    expect(twice.code).toBe(3);
    expect(twice.err).toContain('--snapped "4": post 4: PR-02/2026-03-14/March-gale/leaned has the result leaned');
    expect((await storm('--leaned', '77')).err).toContain('--leaned "77": fence PR-02 had posts 1 to 11 on that day');
    expect((await storm('--stood', 'all', '--gust-spread', '90%')).err).toContain(
      '--gust-spread "90": outside the allowed 1 to 50 percent',
    );
    const unitless = await storm('--stood', 'all', '--gust', '71');
    expect(unitless.code).toBe(2);
    expect(unitless.err).toContain('--gust "71": without a unit');
    expect(await listRecords(sample.register.db, 'outcomes')).toEqual([]);
  });
});
