import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { listOutbox } from '../../src/register/outbox.ts';
import { listOutboxPage, type OutboxPageQuery, readOutboxDetail } from '../../src/register/outbox-page.ts';
import { type SampleApp, sampleApp } from '../web/sample-app.ts';

describe('the pages of the outbox', () => {
  let sample: SampleApp;
  beforeAll(async () => {
    sample = await sampleApp();
    await sample.register.db.updateTable('notices').set({ held: null }).execute();
    await sample.sendMail();
  });
  afterAll(() => sample.close());

  /** Every page of a query, one after another. */
  async function everyPage(
    query: Omit<OutboxPageQuery, 'limit' | 'before'>,
    limit: number,
  ): Promise<readonly number[]> {
    const ids: number[] = [];
    for (let before: number | null = null; ; ) {
      const page = await listOutboxPage(sample.register, { ...query, limit, ...(before === null ? {} : { before }) });
      ids.push(...page.entries.map(({ id }) => id));
      if (page.next === null) return ids;
      before = page.next;
    }
  }

  it('hold every message once, the newest first, whatever their size', async () => {
    const all = (await listOutbox(sample.register, { limit: 1000 })).map(({ id }) => id);
    expect(all.length).toBeGreaterThan(2);
    for (const limit of [1, 2, 3, 100]) expect(await everyPage({}, limit)).toEqual(all);
  });

  it('hold what was asked for and nothing else', async () => {
    const entries = await listOutbox(sample.register, { limit: 1000 });
    const sent = entries.filter(({ state }) => state === 'sent').map(({ id }) => id);
    expect(await everyPage({ state: 'sent' }, 1)).toEqual(sent);
    const quinn = entries.filter(({ ownerRef }) => ownerRef === 'QUINN').map(({ id }) => id);
    expect(quinn.length).toBeGreaterThan(0);
    expect(await everyPage({ ownerRef: 'QUINN' }, 1)).toEqual(quinn);
    const about = async (matter: string) => {
      const found = await Promise.all(entries.map(({ id }) => readOutboxDetail(sample.register, id)));
      return found.flatMap((each) => (each?.notices.some((notice) => notice.matter === matter) ? [each.id] : []));
    };
    expect((await about('short')).length).toBeGreaterThan(0);
    expect(await everyPage({ matter: 'short' }, 1)).toEqual(await about('short'));
    expect(await everyPage({ matter: 'short', ownerRef: 'MASON' }, 1)).toEqual([]);
  });
});
