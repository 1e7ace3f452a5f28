import { createHash } from 'node:crypto';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { endSession } from '../../../src/register/session-store.ts';
import { readVisit } from '../../../src/register/visit-store.ts';
import { storedSecret } from '../../../src/service/feed-links.ts';
import { crewSample } from './crew-sample.ts';
import { crewSender, DOT_PNG } from './crew-sender.ts';

const FENCE = '/today/visits/today-1/fences/PR-02';
const reading = (post: number): string => `${FENCE}/posts/${post}/reading`;

interface Told {
  readonly stored: boolean;
  readonly again?: boolean;
  readonly reasons?: readonly string[];
  readonly question?: boolean;
  readonly answer?: { readonly doubts?: readonly string[] };
}
const told = async (response: Response): Promise<Told> => (await response.json()) as Told;

describe('an entry of a crew', () => {
  let sample: Awaited<ReturnType<typeof crewSample>>;
  beforeEach(async () => {
    sample = await crewSample();
  });
  afterEach(() => sample.close());

  const stored = () =>
    sample.register.db
      .selectFrom('readings')
      .select([
        'inspection_ref as ref',
        'post',
        'groundline_kind as kind',
        'groundline_mm as mm',
        'closed_off as closed',
      ])
      .where('inspection_ref', 'like', '%-1/%')
      .orderBy('post')
      .execute();
  const receipts = () => sample.register.db.selectFrom('entry_receipts').select(['holder', 'id', 'kind']).execute();
  const sessionOf = (cookie: string): string => storedSecret(cookie.split('=')[1] ?? '') ?? '';

  it('is stored once, however often and from however many windows at the same time it comes', async () => {
    const { send } = await crewSender(sample, sample.crewCookie);
    const entry = {
      entry: 'made-on-a-phone-1',
      method: 'caliper',
      day: '2026-11-24',
      residual_width: '2.5',
      broken: '',
    };
    const answers = await Promise.all([1, 2, 3, 4].map(async () => told(await send(reading(2), entry))));
    expect(answers.filter(({ again }) => again === false)).toHaveLength(1);
    expect(answers.every(({ stored: is }) => is)).toBe(true);
    // somebody mends it, and only then does the phone hear that it had arrived
    await send(reading(2), { ...entry, entry: 'made-on-a-phone-2', residual_width: '2.6' });
    expect(await told(await send(reading(2), entry))).toMatchObject({ stored: true, again: true });
    expect(await stored()).toEqual([{ ref: 'today-1/PR-02', post: 2, kind: 'residual-width', mm: 66.04, closed: 0 }]);
    expect(await receipts()).toHaveLength(2);
  });

  it('is refused where its id was used for something else, and one of another account means nothing to it', async () => {
    const { send } = await crewSender(sample, sample.crewCookie);
    const entry = { entry: 'the-same-id', method: 'caliper', residual_width: '2.5' };
    expect((await send(reading(2), entry)).status).toBe(200);
    const other = await send(reading(2), { ...entry, residual_width: '2.9' });
    expect(other.status).toBe(409);
    expect((await told(other)).reasons?.[0]).toContain('sent before, with something else');
    const tomas = await crewSender(sample, sample.spanishCookie);
    expect(await told(await tomas.send(reading(6), { ...entry, residual_width: '3' }))).toMatchObject({ again: false });
    expect((await stored()).map(({ post, mm }) => [post, mm])).toEqual([
      [2, 63.5],
      [6, 76.2],
    ]);
  });

  it('leaves no trace where it is refused, says why in the words of its field, and is taken once it is right', async () => {
    const { send } = await crewSender(sample, sample.crewCookie);
    const wide = await send(reading(2), { entry: 'too-wide-1', method: 'caliper', residual_width: '9' });
    expect(wide.status).toBe(422);
    expect((await told(wide)).reasons?.[0]).toMatch(
      /^Sound width left, right across: wider than the post as installed/,
    );
    const nothing = await told(await send(reading(2), { entry: 'nothing-1', method: 'caliper', residual_width: '' }));
    expect(nothing.reasons?.[0]).toContain('nothing was found');
    const wrong = await told(await send(reading(2), { entry: 'wrong-tool', method: 'caliper', depth: '0.2' }));
    expect(wrong.reasons?.join()).toContain('an inspection by caliper gives residual width');
    expect(await stored()).toEqual([]);
    expect(await receipts()).toEqual([]);
    expect(
      await told(await send(reading(2), { entry: 'too-wide-1', method: 'caliper', residual_width: '2.9' })),
    ).toEqual(expect.objectContaining({ stored: true, again: false }));
  });

  it('asks before it believes that almost nothing is left', async () => {
    const { send } = await crewSender(sample, sample.crewCookie);
    const entry = { entry: 'almost-nothing', method: 'caliper', residual_width: '0.4' };
    const asked = await told(await send(reading(6), entry));
    expect(asked).toMatchObject({ stored: false, question: true });
    expect(asked.reasons?.[0]).toContain('less than a quarter of the post');
    expect(await told(await send(reading(6), { ...entry, sure: 'yes' }))).toMatchObject({ stored: true });
  });

  it('says that a visit is off, a fence not on it, or another crew has it, and keeps nothing', async () => {
    const { send } = await crewSender(sample, sample.southCookie);
    const entry = { entry: 'of-the-south', method: 'eye', broken: 'yes' };
    const foreign = await send(reading(2), entry);
    expect(foreign.status).toBe(403);
    expect((await told(foreign)).reasons?.[0]).toContain('Another crew has this visit now');
    const own = '/today/visits/south-1/fences';
    expect((await send(`${own}/PR-02/posts/1/reading`, entry)).status).toBe(409);
    expect((await send(`${own}/PR-04/posts/1/reading`, entry)).status).toBe(200);
    await sample.register.db.updateTable('visits').set({ state: 'missed' }).where('uid', '=', 'south-1').execute();
    const late = await send(`${own}/PR-04/posts/2/reading`, { ...entry, entry: 'of-the-south-2' });
    expect(late.status).toBe(409);
    expect((await told(late)).reasons?.[0]).toContain('Ask it to plan the visit again');
    for (const path of ['/today/visits/today-1', FENCE]) {
      expect((await sample.pages.request(path, { headers: { cookie: sample.southCookie } })).status).toBe(403);
    }
    // the office enters on all of them, and so does a crew's account of no crew
    const office = await crewSender(sample, sample.cookie ?? '');
    expect((await office.send(reading(6), { ...entry, entry: 'of-the-office' })).status).toBe(200);
    const free = await crewSender(sample, await sample.signIn({ role: 'crew', name: 'free-hand' }));
    expect((await free.send(reading(7), { ...entry, entry: 'of-a-free-hand' })).status).toBe(200);
  });

  it('is led to where one signs in once the session is over, and is taken after that', async () => {
    const { send } = await crewSender(sample, sample.crewCookie);
    await endSession(sample.register.db, sessionOf(sample.crewCookie));
    const entry = { entry: 'over-the-weekend', method: 'eye', broken: 'yes' };
    const over = await send(reading(2), entry);
    expect(over.status).toBe(303);
    expect(over.headers.get('location')).toBe('/sign-in');
    const asked = await sample.pages.request('/today/session.json', { headers: { cookie: sample.crewCookie } });
    expect(asked.status).toBe(401);
    expect(await stored()).toEqual([]);
  });

  it('needs the token of its own session', async () => {
    const { send } = await crewSender(sample, sample.crewCookie);
    const { token } = await crewSender(sample, sample.spanishCookie);
    const foreign = await send(reading(2), { entry: 'with-another-token', broken: 'yes' }, { token });
    expect(foreign.status).toBe(403);
    const fresh = await sample.pages.request('/today/session.json', { headers: { cookie: sample.crewCookie } });
    const { formToken } = (await fresh.json()) as { formToken: string };
    expect((await send(reading(2), { entry: 'with-another-token', broken: 'yes' }, { token: formToken })).status).toBe(
      200,
    );
  });

  it('closes a post off by one tap and takes that back, beside what else was found', async () => {
    const { send } = await crewSender(sample, sample.crewCookie);
    const close = (entry: string, closed_off: string) => send(`${FENCE}/posts/6/closed-off`, { entry, closed_off });
    await close('closed-1', 'yes');
    expect(await stored()).toEqual([expect.objectContaining({ post: 6, kind: null, closed: 1 })]);
    await close('closed-2', 'no');
    expect(await stored()).toEqual([]);
    // the inspection went with its only reading
    expect(
      await sample.register.db.selectFrom('inspections').select('ref').where('ref', 'like', 'today%').execute(),
    ).toEqual([]);
    await send(reading(6), { entry: 'read-6-1', method: 'caliper', residual_width: '3' });
    await close('closed-3', 'yes');
    expect(await stored()).toEqual([expect.objectContaining({ post: 6, mm: 76.2, closed: 1 })]);
    await close('closed-4', 'no');
    // the first of them comes once more: it was answered long ago and closes nothing again
    expect(await told(await close('closed-3', 'yes'))).toMatchObject({ again: true });
    expect(await stored()).toEqual([expect.objectContaining({ post: 6, mm: 76.2, closed: 0 })]);
    await send(`${FENCE}/posts/6/taken-back`, { entry: 'back-6-1' });
    expect(await stored()).toEqual([]);
  });

  it('takes the numbers in the units of the site, fractions of an inch, and a decimal comma in Spanish', async () => {
    const { send } = await crewSender(sample, sample.spanishCookie);
    await send(reading(2), { entry: 'fraction-1', method: 'caliper', residual_width: '2 3/8' });
    const metric = '/today/visits/today-2/fences/SK-01/posts/1/reading';
    const metricAnswer = await send(metric, { entry: 'comma-0001', method: 'caliper', residual_width: '61,5' });
    expect(metricAnswer.status).toBe(200);
    const rows = await sample.register.db
      .selectFrom('readings')
      .select(['groundline_mm'])
      .where('inspection_ref', 'like', 'today%')
      .execute();
    expect(rows.map(({ groundline_mm }) => groundline_mm)).toEqual([60.325, 61.5]);
  });

  it('of a day still to come by the phone is one of today', async () => {
    const { send } = await crewSender(sample, sample.crewCookie);
    await send(reading(2), { entry: 'clock-is-fast', method: 'caliper', residual_width: '2.4', day: '2026-12-24' });
    const [inspection] = await sample.register.db
      .selectFrom('inspections')
      .select(['day', 'inspector'])
      .where('ref', '=', 'today-1/PR-02')
      .execute();
    expect(inspection).toEqual({ day: '2026-11-24', inspector: 'Orla Finch' });
  });

  it('keeps a picture with its time and digest, shows it to office and crew, and refuses what is none', async () => {
    const { send } = await crewSender(sample, sample.crewCookie);
    const photo = new Blob([DOT_PNG], { type: 'image/png' });
    const entry = { entry: 'picture-0001', post: '5', taken_at: '2026-11-24T11:58:03.000Z', photo };
    for (const again of [false, true])
      expect(await told(await send(`${FENCE}/photos`, entry))).toMatchObject({ again });
    const rows = await sample.register.db.selectFrom('visit_photos').selectAll().execute();
    const sha256 = createHash('sha256').update(DOT_PNG).digest('hex');
    expect(rows).toEqual([
      expect.objectContaining({
        post: 5,
        fence_ref: 'PR-02',
        taken_at: '2026-11-24T11:58:03.000Z',
        taken_by: 'Orla Finch',
        sha256,
      }),
    ]);
    const path = `/today/photos/${rows[0]?.id}`;
    for (const [cookie, status] of [
      [sample.crewCookie, 200],
      [sample.cookie ?? '', 200],
      [sample.southCookie, 404],
      [await sample.signIn({ role: 'board', name: 'board-looks', siteRefs: ['PELICAN'] }), 403],
    ] as const) {
      const shown = await sample.pages.request(path, { headers: { cookie } });
      expect(shown.status).toBe(status);
      if (status === 200) expect(Buffer.from(await shown.arrayBuffer())).toEqual(DOT_PNG);
    }
    const page = new Blob(['<script>alert(1)</script>'], { type: 'image/png' });
    expect((await send(`${FENCE}/photos`, { entry: 'picture-0002', photo: page })).status).toBe(422);
    const large = new Blob([DOT_PNG, new Uint8Array(9 * 1024 * 1024)]);
    expect((await send(`${FENCE}/photos`, { entry: 'picture-0003', photo: large })).status).toBe(413);
    // elsewhere a form stays small
    expect((await send(reading(5), { entry: 'picture-0004', notes: 'x'.repeat(70_000) })).status).toBe(413);
  });

  it('finishes a visit with its inspections, works and hours in one, once', async () => {
    const { send } = await crewSender(sample, sample.crewCookie);
    const done = {
      entry: 'visit-done-1',
      'did/PR-02': 'post-swap',
      'posts/PR-02/post-swap': '2, 5-5',
      hours: '4.5',
      remarks: 'PR-01 was locked.',
    };
    await send(reading(6), { entry: 'read-6-0001', method: 'caliper', residual_width: '3' });
    const first = await told(await send('/today/visits/today-1/done', done));
    expect(first).toMatchObject({ stored: true, again: false, answer: { returned: ['PR-01'] } });
    expect(await told(await send('/today/visits/today-1/done', done))).toMatchObject({ stored: true, again: true });
    expect(await readVisit(sample.register.db, 'today-1')).toMatchObject({ state: 'done' });
    const { db } = sample.register;
    const entries = await db.selectFrom('visit_entries').select(['kind', 'fence_ref', 'ref']).orderBy('kind').execute();
    expect(entries).toEqual([
      { kind: 'inspection', fence_ref: 'PR-02', ref: 'today-1/PR-02' },
      { kind: 'works', fence_ref: 'PR-02', ref: 'today-1.001' },
    ]);
    const works = await db.selectFrom('works').select(['kind', 'posts', 'day']).execute();
    expect(works).toEqual([{ kind: 'post-swap', posts: '2 5', day: '2026-11-24' }]);
    const [last] = await db
      .selectFrom('visit_changes')
      .select(['by', 'because'])
      .where('uid', '=', 'today-1')
      .orderBy('id', 'desc')
      .execute();
    expect(last).toEqual({ by: 'Orla Finch', because: 'PR-01 was locked.' });
    // what was seen is still taken, what was done is not done twice
    expect((await send(reading(7), { entry: 'read-7-late', method: 'caliper', residual_width: '3' })).status).toBe(200);
    const twice = await send('/today/visits/today-1/done', { ...done, entry: 'visit-done-2' });
    expect((await told(twice)).reasons?.[0]).toContain('it is done already');
  });

  it('does not finish a visit whose inspection is missing, nor with hours that cannot be, nor when nothing was done', async () => {
    const { send } = await crewSender(sample, sample.crewCookie);
    const path = '/today/visits/today-1/done';
    const missing = await told(await send(path, { entry: 'not-yet-01', 'did/PR-01': 'inspect' }));
    expect(missing.reasons?.[0]).toContain('Fence PR-01 was to be inspected');
    const swap = { 'did/PR-02': 'post-swap', 'posts/PR-02/post-swap': '2' };
    expect((await told(await send(path, { entry: 'not-yet-02', ...swap, hours: 'many' }))).reasons?.[0]).toContain(
      '"many"',
    );
    const asked = await told(await send(path, { entry: 'not-yet-03', ...swap, hours: '90' }));
    expect(asked).toMatchObject({ stored: false, question: true });
    const posts = await told(
      await send(path, { entry: 'not-yet-04', 'did/PR-02': 'post-swap', 'posts/PR-02/post-swap': 'all of them' }),
    );
    expect(posts.reasons?.[0]).toContain('no numbers of posts');
    expect((await told(await send(path, { entry: 'not-yet-05' }))).reasons?.[0]).toContain(
      'nothing was done was missed',
    );
    expect(await readVisit(sample.register.db, 'today-1')).toMatchObject({ state: 'confirmed' });
    expect(await told(await send(path, { entry: 'not-yet-03', ...swap, hours: '90', sure: 'yes' }))).toMatchObject({
      stored: true,
    });
  });
});
