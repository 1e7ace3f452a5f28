import { expect, it } from 'vitest';
import { messageCount, messageParts } from '../../src/service/message-parts.ts';

it('tells up to three fences a message each, and up to three of danger whatever else there is', () => {
  expect(messageParts(3, 0)).toBe('each');
  expect(messageParts(4, 0)).toBe('digest');
  expect(messageParts(4, 1)).toBe('each');
  expect(messageParts(6, 3)).toBe('each');
  expect(messageParts(7, 3)).toBe('dangerous each');
  expect(messageParts(5, 4)).toBe('digest');
  expect([messageCount(3, 0), messageCount(80, 0), messageCount(80, 2), messageCount(80, 9)]).toEqual([3, 1, 3, 1]);
});
