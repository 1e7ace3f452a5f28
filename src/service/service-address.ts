import { isIP } from 'node:net';

/** Names under which only this machine can be asked. */
export const LOOPBACK_NAMES: readonly string[] = ['localhost', '127.0.0.1', '[::1]'];

/** True for an address on which only this machine can ask: a name of it, 127.0.0.0/8 or ::1. */
export const isLoopbackHost = (host: string): boolean =>
  LOOPBACK_NAMES.includes(host) || host === '::1' || (isIP(host) === 4 && host.startsWith('127.'));

/** Why a text is no address to serve on; null where it is one. */
export const hostReason = (text: string): string | null =>
  text === 'localhost' || isIP(text) !== 0
    ? null
    : 'not an address of this machine; write one as 127.0.0.1, 0.0.0.0 or ::1';

/** An address in a web address: IPv6 stands in brackets. */
export const hostInUrl = (host: string): string => (isIP(host) === 6 ? `[${host}]` : host);

/** Why a text is not where people reach the pages; null where it is. */
export function publicUrlReason(text: string): string | null {
  if (!/^https?:\/\/[^\s/]+/.test(text) || !URL.canParse(text)) {
    return 'not a web address; write one as https://fences.example.org';
  }
  const { protocol, hostname, pathname } = new URL(text);
  if (protocol === 'http:' && !isLoopbackHost(hostname)) {
    return 'passwords and links of owners must not travel in the clear: put a proxy with HTTPS before the service, and write https://';
  }
  return pathname === '/' ? null : 'the pages lie at the root of a host; leave the path out';
}

/** True where the pages are for this machine only: served on loopback, and known under no other name. */
export const isForThisMachine = (config: { readonly host: string; readonly publicUrl: string }): boolean =>
  isLoopbackHost(config.host) && isLoopbackHost(new URL(config.publicUrl).hostname);
