import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { listRecords } from '../../src/register/record-store.ts';
import { sampleRegister } from '../web/sample-register.ts';
import { command } from './command-line.ts';

describe('evidence that somebody has to decide on', () => {
  let sample: Awaited<ReturnType<typeof sampleRegister>>;
  beforeEach(async () => {
    sample = await sampleRegister({ swept: false });
  });
  afterEach(() => sample.remove());

  const inspect = (day: string, method: string, ...args: readonly string[]) =>
    command(sample.folder, ['inspect', 'PR-02', '--day', day, '--inspector', 'Nell Fox', '--method', method, ...args]);
  const storm = (...args: readonly string[]) =>
    command(sample.folder, [
      ...['storm', 'PR-02', '--day', '2026-03-14', '--gust', '71mph', '--name', 'Gale', '--reported-by', 'Nell'],
      ...args,
    ]);
  const outcomes = () => listRecords(sample.register.db, 'outcomes');

  it('refuses that a post stood which was broken before, whether sure or not', async () => {
    expect((await inspect('2025-10-02', 'eye', '--post', '5 broken')).code).toBe(0);
    for (const sure of [[], ['--sure']]) {
      const { code, err } = await storm('--stood', 'all', ...sure);
      expect(code).toBe(3);
      expect(err).toMatch(
        /^--stood "all": post 5 was found broken at inspection PR-02\/2025-10-02\/eye of 2025-10-02, before this storm, and no swap is recorded between: a broken post cannot have stood/,
      );
      expect(err).toMatch(/Nothing was stored; correct that and try again\.\n$/);
    }
    expect(await outcomes()).toEqual([]);
    const left = await storm('--stood', 'all', '--unseen', '5');
    expect({ code: left.code, err: left.err }).toEqual({ code: 0, err: '' });
    expect(await outcomes()).toMatchObject([{ result: 'stood', posts: [1, 2, 3, 4, 6, 7, 8, 9, 10, 11] }]);
  });

  it('asks what became of posts that were found broken later, and takes the answer', async () => {
    expect((await inspect('2026-10-02', 'eye', '--post', '5 broken', '--post', '6 broken')).code).toBe(0);
    const asked = await storm('--stood', 'all');
    expect(asked.code).toBe(3);
    for (const post of [5, 6]) {
      expect(asked.err).toContain(
        `--stood "all": post ${post} was found broken at inspection PR-02/2026-10-02/eye of 2026-10-02, and nothing is recorded of it in between: it may well have broken in this storm`,
      );
    }
    expect(asked.err).toMatch(
      /Nothing was stored; name these posts with --snapped or --unseen, or confirm with --sure that they stood\.\n$/,
    );
    expect(await outcomes()).toEqual([]);
    const dry = await storm('--stood', 'all', '--sure', '--dry-run');
    expect(dry.code).toBe(0);
    expect(dry.out).toContain('all posts stood: posts 1-11 (PR-02/2026-03-14/Gale/stood)');
    expect(dry.err).toMatch(/^Doubtful: --stood "all": post 5 /);
    const named = await storm('--stood', 'all', '--snapped', '5', '--unseen', '6', '--json');
    expect(named.code).toBe(0);
    expect(JSON.parse(named.out)).toMatchObject({
      covered: [
        { ref: 'PR-02/2026-03-14/Gale/stood', posts: [1, 2, 3, 4, 7, 8, 9, 10, 11] },
        { ref: 'PR-02/2026-03-14/Gale/snapped', posts: [5] },
      ],
    });
  });

  it('warns of a post that is found broken where a storm says it stood, naming the storm', async () => {
    expect((await storm('--stood', '2-5')).code).toBe(0);
    expect(await outcomes()).toMatchObject([{ posts: [2, 3, 4, 5] }]);
    const { code, err } = await inspect('2026-10-02', 'eye', '--post', '5 broken', '--post', '6 broken');
    expect(code).toBe(0);
    expect(err).toBe(
      'Doubtful: --post "5 broken", broken: post 5 is found broken, but storm outcome PR-02/2026-03-14/Gale/stood (storm "Gale", 2026-03-14) says that it stood before, and nothing is recorded of it in between; check both\n',
    );
  });

  it.each([
    [['--stood', '1-3', '--unseen', '5'], 2, 'only posts that all would cover can be left out'],
    [['--stood', 'all', '--unseen', 'all'], 2, 'only some posts can be unseen'],
    [['--stood', 'all', '--unseen', '5-3'], 2, '--unseen "5-3": not a list of posts'],
    [['--stood', 'all', '--unseen', '12'], 3, 'fence PR-02 had posts 1 to 11 on that day, and no post 12'],
    [['--stood', 'all', '--snapped', '5', '--unseen', '5,6'], 2, 'post 5 said to be seen and unseen'],
    [['--stood', 'all', '--unseen', '1-11'], 2, 'no post is left that all would cover'],
  ])('ends %j with %i', async (args, ended, said) => {
    const { code, err } = await storm(...args);
    expect(code).toBe(ended);
    expect(err).toContain(said);
    expect(await outcomes()).toEqual([]);
  });

  it('refuses a reading that leaves almost nothing until it is confirmed', async () => {
    const refused = await inspect('2026-10-02', 'caliper', '--post', '3 width 9mm');
    expect(refused.code).toBe(3);
    expect(refused.err).toMatch(/^--post "3 width 9mm", width: leaves 9 mm \(0\.35 in\) of 88\.9 mm \(3\.5 in\) sound/);
    expect(refused.err).toMatch(/or confirm the readings with --sure where they are as they are\.\n$/);
    expect(await listRecords(sample.register.db, 'inspections')).toEqual([]);
    const taken = await inspect('2026-10-02', 'caliper', '--post', '3 width 9mm', '--sure');
    expect({ code: taken.code, err: taken.err }).toEqual({ code: 0, err: '' });
    expect(await listRecords(sample.register.db, 'readings')).toMatchObject([{ post: 3, groundlineMm: 9, sure: true }]);
  });

  it('takes lengths as people write them', async () => {
    const posts = [
      '1 depth 1/4in',
      '2 depth 1 1/2in',
      '3 depth 1-1/4 in',
      '4 sound-to 0.5 cm',
      '5 depth 1/8"',
      '6 depth 3 mm',
    ];
    const { code, err } = await inspect(
      '2026-10-02',
      'awl-or-probe',
      '--sure',
      ...posts.flatMap((post) => ['--post', post]),
    );
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect((await listRecords(sample.register.db, 'readings')).map(({ groundlineMm }) => groundlineMm)).toEqual([
      6.35, 38.1, 31.75, 5, 3.175, 3,
    ]);
    const girth = await inspect('2026-10-03', 'circumference-tape', '--post', '7 circumference 30cm');
    expect(girth.code).toBe(0);
    expect((await listRecords(sample.register.db, 'readings')).at(-1)).toMatchObject({ groundlineMm: 300 });
    const nothing = await inspect('2026-10-04', 'awl-or-probe', '--post', '1 depth 1/0in');
    expect(nothing.code).toBe(3);
    expect(nothing.err).toContain('not a number');
  });
});
