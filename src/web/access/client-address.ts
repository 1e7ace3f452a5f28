import { isIP } from 'node:net';
import { isLoopbackHost } from '../../service/service-address.ts';
import type { PageContext } from './visitor.ts';

/** An IPv4 address inside an IPv6 one, as a socket that takes both gives it, without its wrapping. */
const unwrapped = (address: string): string => address.replace(/^::ffff:(?=\d+\.)/i, '');

/** The network of an address: whoever has one IPv6 address usually has all 2^64 of its network. */
function network(address: string): string {
  if (isIP(address) !== 6) return address;
  const [head = '', tail] = address.split('::');
  const first = head === '' ? [] : head.split(':');
  const last = tail === undefined || tail === '' ? [] : tail.split(':');
  const zeros = Array.from({ length: Math.max(0, 8 - first.length - last.length) }, () => '0');
  const groups = tail === undefined ? first : [...first, ...zeros, ...last];
  return `${groups
    .slice(0, 4)
    .map((group) => group.replace(/^0+(?=.)/, '').toLowerCase())
    .join(':')}::/64`;
}

/**
 * Where a request comes from, for counting tries. Behind a proxy on this machine it is what that proxy added last to
 * `X-Forwarded-For`; what a client wrote there itself stands before it and is not read.
 */
export function clientAddress(context: PageContext): string {
  const peer = unwrapped(context.env?.incoming?.socket.remoteAddress ?? '127.0.0.1');
  const forwarded = context.req.header('x-forwarded-for')?.split(',').at(-1)?.trim() ?? '';
  const address = isLoopbackHost(peer) && isIP(forwarded) !== 0 ? unwrapped(forwarded) : peer;
  return network(address);
}
