import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { beginKeyedWrite, endKeyedWrite } from '../../../src/register/api-answer-store.ts';
import { type SampleApp, sampleApp } from '../sample-app.ts';
import { type ApiClient, apiClient } from './api-client.ts';

const row = (ref: string) => ({ ref, name: 'Ned Alder', kind: 'person', channel: 'mail', email: 'ned@example.org' });

describe('a write that carries a key', () => {
  let sample: SampleApp;
  let program: ApiClient;
  beforeAll(async () => {
    sample = await sampleApp({ swept: false });
  });
  afterAll(() => sample.close());
  beforeEach(async () => {
    program = await apiClient(sample, ['write-register']);
  });
  const put = (ref: string, key: string) =>
    program.ask('PUT', '/api/v1/records/owners', { rows: [row(ref)] }, { 'idempotency-key': key });

  it('is done once and answered the same again, word by word', async () => {
    const first = await put('K-1', 'one');
    const said = await first.text();
    expect(JSON.parse(said)).toMatchObject({ created: 1 });
    const again = await put('K-1', 'one');
    expect(again.headers.get('idempotency-replayed')).toBe('true');
    expect(await again.text()).toBe(said);
    // without the key it is another write, which changes nothing
    const plain = await program.ask('PUT', '/api/v1/records/owners', { rows: [row('K-1')] });
    expect(await plain.json()).toMatchObject({ created: 0, unchanged: 1 });
  });

  it('keeps a refusal too', async () => {
    const bad = { rows: [{ ...row('K-2'), kind: 'club' }] };
    const refused = await program.ask('PUT', '/api/v1/records/owners', bad, { 'idempotency-key': 'bad' });
    const again = await program.ask('PUT', '/api/v1/records/owners', bad, { 'idempotency-key': 'bad' });
    expect([refused.status, again.status]).toEqual([422, 422]);
    expect(await again.text()).toBe(await refused.text());
    expect(again.headers.get('content-type')).toBe('application/problem+json');
  });

  it('is refused with the key of another one', async () => {
    await put('K-3', 'three');
    const other = await put('K-4', 'three');
    expect(other.status).toBe(422);
    expect(await other.json()).toMatchObject({ title: 'That key was used for something else' });
  });

  it('belongs to one program: another may use the same key', async () => {
    await put('K-5', 'five');
    const stranger = await apiClient(sample, ['write-register'], 'another');
    const theirs = await stranger.ask(
      'PUT',
      '/api/v1/records/owners',
      { rows: [row('K-6')] },
      { 'idempotency-key': 'five' },
    );
    expect(await theirs.json()).toMatchObject({ created: 1 });
  });

  it('is done once though it comes many times at once', async () => {
    const answers = await Promise.all(Array.from({ length: 8 }, () => put('K-7', 'seven')));
    const statuses = answers.map(({ status }) => status);
    expect(statuses.filter((status) => status === 200).length).toBeGreaterThan(0);
    expect(statuses.every((status) => status === 200 || status === 409)).toBe(true);
    const created = await Promise.all(
      answers
        .filter(({ status }) => status === 200)
        .map(async (answer) => ((await answer.json()) as { created: number }).created),
    );
    expect(created.every((count) => count === 1)).toBe(true);
  });

  it('is told so while the first is at work, and taken up again once that is long ago', async () => {
    const { db } = sample.register;
    const [{ id }] = (await db.selectFrom('api_tokens').select('id').orderBy('id', 'desc').limit(1).execute()) as [
      { id: number },
    ];
    const write = { tokenId: id, key: 'nine', requestSha256: 'a'.repeat(64) };
    const at = (now: string, givenUpBefore: string, forgottenBefore = '2026-01-01T00:00:00Z') =>
      beginKeyedWrite(db, write, { now, givenUpBefore, forgottenBefore });
    expect((await at('2026-11-24T12:00:00Z', '2026-11-24T11:50:00Z')).kind).toBe('begun');
    expect((await at('2026-11-24T12:05:00Z', '2026-11-24T11:55:00Z')).kind).toBe('at work');
    expect((await at('2026-11-24T12:11:00Z', '2026-11-24T12:01:00Z')).kind).toBe('begun');
    await endKeyedWrite(db, write, { status: 200, contentType: 'application/json', body: '{}' });
    expect((await at('2026-11-24T12:12:00Z', '2026-11-24T12:02:00Z')).kind).toBe('answered');
    expect((await at('2026-12-03T12:12:00Z', '2026-12-03T12:02:00Z', '2026-11-26T12:12:00Z')).kind).toBe('begun');
    await endKeyedWrite(db, write, null);
    expect((await at('2026-12-03T12:13:00Z', '2026-12-03T12:03:00Z')).kind).toBe('begun');
  });
});
