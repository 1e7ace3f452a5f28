import { expect, it } from 'vitest';
import { inTime } from '../../src/service/in-time.ts';

const never = new Promise<string>(() => undefined);

it('gives what comes in time, null for what does not, and what fails as it fails', async () => {
  expect(await inTime(Promise.resolve('here'), 0)).toBe('here');
  expect(await inTime(Promise.resolve('here'), Number.POSITIVE_INFINITY)).toBe('here');
  expect(await inTime(never, 1)).toBeNull();
  await expect(inTime(Promise.reject(new Error('no')), 1_000)).rejects.toThrow('no');
});
