import { DateTime } from 'luxon';
import { simpleParser } from 'mailparser';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { listHeldNotices } from '../../src/register/held-notices.ts';
import { holdMatter } from '../../src/register/holding.ts';
import { listOutbox, loadOutboxBytes } from '../../src/register/outbox.ts';
import type { OwnerRecord } from '../../src/register/owner-record.ts';
import { storePlan } from '../../src/register/plan-store.ts';
import { upsertRecords } from '../../src/register/record-store.ts';
import { storeVisit } from '../../src/register/visit-store.ts';
import { changedVisit } from '../../src/season/visit/change-visit.ts';
import type { Visit } from '../../src/season/visit/visit.ts';
import { cancelVisit, confirmVisit, missVisit } from '../../src/service/change-visit.ts';
import type { Clock } from '../../src/service/clock.ts';
import { composeNotices } from '../../src/service/compose-notices.ts';
import { tellOfVisit } from '../../src/service/tell-of-visit.ts';
import { readCalendar } from './calendar-importer.ts';
import { SENDER } from './sender.ts';
import { madeUpVisit, visitingRegister } from './visiting-register.ts';

// a Wednesday; the season of the site opens on 1 June
const at = (day: string): Clock => {
  const moment = DateTime.fromISO(`${day}T15:00:00Z`, { zone: 'utc' });
  return () => moment;
};
const NOW = at('2027-05-12');
const ITEM = madeUpVisit({ uid: '-' }).items[0]!;
const VISIT = madeUpVisit({
  uid: 'V1-1-aaaaaa',
  firstDay: '2027-05-19',
  lastDay: '2027-05-19',
  items: [{ ...ITEM, fenceRef: 'PR-04' }],
});
const WHO = { by: 'Nell', because: '' };

describe('what owners are told of a visit', () => {
  let sample: Awaited<ReturnType<typeof visitingRegister>>;
  beforeEach(async () => {
    sample = await visitingRegister();
    await enrol({ ref: 'QUINN', name: 'Rosa Quinn', kind: 'person', language: 'en' });
  });
  const enrol = (owner: Pick<OwnerRecord, 'ref' | 'name' | 'kind' | 'language'>) =>
    upsertRecords(
      sample.register.db,
      'owners',
      [{ ...owner, channel: 'mail', email: `${owner.ref}@example.net`, postalAddress: null, enrolled: true }],
      NOW().toISO() ?? '',
    );
  afterEach(() => sample.remove());

  const tell = (visit: Visit, now = NOW, planNumber: number | null = null): Promise<number> =>
    sample.register.db.transaction().execute(async (tx) => {
      await storeVisit(tx, visit, WHO);
      const today = now().toISODate() ?? '';
      return tellOfVisit({ ...sample.register, db: tx }, visit, { today, at: now().toISO() ?? '', planNumber });
    });
  const confirm = (day: string, now = NOW) =>
    confirmVisit(sample.register, {
      uid: VISIT.uid,
      now,
      day,
      startsAt: '08:30',
      crewRef: null,
      sure: true,
      ...WHO,
    });
  const compose = (now = NOW) => composeNotices(sample.register, { now, sender: SENDER });
  const notices = () =>
    sample.register.db
      .selectFrom('notices')
      .select(['owner_ref', 'fence_ref', 'matter', 'occasion', 'void_reason', 'held'])
      .orderBy('id')
      .execute();
  const told = async (): Promise<readonly string[]> =>
    (await notices()).map((each) => `${each.matter}${each.void_reason === null ? '' : ` (void: ${each.void_reason})`}`);
  const mails = async () =>
    (await listOutbox(sample.register, { limit: 50 })).filter(({ state }) => state !== 'cancelled');
  const newest = async () => {
    const [entry] = await listOutbox(sample.register, { limit: 1 });
    return simpleParser(Buffer.from((await loadOutboxBytes(sample.register, entry!.id))!.raw));
  };
  const markSent = () => sample.register.db.updateTable('outbox').set({ state: 'sent' }).execute();

  it('is a proposal once, with its day, what is done, a price and an entry for the calendar', async () => {
    expect(await tell(VISIT)).toBe(1);
    expect(await tell(VISIT)).toBe(0);
    expect(await compose()).toMatchObject({ mails: 1, failures: [] });
    expect(await compose()).toMatchObject({ mails: 0 });
    const mail = await newest();
    expect(mail.subject).toBe('Fence PR-04 at Pelican Reach: a crew could come on Wednesday, May 19, 2027');
    expect(mail.text).toMatch(/^A crew could come on Wednesday, May 19, 2027, some time that day\. It is a\nproposal/);
    expect(mail.text).toContain('new posts in place of old ones, posts 2, 5');
    expect(mail.text?.replaceAll('\n', ' ')).toMatch(/about 390 to 730\s+dollars/);
    expect(mail.text).toContain('A budget figure, not a quote');
  });

  it('is only of the confirmed day where the proposal has not been written yet', async () => {
    await tell(VISIT);
    await confirm('2027-05-20');
    expect(await told()).toEqual(['visit proposed (void: the visit has changed again)', 'visit confirmed']);
    expect(await compose()).toMatchObject({ mails: 1 });
    expect((await newest()).subject).toBe(
      'Fence PR-04 at Pelican Reach: the crew comes on Thursday, May 20, 2027, from 8:30 am',
    );
  });

  it('takes back the mail of a proposal that has not left, and leaves one that has', async () => {
    await tell(VISIT);
    await compose();
    await confirm('2027-05-20');
    await compose();
    expect((await mails()).map(({ subject }) => subject)).toEqual([
      expect.stringContaining('the crew comes on Thursday'),
    ]);
    await markSent();
    await confirm('2027-05-21');
    await compose();
    const mail = await newest();
    expect(mail.subject).toContain('the visit has changed, now on Friday, May 21, 2027');
    expect(mail.text?.replaceAll('\n', ' ')).toContain(
      'It was on Thursday, May 20, 2027, from 8:30 am. That no longer',
    );
    expect(await told()).toEqual(['visit proposed', 'visit confirmed', 'visit changed']);
  });

  it('does not let a mail that was under way come after the one that replaces it', async () => {
    await tell(VISIT);
    await compose();
    await sample.register.db.updateTable('outbox').set({ state: 'leased' }).execute();
    await confirm('2027-05-20');
    // the try failed, and the mail is in the queue again
    await sample.register.db.updateTable('outbox').set({ state: 'queued' }).execute();
    await compose();
    expect((await mails()).map(({ subject }) => subject)).toEqual([expect.stringContaining('the crew comes on')]);
  });

  it('changes and ends one and the same entry of a calendar', async () => {
    await tell(VISIT);
    await compose();
    const entries: object[] = [];
    const look = async () => {
      const mail = await newest();
      const parts = mail.attachments.filter(({ filename }) => filename?.endsWith('.ics'));
      const text = parts[0]!.content.toString('utf8');
      entries.push({ method: /^METHOD:(.*)\r$/m.exec(text)?.[1], ...readCalendar(text).events[0]! });
      const raw = (await loadOutboxBytes(sample.register, (await listOutbox(sample.register, { limit: 1 }))[0]!.id))!
        .raw;
      const source = Buffer.from(raw).toString('utf8');
      expect(source).toMatch(/Content-Type: text\/calendar; charset=utf-8; method=(REQUEST|CANCEL)/);
      await markSent();
    };
    await look();
    await confirm('2027-05-20');
    await compose();
    await look();
    await cancelVisit(sample.register, { uid: VISIT.uid, now: NOW, ...WHO });
    await compose();
    await look();
    expect(entries).toMatchObject([
      {
        method: 'REQUEST',
        uid: 'V1-1-aaaaaa@stormpale',
        sequence: 0,
        status: 'TENTATIVE',
        start: '2027-05-19',
        end: '2027-05-20',
      },
      {
        method: 'REQUEST',
        uid: 'V1-1-aaaaaa@stormpale',
        sequence: 1,
        status: 'CONFIRMED',
        start: '2027-05-20T13:30:00.000Z',
      },
      { method: 'CANCEL', uid: 'V1-1-aaaaaa@stormpale', sequence: 2, status: 'CANCELLED' },
    ]);
    expect(await told()).toEqual(['visit proposed', 'visit confirmed', 'visit cancelled']);
  });

  it('is nothing where an owner never knew of what fell through', async () => {
    await tell(VISIT);
    await cancelVisit(sample.register, { uid: VISIT.uid, now: NOW, ...WHO });
    expect(await told()).toEqual(['visit proposed (void: the visit has changed again)']);
  });

  it('is nothing of a visit in the past', async () => {
    expect(await tell(VISIT, at('2027-05-20'))).toBe(0);
    // it was queued in time, and not written before its day
    await tell(changedVisit(VISIT, { firstDay: '2027-05-18', lastDay: '2027-05-18' }, '2027-05-12T16:00:00.000Z'));
    expect(await compose(at('2027-05-19'))).toMatchObject({ mails: 0 });
    expect(await told()).toEqual(['visit proposed (void: its day is past)']);
  });

  it('is that the crew did not come, within thirty days', async () => {
    await tell(VISIT);
    await compose();
    await markSent();
    await missVisit(sample.register, { uid: VISIT.uid, now: at('2027-05-20'), ...WHO });
    await compose(at('2027-05-20'));
    expect((await newest()).text).toMatch(/^The crew was to come on Wednesday, May 19, 2027, and did not\./);
    expect(await told()).toEqual(['visit proposed', 'visit missed']);
  });

  it('is nothing of one missed long ago', async () => {
    await tell(VISIT);
    await compose();
    await markSent();
    await missVisit(sample.register, { uid: VISIT.uid, now: at('2027-06-20'), ...WHO });
    expect(await told()).toEqual(['visit proposed']);
  });

  it('goes to each owner with the own fences alone, and to nobody who is not enrolled', async () => {
    const both = { ...VISIT, items: [{ ...ITEM, fenceRef: 'PR-02' }, ...VISIT.items] };
    await tell(both);
    expect((await notices()).map(({ owner_ref, fence_ref }) => `${owner_ref} ${fence_ref}`)).toEqual([
      'HOA PR-02',
      'QUINN PR-04',
    ]);
    await compose();
    const texts = await Promise.all(
      (await mails()).map(async ({ id }) => Buffer.from((await loadOutboxBytes(sample.register, id))!.raw).toString()),
    );
    expect(texts.filter((text) => text.includes('PR-02') && text.includes('PR-04'))).toEqual([]);
  });

  it('tells an owner whose fence is taken off the visit that nobody comes', async () => {
    const both = { ...VISIT, items: [{ ...ITEM, fenceRef: 'PR-02' }, ...VISIT.items] };
    await tell(both);
    await compose();
    await markSent();
    await tell(changedVisit(both, { items: [both.items[0]!] }, '2027-05-12T16:00:00.000Z'));
    expect((await notices()).slice(2).map(({ owner_ref, matter }) => `${owner_ref} ${matter}`)).toEqual([
      'HOA visit changed',
      'QUINN visit cancelled',
    ]);
    await compose();
    expect((await mails()).length).toBe(4);
  });

  it('waits where the office holds the matter, and is void once it changes again', async () => {
    await holdMatter(sample.register, 'visit proposed', true, NOW().toISO() ?? '');
    await tell(VISIT);
    expect(await listHeldNotices(sample.register)).toMatchObject([{ matter: 'visit proposed', held: 'matter' }]);
    expect(await compose()).toMatchObject({ mails: 0 });
    await confirm('2027-05-20');
    expect(await listHeldNotices(sample.register)).toEqual([]);
    expect(await compose()).toMatchObject({ mails: 1 });
  });

  it('is undone with the change that caused it', async () => {
    await expect(
      sample.register.db.transaction().execute(async (tx) => {
        await storeVisit(tx, VISIT, WHO);
        const inTx = { ...sample.register, db: tx };
        await tellOfVisit(inTx, VISIT, { today: '2027-05-12', at: '2027-05-12T15:00:00.000Z', planNumber: null });
        throw new Error('the power went');
      }),
    ).rejects.toThrow('the power went');
    expect(await notices()).toEqual([]);
  });

  it('is to an association the whole plan in one message, with what it costs a site', async () => {
    await enrol({ ref: 'HOA', name: 'Pelican Reach HOA', kind: 'association', language: 'en' });
    const number = await storePlan(sample.register.db, {
      madeAt: '2027-05-12T15:00:00.000Z',
      asOf: '2027-05-12',
      firstWeek: '2027-05-17',
      weeks: 4,
      modelVersion: 'none',
      content: { visits: [] },
    } as unknown as Parameters<typeof storePlan>[1]);
    const other = { ...VISIT, uid: 'V1-2-bbbbbb', firstDay: '2027-05-21', lastDay: '2027-05-21' };
    await tell({ ...VISIT, planId: number, items: [{ ...ITEM, fenceRef: 'PR-02' }] }, NOW, number);
    await tell({ ...other, planId: number, items: [{ ...ITEM, fenceRef: 'PR-03' }] }, NOW, number);
    expect(await told()).toEqual(['plan for the board', 'plan for the board']);
    expect(await compose()).toMatchObject({ mails: 1, failures: [] });
    const mail = await newest();
    expect(mail.subject).toBe('Season plan: 2 visits at 1 site, May 19, 2027 to May 21, 2027');
    expect(mail.text?.replaceAll('\n', ' ')).toMatch(
      /all visits: done by May 21, 2027, about [\d,]+ to [\d,]+ dollars\./,
    );
    const csv = mail.attachments.find(({ filename }) => filename === 'season-plan.csv');
    expect(csv?.content.toString('utf8').trim().split('\r\n')).toHaveLength(3);
    await markSent();
    // told by the plan, so a confirmed day is news of the same visit
    await confirm('2027-05-20');
    await compose();
    expect((await newest()).text?.replaceAll('\n', ' ')).toContain('That is in place of Wednesday, May 19, 2027');
  });
});
