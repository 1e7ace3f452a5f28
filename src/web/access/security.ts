import type { MiddlewareHandler } from 'hono';

/** What every page may load: its own stylesheet, fonts, pictures and frames; no script at all. */
const PAGE_POLICY = [
  "default-src 'none'",
  "style-src 'self'",
  "font-src 'self'",
  "img-src 'self' data:",
  "frame-src 'self'",
  "form-action 'self'",
  "base-uri 'none'",
  "frame-ancestors 'none'",
].join('; ');

/**
 * What a page of the crew may do besides: run this service's own scripts, and send what waited on the phone. A picture that was
 * just taken is shown from the phone's memory.
 */
const CREW_POLICY = [
  "default-src 'none'",
  "script-src 'self'",
  "worker-src 'self'",
  "connect-src 'self'",
  "style-src 'self'",
  "font-src 'self'",
  "img-src 'self' data: blob:",
  "form-action 'self'",
  "base-uri 'none'",
  "frame-ancestors 'none'",
].join('; ');

/** Pages of the crew, and the worker that keeps them on the phone. */
const CREW_PATH = /^\/(today(\/|$)|crew-worker\.js$)/;

/** Sensors that no page may use; a page of the crew reads the phone's level. */
const NO_SENSORS = 'camera=(), geolocation=(), microphone=()';
const PAGE_SENSORS = `${NO_SENSORS}, accelerometer=(), gyroscope=(), magnetometer=()`;
const CREW_SENSORS = `${NO_SENSORS}, accelerometer=(self), gyroscope=(self), magnetometer=()`;

/**
 * What a mail's HTML part, a letter or a day sheet may do: its own inline styles and pictures, nothing else. The sandbox also takes its origin
 * away, so that nothing in a message can act as this service's page.
 */
const MESSAGE_POLICY = [
  'sandbox',
  "default-src 'none'",
  "style-src 'unsafe-inline'",
  "img-src 'self' data:",
  "form-action 'none'",
  "base-uri 'none'",
  "frame-ancestors 'self'",
].join('; ');

/** Paths of a mail's HTML part, of a letter, of a day sheet and of what would be sent, the only answers with the message policy. */
const MESSAGE_BODY_PATH =
  /^\/(mail\/[^/]+\/html|outbox\/\d+\/letter|outbox\/\d+\/message|notices\/message|sheets\/[^/]+)$/;

/** Adds the security headers to every answer. */
export const securityHeaders: MiddlewareHandler = async (context, next) => {
  await next();
  const isMessage = MESSAGE_BODY_PATH.test(context.req.path);
  const isCrews = CREW_PATH.test(context.req.path);
  const headers = context.res.headers;
  headers.set('Content-Security-Policy', isMessage ? MESSAGE_POLICY : isCrews ? CREW_POLICY : PAGE_POLICY);
  headers.set('X-Content-Type-Options', 'nosniff');
  headers.set('Referrer-Policy', 'no-referrer');
  headers.set('Cross-Origin-Opener-Policy', 'same-origin');
  headers.set('Cross-Origin-Resource-Policy', 'same-origin');
  headers.set('Permissions-Policy', isCrews ? CREW_SENSORS : PAGE_SENSORS);
  if (!headers.has('Cache-Control')) headers.set('Cache-Control', 'no-store');
};

const LOOPBACK_NAMES = ['localhost', '127.0.0.1', '[::1]'];

/**
 * Refuses requests under a name other than a loopback one and its own: a foreign page whose name was made to point here could otherwise read
 * the register through the visitor's browser.
 * @param alsoAllowed further host names, without port
 */
export const hostCheck =
  (alsoAllowed: readonly string[]): MiddlewareHandler =>
  async (context, next) => {
    const host = context.req.header('host') ?? new URL(context.req.url).host;
    const name = host.replace(/:\d+$/, '').toLowerCase();
    if (![...LOOPBACK_NAMES, ...alsoAllowed].includes(name)) {
      return context.text(
        `This service does not answer under ${JSON.stringify(name)}.\nOpen it as http://localhost with its port. To reach it under another name, set STORMPALE_PUBLIC_URL; a proxy before it passes the Host header on.\n`,
        421,
      );
    }
    return next();
  };
