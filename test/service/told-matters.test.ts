import { DateTime } from 'luxon';
import { simpleParser } from 'mailparser';
import { describe, expect, it } from 'vitest';
import type { WorksGain } from '../../src/notify/works-gain.ts';
import type { Register } from '../../src/register/database.ts';
import { listOfficeNotices, settleOfficeNotice } from '../../src/register/office-notices.ts';
import { listOutbox, loadOutboxBytes } from '../../src/register/outbox.ts';
import { upsertRecords } from '../../src/register/record-store.ts';
import { writeSettings } from '../../src/register/settings-store.ts';
import { composeNotices } from '../../src/service/compose-notices.ts';
import { runSweep } from '../../src/service/run-sweep.ts';
import { changeFences, fenceRegister, manyFences, noticeLines, SENDER } from './fence-register.ts';

const old = { installedEarliest: '2008-04-15', installedLatest: '2008-04-15' };
const at = (iso: string) => () => DateTime.fromISO(iso, { zone: 'utc' });
const sweep = (register: Register, iso: string) => runSweep(register, { now: at(iso) });
const compose = (register: Register, iso: string) => composeNotices(register, { now: at(iso), sender: SENDER });

async function textOf(register: Register, id: number): Promise<string> {
  const mail = await simpleParser(Buffer.from((await loadOutboxBytes(register, id))?.raw ?? []));
  return (mail.text ?? '').replace(/\s+/g, ' ');
}

const inspection = {
  fenceRef: 'F-000',
  inspector: 'Bo Fenn',
  qualification: '',
  method: 'awl-or-probe',
  instrument: '',
  notes: '',
};
const reading = {
  groundlineKind: null,
  groundlineMm: null,
  cavityMm: null,
  leanDegrees: null,
  collarCracked: null,
  railConnection: null,
  trimmerCutMm: null,
  closedOff: false,
  sure: false,
  notes: '',
} as const;

async function inspect(
  { db }: Register,
  ref: string,
  day: string,
  readings: readonly (Partial<typeof reading> | Readonly<Record<string, unknown>>)[],
): Promise<void> {
  await upsertRecords(db, 'inspections', [{ ...inspection, ref, day } as never], '2027-01-01T00:00:00.000Z');
  const rows = readings.map((each, index) => ({ ...reading, inspectionRef: ref, post: index + 2, ...each }));
  await upsertRecords(db, 'readings', rows as never, '2027-01-01T00:00:00.000Z');
}

describe('the reminder before a season', () => {
  it('comes once a season, from the sixtieth day before it opens at its site, while the fence is short', async () => {
    const register = await fenceRegister({ fences: manyFences(1, old) });
    await sweep(register, '2026-07-01T12:00:00Z');
    expect(await noticeLines(register)).toEqual(['F-000: short']);
    await sweep(register, '2027-01-15T12:00:00Z');
    // in New York it is still April 1
    await sweep(register, '2027-04-02T02:00:00Z');
    expect(await noticeLines(register)).toEqual(['F-000: short']);
    for (const day of ['02', '03', '20']) await sweep(register, `2027-04-${day}T12:00:00Z`);
    expect(await noticeLines(register)).toEqual(['F-000: short', 'F-000: reminder']);
    await sweep(register, '2028-04-20T12:00:00Z');
    expect((await noticeLines(register)).filter((line) => line.endsWith('reminder'))).toHaveLength(2);
  });

  it('says when the season opens, and is void once it has', async () => {
    const register = await fenceRegister({ fences: manyFences(1, old) });
    await sweep(register, '2026-07-01T12:00:00Z');
    await compose(register, '2026-07-01T12:00:00Z');
    await sweep(register, '2027-04-20T12:00:00Z');
    await compose(register, '2027-04-20T12:00:00Z');
    const [reminder] = await listOutbox(register, { limit: 9 });
    expect(reminder?.subject).toContain('season 2027 opens on June 1, 2027, and it is still short');
    expect(await textOf(register, reminder?.id ?? 0)).toContain(
      'by May 25, 2027, so that new footings are ready when season 2027 opens on June 1, 2027',
    );
    await sweep(register, '2028-05-30T12:00:00Z');
    expect(await compose(register, '2028-06-01T12:00:00Z')).toMatchObject({ failures: [] });
    const last = await register.db
      .selectFrom('notices')
      .select(['matter', 'void_reason'])
      .orderBy('id', 'desc')
      .limit(1)
      .execute();
    expect(last).toEqual([{ matter: 'reminder', void_reason: 'the season it reminded of has opened' }]);
  });

  it('does not come where the owner has just been told, nor where the office wants none', async () => {
    const register = await fenceRegister({ fences: manyFences(1, old) });
    await sweep(register, '2027-04-10T12:00:00Z');
    await sweep(register, '2027-05-20T12:00:00Z');
    expect(await noticeLines(register)).toEqual(['F-000: short']);
    await writeSettings(register.db, { reminderDays: 0 }, '2027-06-01T00:00:00Z');
    await sweep(register, '2028-04-20T12:00:00Z');
    expect((await noticeLines(register)).filter((line) => line.endsWith('reminder'))).toEqual([]);
  });
});

describe('danger', () => {
  it('is told by the sweep after the finding was entered, once, to the owner and to the office', async () => {
    const register = await fenceRegister({ fences: manyFences(1, old) });
    await sweep(register, '2027-01-10T12:00:00Z');
    await compose(register, '2027-01-10T12:00:00Z');
    await inspect(register, 'I-1', '2027-01-12', [{ groundlineKind: 'broken' }, { closedOff: true }]);
    await sweep(register, '2027-01-13T12:00:00Z');
    await sweep(register, '2027-01-14T12:00:00Z');
    expect((await noticeLines(register)).filter((line) => line.endsWith('dangerous'))).toHaveLength(1);
    await compose(register, '2027-01-14T12:00:00Z');
    const [mail] = await listOutbox(register, { limit: 1 });
    expect(mail?.subject).toContain('keep away, post 2 is broken and post 3 is closed off');
    const [office] = await listOfficeNotices(register);
    expect(office).toMatchObject({ matter: 'dangerous', fenceRef: 'F-000' });
    expect(await settleOfficeNotice(register, office?.id ?? 0, { at: '2027-01-15T00:00:00Z', by: 'Bo' })).toBe(true);
    expect(await settleOfficeNotice(register, office?.id ?? 0, { at: '2027-01-15T00:00:00Z', by: '' })).toBe(false);
    expect(await listOfficeNotices(register)).toEqual([]);
    await inspect(register, 'I-2', '2027-01-20', [{ post: 4, leanDegrees: 30 }]);
    await sweep(register, '2027-01-21T12:00:00Z');
    await compose(register, '2027-01-21T12:00:00Z');
    expect((await listOfficeNotices(register)).map(({ occasion }) => occasion)).toEqual(['leaning 4; told 2027-01-21']);
  });

  it('has a message of its own where an owner has other news of many fences', async () => {
    const register = await fenceRegister({ fences: manyFences(6, old) });
    await inspect(register, 'I-1', '2027-01-05', [{ groundlineKind: 'broken' }]);
    await sweep(register, '2027-01-10T12:00:00Z');
    expect(await compose(register, '2027-01-10T12:00:00Z')).toMatchObject({ mails: 2 });
    const subjects = (await listOutbox(register, { limit: 9 })).map(({ subject }) => subject);
    expect(subjects.some((subject) => subject.startsWith('5 of your fences have news'))).toBe(true);
    expect(subjects.some((subject) => subject.includes('keep away, post 2 is broken'))).toBe(true);
  });
});

it('tells the office alone of readings that disagree', async () => {
  const register = await fenceRegister({
    fences: manyFences(1, {
      installedEarliest: '2019-04-15',
      installedLatest: '2019-04-15',
      treatmentClass: 'ground-contact',
    }),
  });
  await sweep(register, '2026-12-10T12:00:00Z');
  const before = await noticeLines(register);
  await inspect(
    register,
    'I-1',
    '2026-12-12',
    [1, 2, 3].map(() => ({ groundlineKind: 'depth', groundlineMm: 25 })),
  );
  await sweep(register, '2026-12-13T12:00:00Z');
  await sweep(register, '2026-12-14T12:00:00Z');
  expect((await listOfficeNotices(register)).map(({ matter, occasion }) => `${matter}: ${occasion}`)).toEqual([
    'readings disagree: readings to 2026-12-12',
  ]);
  expect((await noticeLines(register)).filter((line) => line.includes('disagree'))).toEqual([]);
  expect(before.length).toBeLessThanOrEqual(1);
});

describe('works done', () => {
  it('are told with what they gained, once, and history is not', async () => {
    const register = await fenceRegister({ fences: manyFences(1, old) });
    const works = (ref: string, day: string) => ({ ref, fenceRef: 'F-000', day, kind: 'post-swap', posts: 'all' });
    const filled = {
      sectionKind: 'rectangular',
      sectionWidthMm: 88.9,
      sectionDepthMm: 88.9,
      species: 'southern-pine',
      grade: 'no-2',
      incised: false,
      treatmentClass: 'ground-contact',
      momentCapacityNm: null,
      yearsEffective: null,
      embedmentM: null,
      footing: null,
      footingDiameterM: null,
      postSpacingM: null,
      positionsM: null,
      retentionKgM3: null,
      note: '',
    };
    await sweep(register, '2027-01-10T12:00:00Z');
    await upsertRecords(
      register.db,
      'works',
      [{ ...filled, ...works('W-1', '2026-12-20') } as never, { ...filled, ...works('W-0', '2012-03-01') } as never],
      '2027-01-11T00:00:00.000Z',
    );
    await sweep(register, '2027-01-12T12:00:00Z');
    await sweep(register, '2027-01-13T12:00:00Z');
    const [notice] = await register.db.selectFrom('notices').selectAll().where('matter', '=', 'works done').execute();
    expect(notice?.occasion).toBe('W-1');
    const { gain } = JSON.parse(notice?.facts ?? '{}') as { readonly gain: WorksGain };
    expect(gain.with.snapMps).toBeGreaterThan(1.2 * (gain.without?.snapMps ?? Number.POSITIVE_INFINITY));
    await changeFences(register, [{ ref: 'F-000', ...old }]);
    await compose(register, '2027-01-13T12:00:00Z');
    const mail = (await listOutbox(register, { limit: 9 })).find(({ subject }) =>
      subject.includes('without the works'),
    );
    expect(await textOf(register, mail?.id ?? 0)).toMatch(
      /Done: post swap of December 20, 2026\. In season 2027 it snaps at \d+ mph and leans at \d+ mph; without them it would snap at \d+ mph/,
    );
    expect(
      await register.db.selectFrom('notices').select('id').where('matter', '=', 'works done').execute(),
    ).toHaveLength(1);
  });
});
