import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { receiptOf } from '../../src/register/entry-receipt-store.ts';
import { readSettings, writeSettings } from '../../src/register/settings-store.ts';
import { enterOnce, isEntryId } from '../../src/service/enter-once.ts';
import { SAMPLE_NOW, sampleRegister } from '../web/sample-register.ts';

const AT = '2026-11-24T12:00:00.000Z';

describe('an entry', () => {
  let sample: Awaited<ReturnType<typeof sampleRegister>>;
  beforeEach(async () => {
    sample = await sampleRegister({ empty: true });
  });
  afterEach(() => sample.remove());

  const rename = (id: string, name: string, holder = 'token:1') =>
    enterOnce(sample.register, { holder, id, kind: 'office name', content: { name } }, SAMPLE_NOW, async ({ db }) => {
      await writeSettings(db, { companyName: name }, AT);
      return name === 'nobody' ? { refused: 'no name' } : { answer: { named: name } };
    });
  const name = async () => (await readSettings(sample.register.db)).companyName;

  it('is done once and answered alike ever after, in whatever order its fields come', async () => {
    expect(await rename('entry-0001', 'First')).toEqual({ kind: 'stored', answer: { named: 'First' }, again: false });
    await rename('entry-0002', 'Second');
    expect(await rename('entry-0001', 'First')).toEqual({ kind: 'stored', answer: { named: 'First' }, again: true });
    expect(await name()).toBe('Second');
    expect(await receiptOf(sample.register.db, 'token:1', 'entry-0001')).toMatchObject({
      kind: 'office name',
      storedAt: AT,
    });
  });

  it('leaves nothing of what it began where it is refused or fails, and may come again', async () => {
    expect(await rename('entry-0001', 'nobody')).toEqual({ kind: 'refused', refused: 'no name' });
    const failing = enterOnce(
      sample.register,
      { holder: 'token:1', id: 'entry-0001', kind: 'office name', content: {} },
      SAMPLE_NOW,
      async ({ db }) => {
        await writeSettings(db, { companyName: 'half' }, AT);
        throw new Error('the disk is full');
      },
    );
    await expect(failing).rejects.toThrow('the disk is full');
    expect(await name()).not.toBe('nobody');
    expect(await name()).not.toBe('half');
    expect(await rename('entry-0001', 'Third')).toMatchObject({ again: false });
  });

  it('is told from another one of the same id by what it says, and from that of another sender', async () => {
    await rename('entry-0001', 'First');
    expect(await rename('entry-0001', 'Other')).toEqual({ kind: 'other content' });
    expect(await name()).toBe('First');
    expect(await rename('entry-0001', 'Other', 'token:2')).toMatchObject({ kind: 'stored', again: false });
  });

  it('has an id that no address or file name can stumble over', () => {
    expect(['entry-0001', 'a'.repeat(100), '0f8c_-9A'].every(isEntryId)).toBe(true);
    expect(['short', 'a'.repeat(101), 'with blank', '../../etc', ''].some(isEntryId)).toBe(false);
  });
});
