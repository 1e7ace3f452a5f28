import { Hono } from 'hono';
import { describe, expect, it } from 'vitest';
import { clientAddress } from '../../../src/web/access/client-address.ts';
import type { PageEnv } from '../../../src/web/access/visitor.ts';

async function addressOf(remoteAddress: string, forwarded?: string): Promise<string> {
  const app = new Hono<PageEnv>();
  app.get('/', (context) => context.text(clientAddress(context)));
  const headers = forwarded === undefined ? {} : { 'x-forwarded-for': forwarded };
  return (await app.request('/', { headers }, { incoming: { socket: { remoteAddress } } })).text();
}

describe('where a request comes from', () => {
  it.each([
    ['203.0.113.9', undefined, '203.0.113.9'],
    // only a proxy on this machine is believed
    ['203.0.113.9', '198.51.100.1', '203.0.113.9'],
    ['127.0.0.1', '198.51.100.1', '198.51.100.1'],
    ['::1', '198.51.100.1', '198.51.100.1'],
    ['::ffff:127.0.0.1', '10.0.0.1, 198.51.100.1', '198.51.100.1'],
    // what a client wrote itself stands first
    ['127.0.0.1', '1.2.3.4, 198.51.100.1', '198.51.100.1'],
    ['127.0.0.1', 'nonsense', '127.0.0.1'],
    ['::ffff:203.0.113.9', undefined, '203.0.113.9'],
    // whoever has one address of a network has all of it
    ['2001:db8:1:2:3:4:5:6', undefined, '2001:db8:1:2::/64'],
    ['2001:0DB8:1:2::9', undefined, '2001:db8:1:2::/64'],
    ['2001:db8::1', undefined, '2001:db8:0:0::/64'],
    ['::1', undefined, '0:0:0:0::/64'],
  ])('%s with %s: %s', async (peer, forwarded, address) => {
    expect(await addressOf(peer, forwarded)).toBe(address);
  });
});
