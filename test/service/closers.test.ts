import { expect, it } from 'vitest';
import { createClosers } from '../../src/service/closers.ts';
import { createLog } from '../../src/service/log.ts';

it('closes everything in turn although some of it fails, logs each failure and throws the first', async () => {
  const lines: string[] = [];
  const closers = createClosers(createLog('error', { write: (line) => void lines.push(line) }));
  const closed: string[] = [];
  const part = (name: string, failure?: Error): void =>
    closers.add(async () => {
      closed.push(name);
      if (failure) throw failure;
    });
  part('register');
  part('catcher', new Error('catcher is stuck'));
  part('drain', new Error('drain is stuck'));
  part('pages');
  await expect(closers.closeAll()).rejects.toThrow('drain is stuck');
  expect(closed).toEqual(['pages', 'drain', 'catcher', 'register']);
  expect(lines).toHaveLength(2);
  await closers.closeAll();
  expect(closed).toHaveLength(4);
});
