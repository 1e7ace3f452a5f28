import { afterEach, describe, expect, it } from 'vitest';
import { readImportDraft } from '../../src/register/import-draft-store.ts';
import { keepForImport } from '../../src/service/import-files.ts';
import { createLog } from '../../src/service/log.ts';
import { createLongWork, type LongWork } from '../../src/service/long-work.ts';
import { SAMPLE_NOW, sampleRegister } from '../web/sample-register.ts';

const OWNERS = 'ref,name,kind,channel,email\nNEW-1,Ida Marsh,person,mail,ida@example.org\n';
const UNTIL_THE_END = Number.POSITIVE_INFINITY;

describe('long work beside the pages', { timeout: 180_000 }, () => {
  const closing: (() => Promise<void>)[] = [];
  afterEach(async () => {
    for (const close of closing.splice(0).reverse()) await close();
  });

  async function workOf(patienceMs: number, isBroken = false) {
    const sample = await sampleRegister({ swept: false });
    const register = { ...sample.register, path: isBroken ? sample.folder : sample.register.path };
    const work = createLongWork({ register, clock: SAMPLE_NOW, log: createLog('silent'), patienceMs });
    closing.push(
      () => sample.remove(),
      () => work.close(),
    );
    const draft = async (text: string): Promise<string> =>
      keepForImport(sample.register, [{ name: 'owners.csv', text }], { clock: SAMPLE_NOW, by: 'nell' });
    return { work, register: sample.register, draft };
  }

  /** Asks again until the work is done, as the page does. */
  async function fetched(work: LongWork, key: string) {
    for (;;) {
      const answer = await work.fetch(key, 'look at import');
      if (answer?.kind !== 'at work') return answer;
      await new Promise((resolve) => setImmediate(resolve));
    }
  }

  it('is begun once, told to be at work, and its answer kept until it was fetched', async () => {
    const { work, draft } = await workOf(0);
    const draftId = await draft(OWNERS);
    expect(await work.fetch('look', 'look at import')).toBeNull();
    expect(await work.ask('look', 'look at import', { draftId })).toEqual({
      kind: 'at work',
      progress: { done: 0, total: 0 },
    });
    expect(await work.ask('look', 'look at import', { draftId })).toMatchObject({ kind: 'at work' });
    expect(await fetched(work, 'look')).toMatchObject({ kind: 'done', value: { files: [{ created: 1 }] } });
    expect(await work.fetch('look', 'look at import')).toBeNull();
  });

  it('is waited for to its end by who has the patience', async () => {
    const { work, draft, register } = await workOf(UNTIL_THE_END);
    const draftId = await draft(OWNERS);
    const look = await work.ask('look', 'look at import', { draftId });
    const shown = look.kind === 'done' ? (look.value?.print ?? '') : '';
    const asked = { draftId, by: 'nell', shown, leaveRefusedOut: false };
    expect(await work.act('import', 'import', asked)).toMatchObject({ kind: 'done', value: { kind: 'imported' } });
    expect(await readImportDraft(register.db, draftId, '')).toMatchObject({ importedBy: 'nell' });
    expect(await work.act('import', 'import', asked)).toEqual({ kind: 'done', value: { kind: 'gone' } });
  });

  it('does more tasks than it has threads, one after the other', async () => {
    const { work, draft } = await workOf(UNTIL_THE_END);
    const ids = await Promise.all([1, 2, 3, 4].map(() => draft(OWNERS)));
    const looks = await Promise.all(ids.map((draftId) => work.finish('look at import', { draftId })));
    expect(looks.map((look) => look?.files[0]?.created)).toEqual([1, 1, 1, 1]);
  });

  it('tells why it failed, and can be asked for again', async () => {
    const { work } = await workOf(UNTIL_THE_END, true);
    await expect(work.ask('learn', 'learn', null)).rejects.toThrow('cannot open the register');
    await expect(work.ask('learn', 'learn', null)).rejects.toThrow('cannot open the register');
  });

  it('ends with the service', async () => {
    const { work } = await workOf(UNTIL_THE_END);
    const learning = work.ask('learn', 'learn', null);
    const ended = expect(learning).rejects.toThrow(/ended|closing/);
    await work.close();
    await ended;
    await expect(work.ask('learn', 'learn', null)).rejects.toThrow('closing');
  });
});
