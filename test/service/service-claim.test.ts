import { readdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { processStart } from '../../src/service/process-start.ts';
import { claimDataFolder } from '../../src/service/service-claim.ts';
import { JANUARY, temporaryFolder } from './fence-register.ts';

const now = () => JANUARY;

describe('claimDataFolder', () => {
  it('refuses a second service on the same folder, and says which one runs', () => {
    const folder = temporaryFolder();
    const claim = claimDataFolder(folder, now);
    expect(() => claimDataFolder(folder, now)).toThrow(
      `another service (process ${process.pid}, since 2027-01-15T12:00:00.000Z) already runs on this register`,
    );
    claim.release();
    claimDataFolder(folder, now).release();
    expect(readdirSync(folder)).toEqual([]);
  });

  it.each([
    ['of a process that is gone', { pid: 2 ** 22 + 7, processStart: null, since: '2027-01-01' }],
    ['whose number another process has by now', { pid: process.pid, processStart: 'boot 1', since: '2027-01-01' }],
    ['that a power cut left empty', null],
  ])('takes over a claim %s at once', (_what, left) => {
    const folder = temporaryFolder();
    writeFileSync(join(folder, 'service.lock'), left ? JSON.stringify(left) : '');
    claimDataFolder(folder, now).release();
    expect(readdirSync(folder)).toEqual([]);
  });

  it('can tell this process from another of its number only where its start is known', () => {
    expect(processStart(process.pid)).not.toBeNull();
  });
});
