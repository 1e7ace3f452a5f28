import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { parseCsv } from '../../src/register/csv/csv-text.ts';
import type { DaySheet } from '../../src/season/visit/day-sheet.ts';
import { madeUpVisit, storeVisits, visitingRegister } from '../service/visiting-register.ts';
import { command } from './command-line.ts';

let sample: Awaited<ReturnType<typeof visitingRegister>>;
let empty: Awaited<ReturnType<typeof visitingRegister>>;
const out = mkdtempSync(join(tmpdir(), 'sheets-'));
beforeAll(async () => {
  sample = await visitingRegister();
  empty = await visitingRegister();
  const item = madeUpVisit({ uid: 'x' }).items[0]!;
  await storeVisits(sample.register, [
    madeUpVisit({ uid: 'V-1', startsAt: '08:30', state: 'confirmed', note: 'Park on the street.' }),
    madeUpVisit({
      uid: 'V-2',
      siteRef: 'SKERRY',
      items: [{ ...item, fenceRef: 'SK-01', works: [{ kind: 'inspect', posts: [1, 2, 3], postCount: 3 }] }],
    }),
    madeUpVisit({ uid: 'V-3', firstDay: '2027-01-14', lastDay: '2027-01-15', items: [{ ...item, fenceRef: 'PR-04' }] }),
  ]);
});
afterAll(async () => {
  await sample.remove();
  await empty.remove();
  rmSync(out, { recursive: true, force: true });
});

describe('sheet', () => {
  it('prints the day: what to load, where to go, every post with what is known and what to do', async () => {
    const { code, out: text, err } = await command(sample.folder, ['sheet', 'north', '--day', '2027-01-11']);
    expect([code, err]).toEqual([0, '']);
    for (const said of [
      'North crew; wells, posts: Monday, January 11, 2027',
      'Going out: Orla Finch, Tomas Reed',
      '[ ] 2 pieces  treated post, 10 ft',
      '1. Pelican Reach, Bayou Vista, Texas: 08:30, promised to the owner',
      'Note: Park on the street.',
      'Dig only where buried lines are marked (post swap at PR-02): 811 is to be called by 2027-01-08, 3 days before.',
      'Fence PR-02: post swap, posts 2, 5',
      'post swap (broken)',
      '2026-05-04: 2.40 in of sound width left, 2° out of plumb (caliper on the sound shell)',
      '2. Skerry Yards, Newhaven: any time, not yet promised',
      'Sound width believed, mm',
      'These numbers are planning estimates, not a structural certification.',
    ]) {
      expect(text).toContain(said);
    }
    expect(text.match(/^ {3}\[ \] +\d+ /gm)).toHaveLength(22 + 3);
  });

  it('says when the next visit is where the day has none', async () => {
    expect((await command(sample.folder, ['sheet', 'north', '--day', '2026-11-24'])).out).toBe(
      'North crew; wells, posts has no visits on 2026-11-24.\nThe next begins on 2027-01-11.\n',
    );
    const next = await command(sample.folder, ['sheet', 'north']);
    expect(next.err).toBe(
      'North crew; wells, posts has no visits on 2026-11-24; this is its next day out, 2027-01-11.\n',
    );
    expect(next.out).toBe((await command(sample.folder, ['sheet', 'north', '--day', '2027-01-11'])).out);
    expect(next.out).toContain('January 11, 2027');
    expect((await command(empty.folder, ['sheet', 'south', '--week', '2027-01-12'])).out).toContain(
      'from 2027-01-11 to 2027-01-17.\nNone is planned after that',
    );
  });

  it('writes the days of a week as one page to print, that loads nothing and runs nothing', async () => {
    const file = join(out, 'week.html');
    const written = await command(sample.folder, ['sheet', 'north', '--week', '2027-01-15', '--html', file]);
    expect(written).toMatchObject({ code: 0, out: '', err: `Written: ${file}\n` });
    const html = readFileSync(file, 'utf8');
    expect(html.match(/<article/g)).toHaveLength(3);
    expect(html).toContain('goes on, day 2 of 2');
    expect(html).toContain('&lt;pool&gt; &amp; the shed');
    expect(html).not.toMatch(/<script|<link|src=|url\(|https?:\/\/(?!www\.w3\.org\/2000\/svg)/);
  });

  it('hands the same out as JSON', async () => {
    const { out: text } = await command(sample.folder, ['sheet', 'north', '--day', '2027-01-11', '--json']);
    const { sheets, cautions } = JSON.parse(text) as { sheets: readonly DaySheet[]; cautions: readonly string[] };
    expect(sheets[0]!.stops.map(({ uid }) => uid)).toEqual(['V-1', 'V-2']);
    expect(sheets[0]!.stops[0]!.fences[0]!.posts[1]).toMatchObject({ number: 2, todo: ['post-swap'] });
    expect(cautions).toHaveLength(4);
  });

  it('refuses a crew that is not there, a day that is none, and two ways to say which days', async () => {
    expect(await command(sample.folder, ['sheet', 'norht'])).toMatchObject({
      code: 4,
      err: expect.stringContaining('did you mean north?') as string,
    });
    expect((await command(sample.folder, ['sheet', 'north', '--day', '2027-02-30'])).code).toBe(2);
    const both = ['sheet', 'north', '--day', '2027-01-11', '--week', '2027-01-11'];
    expect(await command(sample.folder, both)).toMatchObject({
      code: 2,
      err: expect.stringContaining('give one of the two') as string,
    });
  });
});

describe('materials', () => {
  it('lists what to order with what it costs and when it is needed', async () => {
    const { code, out: text } = await command(sample.folder, ['materials']);
    expect(code).toBe(0);
    expect(text).toContain('Materials for 3 visits from 2027-01-11 to 2027-01-15, 1 of them confirmed');
    expect(text).toMatch(/treated post, 10 ft +4 pieces +2 +96 +2 +2027-01-11 +post swap/);
    // 4 posts at 24, 12 bags at 6.5, 4 sets at 7.
    expect(text).toContain('Cost of all of it: 202.');
  });

  it('takes the visits that begin between two days', async () => {
    const ordered = async (...args: readonly string[]) => {
      const { out: text } = await command(sample.folder, ['materials', '--json', ...args]);
      const { visits, materials } = JSON.parse(text) as {
        visits: number;
        materials: readonly { name: string; toTake: number }[];
      };
      return [visits, materials.find(({ name }) => name.startsWith('treated post'))?.toTake];
    };
    expect(await ordered('--to', '2027-01-13')).toEqual([2, 2]);
    expect(await ordered('--from', '2027-01-14')).toEqual([1, 2]);
    expect(await ordered('--from', '2027-01-15')).toEqual([0, undefined]);
  });

  it('writes CSV that a spreadsheet reads', async () => {
    const table = parseCsv((await command(sample.folder, ['materials', '--csv'])).out);
    if (!('rows' in table)) throw new Error(table.reason);
    expect(table.header.cells).toEqual([
      'material',
      'unit',
      'order',
      'needed',
      'confirmed',
      'unit_cost',
      'cost',
      'visits',
      'needed_by',
      'works',
    ]);
    expect(table.rows.at(-1)!.cells).toEqual([
      'treated post, 10 ft',
      'piece',
      '4',
      '4',
      '2',
      '24',
      '96.00',
      '2',
      '2027-01-11',
      'post-swap',
    ]);
  });

  it('says so where nothing is planned, and refuses days that run backwards', async () => {
    expect((await command(empty.folder, ['materials'])).out).toContain('No visits are proposed or confirmed');
    expect((await command(sample.folder, ['materials', '--from', '2027-02-01', '--to', '2027-01-01'])).code).toBe(2);
    expect((await command(sample.folder, ['materials', '--csv', '--json'])).code).toBe(2);
  });
});

describe('feed', () => {
  it('makes a link that is shown once, lists it without its secret, and ends it', async () => {
    const env = { STORMPALE_PUBLIC_URL: 'https://fences.example.org' };
    const made = await command(sample.folder, ['feed', 'new', 'site', 'PELICAN'], { env });
    expect(made.code).toBe(0);
    expect(made.out).toMatch(/^https:\/\/fences\.example\.org\/feed\/[A-Za-z0-9_-]{43}\.ics\n$/);
    expect(made.err).toContain('shown this once');
    expect(made.err).not.toContain('this machine only');
    const secret = made.out.split('/').at(-1)!.replace('.ics\n', '');
    const listed = await command(sample.folder, ['feed', 'list']);
    expect(listed.out).toMatch(/1 +site +PELICAN +2026-11-24 12:00 +answers/);
    expect((await command(sample.folder, ['feed', 'list', '--json'])).out).not.toContain(secret);
    expect((await command(sample.folder, ['feed', 'revoke', '1'])).out).toContain('never answers again');
    expect((await command(sample.folder, ['feed', 'list'])).out).toContain('revoked 2026-11-24 12:00');
  });

  it('says where a link can be opened from this machine only', async () => {
    expect((await command(empty.folder, ['feed', 'new', 'crew', 'north'])).err).toContain('STORMPALE_PUBLIC_URL');
  });

  it('refuses crews, sites and links that are not there', async () => {
    expect(await command(sample.folder, ['feed', 'new', 'site', 'PELICAM'])).toMatchObject({
      code: 4,
      err: expect.stringContaining('did you mean PELICAN?') as string,
    });
    expect((await command(sample.folder, ['feed', 'new', 'owner', 'HOA'])).code).toBe(2);
    expect((await command(sample.folder, ['feed', 'revoke', '77'])).code).toBe(4);
    expect((await command(sample.folder, ['feed', 'revoke', 'x'])).code).toBe(2);
  });
});
