import { DateTime } from 'luxon';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { addFeedLink, revokeFeedLink } from '../../src/register/feed-link-store.ts';
import { readRecord, upsertRecords } from '../../src/register/record-store.ts';
import type { Visit } from '../../src/season/visit/visit.ts';
import { calendarFeed, calendarFeedBehind } from '../../src/service/calendar-feed.ts';
import type { Clock } from '../../src/service/clock.ts';
import { newFeedLink, storedSecret } from '../../src/service/feed-links.ts';
import { SAMPLE_NOW } from '../web/sample-register.ts';
import { ImportingCalendar, readCalendar } from './calendar-importer.ts';
import { madeUpVisit, storeVisits, visitingRegister } from './visiting-register.ts';

const at =
  (moment: string): Clock =>
  () =>
    DateTime.fromISO(moment, { zone: 'utc' });

describe('the calendar of a crew and of a site', () => {
  let sample: Awaited<ReturnType<typeof visitingRegister>>;
  beforeEach(async () => {
    sample = await visitingRegister();
  });
  afterEach(() => sample.remove());

  const feed = async (kind: 'crew' | 'site', ref: string, now: Clock = SAMPLE_NOW): Promise<string> =>
    (await calendarFeed(sample.register, { kind, ref }, now))!.text;
  const events = async (kind: 'crew' | 'site', ref: string, now?: Clock) =>
    readCalendar(await feed(kind, ref, now)).events;

  it('tells the crew how to get in and whom to speak to, and the site what is done and by whom', async () => {
    const { db } = sample.register;
    const fence = (await readRecord(db, 'fences', 'PR-02'))!;
    await upsertRecords(db, 'fences', [{ ...fence, accessNote: 'Gate code 4471; dog' }], '2026-11-24T12:00:00.000Z');
    await storeVisits(sample.register, [madeUpVisit({ uid: 'V-1', note: 'Park on the street' })]);
    const [ofCrew] = await events('crew', 'north');
    expect(ofCrew!.summary).toBe('Proposed: Pelican Reach – post swap, 1 fence');
    for (const said of [
      'PR-02: post swap, posts 2, 5',
      'Park on the street',
      'Gate code 4471; dog',
      'Pelican Reach Association',
      '811 is to be called by 2027-01-08',
    ]) {
      expect(ofCrew!.description).toContain(said);
    }
    const [ofSite] = await events('site', 'PELICAN');
    expect(ofSite!.description).toBe('Crew: North crew; wells, posts\nPR-02: post swap, posts 2, 5');
    for (const text of [await feed('crew', 'north'), await feed('site', 'PELICAN')]) expect(text).not.toContain('520');
    expect(ofSite!.uid).toBe(ofCrew!.uid);
  });

  it('shows each crew and each site its own', async () => {
    await storeVisits(sample.register, [
      madeUpVisit({ uid: 'V-1' }),
      madeUpVisit({ uid: 'V-2', crewRef: 'south' }),
      madeUpVisit({
        uid: 'V-3',
        siteRef: 'SKERRY',
        items: [{ ...madeUpVisit({ uid: 'x' }).items[0]!, fenceRef: 'SK-01' }],
      }),
    ]);
    const uids = async (kind: 'crew' | 'site', ref: string) => (await events(kind, ref)).map(({ uid }) => uid);
    expect(await uids('crew', 'north')).toEqual(['V-1@stormpale', 'V-3@stormpale']);
    expect(await uids('crew', 'south')).toEqual(['V-2@stormpale']);
    expect(await uids('site', 'PELICAN')).toEqual(['V-1@stormpale', 'V-2@stormpale']);
    expect(await uids('site', 'SKERRY')).toEqual(['V-3@stormpale']);
  });

  it('takes the times from the zone of the site and the people who go out', async () => {
    await storeVisits(sample.register, [
      madeUpVisit({ uid: 'V-1', startsAt: '08:30' }),
      madeUpVisit({
        uid: 'V-2',
        crewRef: 'south',
        startsAt: '08:30',
        siteRef: 'SKERRY',
        items: [{ ...madeUpVisit({ uid: 'x' }).items[0]!, fenceRef: 'SK-01' }],
      }),
    ]);
    // Chicago, two people: 2.3 hours; Halifax, one person: 4.6 hours.
    expect((await events('crew', 'north'))[0]).toMatchObject({
      start: '2027-01-11T14:30:00.000Z',
      end: '2027-01-11T17:00:00.000Z',
    });
    expect((await events('crew', 'south'))[0]).toMatchObject({
      start: '2027-01-11T12:30:00.000Z',
      end: '2027-01-11T17:15:00.000Z',
    });
  });

  it('is imported without duplicates after a re-plan: what moved moves, what was dropped goes', async () => {
    const first = ['moved', 'dropped', 'kept', 'missed', 'handed-over'].map((uid) => madeUpVisit({ uid }));
    await storeVisits(sample.register, first);
    const [crew, site] = [new ImportingCalendar(), new ImportingCalendar()];
    crew.import(await feed('crew', 'north'));
    site.import(await feed('site', 'PELICAN'));
    expect(crew.shown).toHaveLength(5);

    const later = (uid: string, change: Partial<Visit>): Visit =>
      madeUpVisit({ uid, sequence: 1, changedAt: '2026-12-01T09:00:00.000Z', ...change });
    await storeVisits(sample.register, [
      later('moved', { firstDay: '2027-02-01', lastDay: '2027-02-02', state: 'confirmed' }),
      later('dropped', { state: 'cancelled' }),
      later('missed', { state: 'missed' }),
      later('handed-over', { crewRef: 'south', firstDay: '2027-02-03', lastDay: '2027-02-03' }),
      madeUpVisit({ uid: 'added', firstDay: '2027-02-08', lastDay: '2027-02-08' }),
    ]);
    const now = at('2026-12-01T12:00:00Z');
    for (let again = 0; again < 2; again += 1) {
      crew.import(await feed('crew', 'north', now));
      site.import(await feed('site', 'PELICAN', now));
    }

    expect(crew.all.map(({ uid }) => uid.replace('@stormpale', ''))).toEqual([
      'added',
      'dropped',
      'handed-over',
      'kept',
      'missed',
      'moved',
    ]);
    expect(crew.shown.map(({ uid, start, end }) => [uid, start, end])).toEqual([
      ['added@stormpale', '2027-02-08', '2027-02-09'],
      ['kept@stormpale', '2027-01-11', '2027-01-12'],
      ['moved@stormpale', '2027-02-01', '2027-02-03'],
    ]);
    expect(site.shown.map(({ uid, start }) => [uid, start])).toEqual([
      ['added@stormpale', '2027-02-08'],
      ['handed-over@stormpale', '2027-02-03'],
      ['kept@stormpale', '2027-01-11'],
      ['moved@stormpale', '2027-02-01'],
    ]);
    expect(crew.all.find(({ uid }) => uid.startsWith('moved'))).toMatchObject({ sequence: 1, status: 'CONFIRMED' });
    const south = new ImportingCalendar();
    south.import(await feed('crew', 'south', now));
    expect(south.shown.map(({ uid }) => uid)).toEqual(['handed-over@stormpale']);
  });

  it('keeps what was cancelled for sixty days and what is over for a year', async () => {
    await storeVisits(sample.register, [
      madeUpVisit({ uid: 'off', state: 'cancelled', sequence: 1, changedAt: '2026-12-01T09:00:00.000Z' }),
      madeUpVisit({ uid: 'over', state: 'done' }),
    ]);
    const uids = async (moment: string) => (await events('crew', 'north', at(moment))).map(({ uid }) => uid);
    expect(await uids('2027-01-30T08:00:00Z')).toEqual(['off@stormpale', 'over@stormpale']);
    expect(await uids('2027-01-30T10:00:00Z')).toEqual(['over@stormpale']);
    expect(await uids('2028-01-12T12:00:00Z')).toEqual(['over@stormpale']);
    expect(await uids('2028-01-14T12:00:00Z')).toEqual([]);
  });

  it('is the same, tag and all, as long as nothing changed', async () => {
    await storeVisits(sample.register, [madeUpVisit({ uid: 'V-1' })]);
    const made = (now: Clock) => calendarFeed(sample.register, { kind: 'crew', ref: 'north' }, now);
    expect(await made(at('2026-11-25T00:00:00Z'))).toEqual(await made(SAMPLE_NOW));
    const before = (await made(SAMPLE_NOW))!.etag;
    await storeVisits(sample.register, [madeUpVisit({ uid: 'V-1', sequence: 1, note: 'Ring first' })]);
    expect((await made(SAMPLE_NOW))!.etag).not.toBe(before);
  });

  it('answers to the secret only, until it is revoked', async () => {
    await storeVisits(sample.register, [madeUpVisit({ uid: 'V-1' })]);
    const { db } = sample.register;
    const made = await newFeedLink(
      db,
      { kind: 'crew', ref: 'north' },
      { publicUrl: 'https://fences.example.org/', now: SAMPLE_NOW },
    );
    const secret = /^https:\/\/fences\.example\.org\/feed\/([A-Za-z0-9_-]{43})\.ics$/.exec(made.url)![1]!;
    const stored = await db.selectFrom('feed_links').selectAll().execute();
    expect(JSON.stringify(stored)).not.toContain(secret);
    expect(stored[0]!.token_sha256).toBe(storedSecret(secret));
    const ask = (text: string) => calendarFeedBehind(sample.register, text, SAMPLE_NOW);
    expect((await ask(secret))?.text).toContain('UID:V-1@stormpale');
    for (const wrong of [
      '',
      secret.slice(1),
      `${secret}x`,
      stored[0]!.token_sha256,
      secret.replace(/.$/, (last) => (last === 'A' ? 'B' : 'A')),
    ]) {
      expect(await ask(wrong), wrong).toBeNull();
    }
    await revokeFeedLink(db, made.link.id, '2026-11-24T13:00:00.000Z');
    expect(await ask(secret)).toBeNull();
  });

  it('has nothing to show of a crew that is not in the register', async () => {
    const secret = 'a'.repeat(43);
    await addFeedLink(
      sample.register.db,
      { kind: 'crew', ref: 'gone' },
      storedSecret(secret)!,
      '2026-11-24T12:00:00.000Z',
    );
    expect(await calendarFeedBehind(sample.register, secret, SAMPLE_NOW)).toBeNull();
  });
});
