import { describe, expect, it } from 'vitest';
import { hostReason, isForThisMachine, isLoopbackHost, publicUrlReason } from '../../src/service/service-address.ts';

describe('where the pages are served', () => {
  it('is this machine under its loopback addresses and names only', () => {
    for (const host of ['localhost', '127.0.0.1', '127.8.0.1', '::1', '[::1]'])
      expect(isLoopbackHost(host), host).toBe(true);
    for (const host of [
      '0.0.0.0',
      '::',
      '10.0.0.1',
      '127.0.0.1.example.net',
      '127.example.org',
      'localhost.example.org',
    ]) {
      expect(isLoopbackHost(host), host).toBe(false);
    }
  });

  it('is for this machine only where both the address and the name are', () => {
    const local = { host: '127.0.0.1', publicUrl: 'http://127.0.0.1:8480' };
    expect(isForThisMachine(local)).toBe(true);
    expect(isForThisMachine({ ...local, publicUrl: 'http://[::1]:8480' })).toBe(true);
    expect(isForThisMachine({ ...local, host: '0.0.0.0' })).toBe(false);
    expect(isForThisMachine({ ...local, publicUrl: 'https://fences.example.org' })).toBe(false);
  });

  it('is refused with the way out', () => {
    expect(hostReason('example.org')).toContain('not an address');
    expect(hostReason('::')).toBeNull();
    expect(publicUrlReason('http://localhost:9000')).toBeNull();
    expect(publicUrlReason('https://fences.example.org/')).toBeNull();
    expect(publicUrlReason('http://fences.example.org')).toContain('in the clear');
    expect(publicUrlReason('ftp://fences.example.org')).toContain('not a web address');
  });
});
