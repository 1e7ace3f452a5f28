import { scryptSync } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import { hashPassword, isPasswordOf } from '../../src/service/password-hash.ts';

describe('a password hash', () => {
  it('is scrypt as Node computes it, with its cost and a salt of its own', async () => {
    const [one, two] = await Promise.all([hashPassword('gate latch and hinge'), hashPassword('gate latch and hinge')]);
    expect(one).not.toBe(two);
    const [kind, cost, blockSize, parallelism, salt = '', key] = one.split('$');
    expect([kind, cost, blockSize, parallelism]).toEqual(['scrypt', '15', '8', '3']);
    expect(Buffer.from(salt, 'base64url')).toHaveLength(16);
    const options = { N: 32_768, r: 8, p: 3, maxmem: 2 ** 27 };
    const again = scryptSync('gate latch and hinge', Buffer.from(salt, 'base64url'), 32, options);
    expect(key).toBe(again.toString('base64url'));
  });

  it('is of its password and of no other, however its letters are composed', async () => {
    const hash = await hashPassword('caf\u00e9 by the gate');
    expect(await isPasswordOf('cafe\u0301 by the gate', hash)).toBe(true);
    expect(await isPasswordOf('café by the gates', hash)).toBe(false);
    expect(await isPasswordOf('Café by the gate', hash)).toBe(false);
    expect(await isPasswordOf('', hash)).toBe(false);
  });

  it('is nobody’s where there is none, in the time of a real one', async () => {
    const hash = await hashPassword('gate latch and hinge');
    const timeOf = async (stored: string | null): Promise<number> => {
      const began = performance.now();
      expect(await isPasswordOf('something else', stored)).toBe(false);
      return performance.now() - began;
    };
    const fastest = async (stored: string | null): Promise<number> => {
      const times: number[] = [];
      for (let run = 0; run < 5; run += 1) times.push(await timeOf(stored));
      return Math.min(...times);
    };
    // within a factor that a busy machine keeps; without the work it would be hundreds
    expect((await fastest(null)) / (await fastest(hash))).toBeGreaterThan(0.4);
  });

  it('keeps a cost of its own, so that a dearer one later leaves old ones good', async () => {
    const salt = Buffer.alloc(16, 7);
    const key = scryptSync('gate latch and hinge', salt, 32, { N: 1024, r: 8, p: 1 });
    const cheap = `scrypt$10$8$1$${salt.toString('base64url')}$${key.toString('base64url')}`;
    expect(await isPasswordOf('gate latch and hinge', cheap)).toBe(true);
    expect(await isPasswordOf('gate latch and hinges', cheap)).toBe(false);
  });

  it('says so where the register holds something else', async () => {
    await expect(isPasswordOf('x', 'bcrypt$1$2')).rejects.toThrow('set the password anew');
  });
});
