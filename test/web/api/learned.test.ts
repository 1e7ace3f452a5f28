import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { learnedInForce } from '../../../src/register/learned-store.ts';
import { importFiles } from '../../register/made-up-register.ts';
import { LEARNING_FILES } from '../records/learning-files.ts';
import { type SampleApp, sampleApp } from '../sample-app.ts';
import { type ApiClient, apiClient } from './api-client.ts';

describe('what was learned, by the API', { timeout: 240_000 }, () => {
  let sample: SampleApp;
  let program: ApiClient;
  beforeAll(async () => {
    sample = await sampleApp({ swept: false, catcher: false });
    program = await apiClient(sample, ['read-register', 'write-register']);
  });
  afterAll(() => sample.close());
  const inForce = () => learnedInForce(sample.register.db);

  it('is nothing where nothing was', async () => {
    expect(await program.json('GET', '/api/v1/learned')).toMatchObject({ quantities: [], history: [] });
    await program.json('POST', '/api/v1/learned/accept', { all: true }, 409);
    await program.json('POST', '/api/v1/learned/revert', { version: 1 }, 409);
    await program.json('POST', '/api/v1/learned/accept', {}, 422);
    await program.json('POST', '/api/v1/learned/accept', { all: true, only: ['footing/sand'] }, 422);
  });

  it('is shown, looked ahead at, accepted with a name and a note, and taken back after another look', async () => {
    expect((await importFiles(sample.register, LEARNING_FILES)).faults).toEqual([]);
    const { quantities } = await program.json('GET', '/api/v1/learned');
    const ready = (quantities as { key: string; state: string }[]).filter(({ state }) => state === 'can be accepted');
    const [key] = ready.map((each) => each.key);
    expect(key).toMatch(/^ground-contact\/\d$/);

    const looked = await program.json('POST', '/api/v1/learned/accept', { only: [key], preview: true });
    expect(looked).toMatchObject({ applied: false, version: { number: 1, values: [{ key }] } });
    expect(looked.fences).toBeGreaterThan(5);
    expect(looked.preview).toMatchObject({ standings: { named: expect.any(Array) as unknown }, unread: [] });
    expect(await inForce()).toBeNull();

    const accepted = await program.json('POST', '/api/v1/learned/accept', { only: [key], note: 'spring' });
    expect(accepted).toMatchObject({ applied: true, fences: looked.fences, version: { by: 'program tests' } });
    expect(await inForce()).toMatchObject({ number: 1, note: 'spring' });
    await program.json('POST', '/api/v1/learned/accept', { only: [key] }, 409);
    const unknown = await program.json('POST', '/api/v1/learned/accept', { only: ['footing/clay'] }, 409);
    expect(unknown.detail).toContain('footing/clay');

    const back = await program.json('POST', '/api/v1/learned/revert', { version: 1, preview: true });
    expect(back).toMatchObject({ applied: false, reverted: 1, inForce: null, fences: looked.fences });
    expect(await inForce()).not.toBeNull();
    await program.json('POST', '/api/v1/learned/revert', { version: 2 }, 409);
    await program.json('POST', '/api/v1/learned/revert', { version: 1 });
    expect(await inForce()).toBeNull();
    expect((await program.json('GET', '/api/v1/learned')).history).toMatchObject([
      { act: 'accepted', number: 1, inForce: false },
      { act: 'reverted', reverted: 1 },
    ]);
  });

  it('is accepted by a token that may write, and by no other', async () => {
    const reader = await apiClient(sample, ['read-register', 'release-notices'], 'reader');
    await reader.json('POST', '/api/v1/learned/accept', { all: true }, 403);
    await reader.json('POST', '/api/v1/learned/revert', { version: 1 }, 403);
  });
});
