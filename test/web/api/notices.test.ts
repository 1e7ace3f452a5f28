import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { listHeldNotices } from '../../../src/register/held-notices.ts';
import { writeSettings } from '../../../src/register/settings-store.ts';
import { runSweep } from '../../../src/service/run-sweep.ts';
import { type SampleApp, sampleApp } from '../sample-app.ts';
import { SAMPLE_NOW } from '../sample-register.ts';
import { type ApiClient, apiClient } from './api-client.ts';

interface Notice {
  readonly id: number;
  readonly ownerRef: string;
}
interface Message {
  readonly id: number;
  readonly channel: 'mail' | 'letter';
  readonly state: string;
}

describe('notices by the API', { timeout: 60_000 }, () => {
  let sample: SampleApp;
  let program: ApiClient;
  beforeEach(async () => {
    sample = await sampleApp({ swept: false });
    await writeSettings(sample.register.db, { holdFirstSweep: 'yes' }, '2026-11-24T12:00:00.000Z');
    await runSweep(sample.register, { now: SAMPLE_NOW });
    program = await apiClient(sample, ['read-register', 'release-notices']);
  });
  afterEach(() => sample.close());
  const rowsOf = async <Row>(path: string): Promise<readonly Row[]> => (await program.json('GET', path)).rows as Row[];

  it('wait page after page in the order of owner, fence and number, each once', async () => {
    const all = await listHeldNotices(sample.register);
    const walked = (await program.walk<Notice>('/api/v1/notices/held', 2)).map(({ id }) => id);
    expect(walked).toEqual(all.map(({ id }) => id));
    expect(walked.length).toBeGreaterThan(3);
    const ofOne = await rowsOf<Notice>('/api/v1/notices/held?owner=QUINN');
    expect([...new Set(ofOne.map(({ ownerRef }) => ownerRef))]).toEqual(['QUINN']);
    await program.json('GET', '/api/v1/notices/held?cursor=xyz', undefined, 400);
    await program.json('GET', '/api/v1/notices/held?matter=weather', undefined, 400);
  });

  it('are looked at, released up to what was seen, and held again until a message is written', async () => {
    const all = await rowsOf<Notice>('/api/v1/notices/held');
    const ids = all.map(({ id }) => id).toSorted((a, b) => a - b);
    const looked = await program.json('POST', '/api/v1/notices/release', { all: true, preview: true });
    expect(looked).toEqual({
      applied: false,
      notices: all.length,
      owners: new Set(all.map((each) => each.ownerRef)).size,
    });
    expect(await rowsOf('/api/v1/notices/held')).toHaveLength(all.length);
    // no office has said who it is: nothing is written, so that all of it can be held again
    const released = await program.json('POST', '/api/v1/notices/release', { all: true, upTo: ids[2] });
    expect(released).toMatchObject({ applied: true, notices: 3 });
    const unwritten = await rowsOf<Notice>('/api/v1/notices/released');
    const again = await program.json('POST', '/api/v1/notices/hold-again', {
      ids: [...unwritten.map(({ id }) => id), 9999],
    });
    expect(again).toEqual({ held: unwritten.length });
    expect(await rowsOf('/api/v1/notices/released')).toEqual([]);
    await program.json('POST', '/api/v1/notices/release', { owner: 'NOBODY' }, 404);
    await program.json('POST', '/api/v1/notices/release', { owner: 'NOBODY', preview: true }, 404);
    await program.json('POST', '/api/v1/notices/hold-again', { ids: [] }, 422);
  });

  it('can be read before they go out, as their owner would', async () => {
    const sentence = 'We looked at all of them <together>.';
    const query = new URLSearchParams({ owner: 'HOA', sentence });
    const [message] = await rowsOf<{ html: string; notices: number }>(`/api/v1/notices/preview?${query.toString()}`);
    expect(message?.html).toContain('We looked at all of them &lt;together&gt;.');
    expect(message?.notices).toBeGreaterThan(0);
    await program.json('GET', '/api/v1/notices/preview?owner=NOBODY', undefined, 404);
    await program.json('GET', '/api/v1/notices/preview', undefined, 400);
  });

  it('are held by matter from then on, and no others', async () => {
    const before = await rowsOf<{ matter: string; held: boolean }>('/api/v1/notices/matters');
    expect(before.every(({ held }) => !held)).toBe(true);
    const now = await program.json('PUT', '/api/v1/notices/matters', { held: ['closing', 'two thirds'] });
    const held = (now.rows as { matter: string; held: boolean }[]).filter((each) => each.held);
    expect(held.map(({ matter }) => matter).toSorted()).toEqual(['closing', 'two thirds']);
    await program.json('PUT', '/api/v1/notices/matters', { held: [] });
    expect(await rowsOf('/api/v1/notices/matters')).toEqual(before);
    await program.json('PUT', '/api/v1/notices/matters', { held: ['weather'] }, 422);
  });

  it('become messages that are looked at, tried again, taken out and posted', async () => {
    await program.json('POST', '/api/v1/notices/release', { all: true });
    await sample.sendMail();
    const messages = await rowsOf<Message>('/api/v1/outbox');
    const letter = messages.find(({ channel }) => channel === 'letter');
    const mail = messages.find(({ channel }) => channel === 'mail');
    if (!letter || !mail) throw new Error('the sample has no letter or no mail');
    const detail = await program.json('GET', `/api/v1/outbox/${letter.id}`);
    expect((detail.notices as unknown[]).length).toBeGreaterThan(0);
    const text = await program.json('GET', `/api/v1/outbox/${letter.id}/message`);
    expect(String(text.html)).toContain('<html');
    const posted = await program.json('POST', `/api/v1/outbox/${letter.id}/posted`, { on: '2026-11-23' });
    expect(posted).toMatchObject({ state: 'sent', postedOn: '2026-11-23', postedBy: 'program tests' });
    await program.json('POST', `/api/v1/outbox/${letter.id}/posted`, { on: '2026-11-23' }, 409);
    // a mail that has left is neither tried again nor taken out
    expect(mail.state).toBe('sent');
    await program.json('POST', `/api/v1/outbox/${mail.id}/cancel`, undefined, 409);
    await sample.register.db
      .updateTable('outbox')
      .set({ state: 'parked', sent_at: null })
      .where('id', '=', mail.id)
      .execute();
    expect(await program.json('POST', `/api/v1/outbox/${mail.id}/retry`)).toMatchObject({ state: 'queued' });
    expect(await program.json('POST', '/api/v1/outbox/retry')).toEqual({ queued: 1 });
    expect(await program.json('POST', `/api/v1/outbox/${mail.id}/cancel`)).toMatchObject({ state: 'cancelled' });
    await program.json('POST', '/api/v1/outbox/9999/retry', undefined, 404);
    expect(await rowsOf('/api/v1/outbox?owner=QUINN&matter=weather').catch(() => 'refused')).toBe('refused');
    expect(await rowsOf('/api/v1/stopped-addresses')).toEqual([]);
  });

  it('are not released by a token that may only read', async () => {
    const reader = await apiClient(sample, ['read-register', 'write-register', 'change-visits'], 'reader');
    for (const [method, path, body] of [
      ['POST', 'notices/release', { all: true }],
      ['POST', 'notices/hold-again', { ids: [1] }],
      ['PUT', 'notices/matters', { held: [] }],
      ['POST', 'outbox/1/cancel', {}],
      ['POST', 'outbox/retry', {}],
    ] as const) {
      await reader.json(method, `/api/v1/${path}`, body, 403);
    }
    expect((await listHeldNotices(sample.register)).length).toBeGreaterThan(3);
  });
});
