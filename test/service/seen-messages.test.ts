import { expect, it } from 'vitest';
import { createSeenMessages } from '../../src/service/seen-messages.ts';

it('gives a message back by its print, and forgets the oldest where there is too much', () => {
  const seen = createSeenMessages(10);
  const first = seen.keep('aaaa');
  expect(seen.keep('aaaa')).toBe(first);
  const second = seen.keep('bbbb');
  expect([seen.read(first), seen.read(second), seen.read('none')]).toEqual(['aaaa', 'bbbb', null]);
  seen.keep('aaaa');
  const third = seen.keep('cccc');
  expect([seen.read(first), seen.read(second), seen.read(third)]).toEqual(['aaaa', null, 'cccc']);
  const long = seen.keep('d'.repeat(20));
  expect([seen.read(first), seen.read(third), seen.read(long)]).toEqual([null, null, 'd'.repeat(20)]);
});
