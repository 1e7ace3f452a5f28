import { DateTime } from 'luxon';
import { simpleParser } from 'mailparser';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { listOutbox, loadOutboxBytes } from '../../src/register/outbox.ts';
import { upsertRecords } from '../../src/register/record-store.ts';
import { storeVisit } from '../../src/register/visit-store.ts';
import type { Visit } from '../../src/season/visit/visit.ts';
import { cancelVisit, confirmVisit } from '../../src/service/change-visit.ts';
import { composeNotices } from '../../src/service/compose-notices.ts';
import { drainOutbox } from '../../src/service/drain-outbox.ts';
import { checkProof, historyText, mailProof } from '../../src/service/mail-proof.ts';
import { mailServerAddress, smtpTransport } from '../../src/service/mail-transport.ts';
import { tellOfVisit } from '../../src/service/tell-of-visit.ts';
import { readCalendar } from './calendar-importer.ts';
import { mailServer } from './mail-server.ts';
import { SENDER } from './sender.ts';
import { madeUpVisit, visitingRegister } from './visiting-register.ts';

const NOW = DateTime.fromISO('2027-04-12T15:00:00Z', { zone: 'utc' });
const now = () => NOW;
const WHO = { by: 'Nell', because: '' };
const PAGES = 'https://fences.example.org';
const [ITEM] = madeUpVisit({ uid: '-' }).items;

/** Six visits, a week apart, each to a fence of Quinn's; the last goes to a fence of the association too. */
const VISITS: readonly Visit[] = Array.from({ length: 6 }, (_, index) => {
  const day = DateTime.fromISO('2027-04-20').plus({ weeks: index }).toISODate() ?? '';
  const own = { ...ITEM!, fenceRef: 'PR-04' };
  return madeUpVisit({
    uid: `V1-${index + 1}-aaaaaa`,
    firstDay: day,
    lastDay: day,
    // in truth a plan visits a fence once; what counts here is that each tells the same owner
    items: index === 5 ? [{ ...ITEM!, fenceRef: 'PR-01' }, own] : [own],
  });
});

describe('several visits to the fences of one owner', () => {
  let sample: Awaited<ReturnType<typeof visitingRegister>>;
  beforeEach(async () => {
    sample = await visitingRegister();
    await enrol('en');
  });
  afterEach(() => sample.remove());

  const enrol = (language: 'en' | 'es', channel: 'mail' | 'letter' = 'mail') =>
    upsertRecords(
      sample.register.db,
      'owners',
      [
        {
          ref: 'QUINN',
          name: 'Quinn Holdings',
          kind: 'company',
          language,
          channel,
          email: 'quinn@example.net',
          postalAddress: '1 Reach Road',
          enrolled: true,
        },
      ],
      NOW.toISO() ?? '',
    );
  const tell = (visits: readonly Visit[]): Promise<void> =>
    sample.register.db.transaction().execute(async (tx) => {
      for (const visit of visits) {
        await storeVisit(tx, visit, WHO);
        const telling = { today: NOW.toISODate() ?? '', at: NOW.toISO() ?? '', planNumber: null };
        await tellOfVisit({ ...sample.register, db: tx }, visit, telling);
      }
    });
  const compose = (publicUrl: string | null = PAGES) =>
    composeNotices(sample.register, { now, sender: { ...SENDER, publicUrl } });
  const deliver = async () => {
    const server = await mailServer();
    const transport = smtpTransport(mailServerAddress(`smtp://127.0.0.1:${server.port}`));
    await drainOutbox(sample.register, { now, transport });
    return server.received.map(({ raw }) => raw);
  };
  const waiting = async () =>
    (await listOutbox(sample.register, { limit: 50 })).filter(
      ({ state }) => state === 'queued' || state === 'to print',
    );
  const notices = () =>
    sample.register.db
      .selectFrom('notices')
      .select(['visit_uid', 'matter', 'outbox_id', 'void_reason', 'owner_ref'])
      .where('owner_ref', '=', 'QUINN')
      .orderBy('id')
      .execute();
  const flat = (text: string | undefined): string => (text ?? '').replace(/\s+/g, ' ');

  it('come as one mail that a mail server gets once, with each visit, its link, and one calendar of all', async () => {
    await tell(VISITS);
    expect(await compose()).toMatchObject({ failures: [] });
    const mails = await Promise.all((await deliver()).map((raw) => simpleParser(raw)));
    const toQuinn = mails.filter(({ to }) => JSON.stringify(to).includes('quinn@example.net'));
    expect(toQuinn).toHaveLength(1);
    const [mail] = toQuinn;
    expect(mail!.subject).toBe('6 visits to your fences could be made, April 20, 2027 to May 25, 2027');
    const text = flat(mail!.text);
    expect(text).toContain('A crew could come 6 times: these are proposals');
    for (const day of ['Tuesday, April 20, 2027', 'Tuesday, May 25, 2027'])
      expect(text).toContain(`A crew could come on ${day}, some time that day.`);
    // five days are Quinn's to choose, the sixth is shared
    expect(text.match(/Or choose another day of that week yourself/g)).toHaveLength(5);
    expect(text.match(/Each owner has one voice/g)).toHaveLength(1);
    expect(text).not.toContain('PR-01');
    const links = [...(mail!.text ?? '').matchAll(/^https:\S+\/visits#visit-(\S+)$/gm)].map(([, uid]) => uid);
    expect(links).toEqual(VISITS.map(({ uid }) => uid));
    const calendars = mail!.attachments.filter(({ contentType }) => contentType === 'text/calendar');
    expect(calendars.map(({ filename }) => filename)).toEqual(['visits.ics']);
    const { events } = readCalendar(calendars[0]!.content.toString('utf8'));
    expect(events.map(({ uid, status }) => [uid, status])).toEqual(
      VISITS.map(({ uid }) => [`${uid}@stormpale`, 'TENTATIVE']),
    );
  });

  it('keep a notice each, all in the one message, and its proof names them', async () => {
    await tell(VISITS);
    await compose();
    await deliver();
    const rows = await notices();
    expect(rows).toHaveLength(6);
    expect(new Set(rows.map(({ outbox_id }) => outbox_id)).size).toBe(1);
    const { history } = (await mailProof(sample.register, { id: rows[0]!.outbox_id! }, { now }))!;
    const raw = Buffer.from((await loadOutboxBytes(sample.register, rows[0]!.outbox_id!))!.raw);
    for (const { ok, what } of await checkProof(raw, history, sample.register)) expect(ok, what).toBe(true);
    expect(historyText(history).match(/fence PR-04, visit proposed/g)).toHaveLength(6);
    expect(rows.map(({ visit_uid }) => visit_uid)).toEqual(VISITS.map(({ uid }) => uid));
  });

  it('are told again by a mail of their own where one changes before the mail has left, and none is lost or told twice', async () => {
    await tell(VISITS.slice(0, 3));
    await compose();
    const [first, second, third] = VISITS;
    await confirmVisit(sample.register, {
      uid: second!.uid,
      now,
      day: second!.firstDay,
      startsAt: '08:30',
      crewRef: null,
      sure: true,
      ...WHO,
    });
    // the mail that told of all three is taken back; what it said of the two others waits for a message again
    expect(
      (await notices()).filter(({ outbox_id, void_reason }) => outbox_id === null && void_reason === null),
    ).toHaveLength(3);
    await compose();
    const [entry, ...more] = await waiting();
    expect(more).toEqual([]);
    const mail = await simpleParser(Buffer.from((await loadOutboxBytes(sample.register, entry!.id))!.raw));
    expect(mail.subject).toBe('News of 3 visits to your fences, April 20, 2027 to May 4, 2027');
    expect(flat(mail.text)).toContain('A crew could come 2 times');
    expect(flat(mail.text)).toContain('A crew comes once on a promised day.');
    const uids = readCalendar(
      mail.attachments.find(({ filename }) => filename === 'visits.ics')!.content.toString(),
    ).events;
    expect(uids.map(({ uid, status }) => [uid.split('@')[0], status])).toEqual([
      [first!.uid, 'TENTATIVE'],
      [second!.uid, 'CONFIRMED'],
      [third!.uid, 'TENTATIVE'],
    ]);
    expect(await deliver()).toHaveLength(1);
    await compose();
    expect(await waiting()).toEqual([]);
  });

  it('change each by itself once they have been told, with an entry that changes the one of the calendar file', async () => {
    await tell(VISITS.slice(0, 2));
    await compose();
    await deliver();
    await cancelVisit(sample.register, { uid: VISITS[1]!.uid, now, ...WHO });
    await compose();
    const [raw = ''] = await deliver();
    const mail = await simpleParser(raw);
    expect(mail.subject).toContain('no crew comes on Tuesday, April 27, 2027');
    const entry = mail.attachments.find(({ filename }) => filename === 'cancel.ics')!.content.toString('utf8');
    expect(entry).toContain('METHOD:CANCEL');
    expect(readCalendar(entry).events).toMatchObject([{ uid: `${VISITS[1]!.uid}@stormpale`, sequence: 1 }]);
  });

  it('are one letter, too, and read in Spanish where the owner does', async () => {
    await enrol('es', 'letter');
    await tell(VISITS.slice(0, 2));
    expect(await compose()).toMatchObject({ letters: 1 });
    const [entry] = await waiting();
    const html = Buffer.from((await loadOutboxBytes(sample.register, entry!.id))!.raw).toString('utf8');
    expect(entry!.subject).toBe(
      '2 visitas a sus cercas que podrían hacerse, del 20 de abril de 2027 al 27 de abril de 2027',
    );
    expect(html).toContain('Una cuadrilla podría ir 2 veces: son propuestas');
    expect(html).not.toContain('archivo de calendario');
    expect(html).not.toContain('enlace a sus visitas');
  });
});
