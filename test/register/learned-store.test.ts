import { describe, expect, test } from 'vitest';
import type { Register } from '../../src/register/database.ts';
import { loadFenceFacts } from '../../src/register/fence-facts-store.ts';
import {
  acceptLearned,
  type LearnedValue,
  learnedFactsFor,
  learnedHistory,
  learnedInForce,
  revertLearned,
} from '../../src/register/learned-store.ts';
import { changeCount } from '../../src/register/register-changes.ts';
import { NOW, soundRegister, temporaryRegister } from './made-up-register.ts';

const ACT = { at: NOW, by: 'Nell Ardmore', note: '' };

const pace = (
  treatmentClass: 'ground-contact' | 'heavy-duty',
  climateBand: 1 | 4 | 5,
  logShift = 0.4,
): LearnedValue => ({
  kind: 'pace',
  key: `${treatmentClass}/${climateBand}`,
  treatmentClass,
  climateBand,
  logShift,
  low: logShift - 0.2,
  high: logShift + 0.2,
  spread: 0.45,
  fences: 14,
  seen: 42,
});

const footing = (soilKind: 'sand' | 'clay', logShift = -0.2): LearnedValue => ({
  kind: 'footing',
  key: `footing/${soilKind}`,
  soilKind,
  logShift,
  low: logShift - 0.1,
  high: logShift + 0.1,
  spread: 0.35,
  fences: 9,
  seen: 60,
  leaned: 12,
});

const accept = async (register: Register, ...values: readonly LearnedValue[]) => {
  const done = await acceptLearned(register, ACT, values);
  if (!done) throw new Error('nothing was accepted');
  return done.version;
};

const heldKeys = async ({ db }: Register): Promise<readonly string[]> =>
  ((await learnedInForce(db))?.values ?? []).map(({ key, since }) => `${key} since ${since}`);

const factsOf = async (register: Register, ref: string) => (await loadFenceFacts(register, [ref])).get(ref);

describe('accepting and taking back', () => {
  test('nothing is in force in a new register', async () => {
    const register = await temporaryRegister();
    expect(await learnedInForce(register.db)).toBeNull();
    expect(await learnedHistory(register.db)).toEqual([]);
    expect(await revertLearned(register, ACT)).toBeNull();
    expect(await learnedHistory(register.db)).toEqual([]);
  });

  test('what is accepted comes back as it was, and later acceptances add to it', async () => {
    const register = await temporaryRegister();
    const first = await accept(register, pace('ground-contact', 4));
    expect(await learnedInForce(register.db)).toEqual(first);
    expect(first.values).toEqual([{ ...pace('ground-contact', 4), since: 1 }]);
    await accept(register, footing('sand'), pace('ground-contact', 4, 0.5));
    await accept(register, footing('clay'));
    expect(await heldKeys(register)).toEqual([
      'footing/clay since 3',
      'footing/sand since 2',
      'ground-contact/4 since 2',
    ]);
  });

  test('accepting what is in force already stores nothing', async () => {
    const register = await temporaryRegister();
    await accept(register, pace('ground-contact', 4), footing('sand'));
    expect(await acceptLearned(register, ACT, [footing('sand')])).toBeNull();
    expect(await learnedHistory(register.db)).toHaveLength(1);
    await accept(register, footing('sand'), pace('ground-contact', 4, 0.6));
    expect(await heldKeys(register)).toEqual(['footing/sand since 1', 'ground-contact/4 since 2']);
  });

  test('taking back goes one version back each time and is itself recorded', async () => {
    const register = await temporaryRegister();
    const first = await accept(register, pace('ground-contact', 4));
    await accept(register, pace('ground-contact', 4, 0.7));
    const back = await revertLearned(register, { ...ACT, note: 'too bold' });
    expect(back?.reverted.number).toBe(2);
    expect(back?.inForce).toEqual(first);
    const fourth = await accept(register, footing('sand'));
    expect(fourth.number).toBe(4);
    expect((await revertLearned(register, ACT))?.inForce).toEqual(first);
    expect((await revertLearned(register, ACT))?.inForce).toBeNull();
    expect(await learnedInForce(register.db)).toBeNull();
    const history = await learnedHistory(register.db);
    expect(
      history.map((entry) =>
        entry.act === 'accepted'
          ? [entry.number, 'accepted', entry.revertedBy, entry.inForce]
          : [entry.number, 'took back', entry.reverted, entry.note],
      ),
    ).toEqual([
      [1, 'accepted', 6, false],
      [2, 'accepted', 3, false],
      [3, 'took back', 2, 'too bold'],
      [4, 'accepted', 5, false],
      [5, 'took back', 4, ''],
      [6, 'took back', 1, ''],
    ]);
  });

  test('what was accepted or taken back can neither be edited nor deleted', async () => {
    const { db, ...register } = await temporaryRegister();
    await accept({ db, ...register }, pace('ground-contact', 4));
    await expect(db.updateTable('learned_acts').set({ by: 'somebody else' }).execute()).rejects.toThrow('never edited');
    await expect(db.deleteFrom('learned_acts').execute()).rejects.toThrow('never deleted');
    await expect(db.updateTable('learned_values').set({ log_shift: 0 }).execute()).rejects.toThrow('never edited');
    await expect(db.deleteFrom('learned_values').execute()).rejects.toThrow('never deleted');
  });

  test('a value that breaks its rules is refused, and the acceptance with it', async () => {
    const register = await temporaryRegister();
    const upsideDown = { ...pace('ground-contact', 4), low: 0.5, high: 0.3 };
    await expect(acceptLearned(register, ACT, [footing('sand'), upsideDown])).rejects.toThrow('CHECK');
    await expect(acceptLearned(register, { ...ACT, by: '' }, [footing('sand')])).rejects.toThrow('CHECK');
    expect(await learnedHistory(register.db)).toEqual([]);
  });

  test('accepting and taking back count as changes of the register, so that the next sweep looks', async () => {
    const register = await temporaryRegister();
    const before = await changeCount(register.db);
    await accept(register, pace('ground-contact', 4));
    expect(await changeCount(register.db)).toBe(before + 1);
    await revertLearned(register, ACT);
    expect(await changeCount(register.db)).toBe(before + 2);
  });
});

describe('what a fence takes from the version in force', () => {
  // F-1: ground-contact posts, one of heavy-duty wood; F-2: above-ground stock, one added ground-contact post; both in sand
  test('is nothing where nothing is in force, or nothing of it concerns the fence', async () => {
    const register = await soundRegister();
    expect((await factsOf(register, 'F-1'))?.learned).toBeNull();
    await accept(register, pace('ground-contact', 1), footing('clay'));
    expect((await factsOf(register, 'F-1'))?.learned).toBeNull();
  });

  test('is the paces of its own classes in its own climate band, and the footings of its own soil', async () => {
    const register = await soundRegister();
    await accept(register, pace('ground-contact', 5), pace('ground-contact', 1, 0.1), pace('heavy-duty', 5, 0.2));
    await accept(register, footing('sand'), footing('clay', 0.3));
    expect((await factsOf(register, 'F-1'))?.learned).toEqual({
      version: 2,
      paces: [
        { treatmentClass: 'ground-contact', logShift: 0.4, spread: 0.45 },
        { treatmentClass: 'heavy-duty', logShift: 0.2, spread: 0.45 },
      ],
      footing: { logShift: -0.2, spread: 0.35 },
    });
    expect((await factsOf(register, 'F-2'))?.learned?.paces.map(({ treatmentClass }) => treatmentClass)).toEqual([
      'ground-contact',
    ]);
  });

  test('stays as it is, number and all, when something else is accepted', async () => {
    const register = await soundRegister();
    await accept(register, pace('heavy-duty', 5));
    const before = await factsOf(register, 'F-1');
    await accept(register, pace('ground-contact', 1), footing('clay'));
    expect(await factsOf(register, 'F-1')).toEqual(before);
    await revertLearned(register, ACT);
    expect(await factsOf(register, 'F-1')).toEqual(before);
    await revertLearned(register, ACT);
    expect((await factsOf(register, 'F-1'))?.learned).toBeNull();
  });

  test('is null without a version', async () => {
    const register = await soundRegister();
    const facts = await factsOf(register, 'F-1');
    if (!facts) throw new Error('F-1 is in the register');
    expect(learnedFactsFor(null, facts)).toBeNull();
  });
});
