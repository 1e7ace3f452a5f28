import { Hono } from 'hono';
import type { Child } from 'hono/jsx';
import { describe, expect, it } from 'vitest';
import { writeSettings } from '../../../src/register/settings-store.ts';
import { momentInZone } from '../../../src/service/clock.ts';
import { Moment, OfficeZone, useMomentText } from '../../../src/web/frame/moment.tsx';
import { sampleApp } from '../sample-app.ts';

/** What a page that holds these elements says. */
const page = async (content: Child): Promise<string> => {
  const app = new Hono().get('/', (context) => context.html(<main>{content}</main>));
  return (await app.request('/')).text();
};

const html = (zone: string, iso: string): Promise<string> =>
  page(
    <OfficeZone.Provider value={zone}>
      <Moment at={iso} />
    </OfficeZone.Provider>,
  );

describe('a moment on a page', () => {
  it('is that of the office, with its zone, across the hour that comes twice and the one that never comes', () => {
    // the clocks of Chicago go back at 07:00 UTC on 1 November 2026 and forward at 08:00 UTC on 14 March 2027
    expect(momentInZone('2026-11-01T06:30:00.000Z', 'America/Chicago')).toBe('2026-11-01 01:30 CDT');
    expect(momentInZone('2026-11-01T07:30:00.000Z', 'America/Chicago')).toBe('2026-11-01 01:30 CST');
    expect(momentInZone('2027-03-14T07:59:00.000Z', 'America/Chicago')).toBe('2027-03-14 01:59 CST');
    expect(momentInZone('2027-03-14T08:00:00.000Z', 'America/Chicago')).toBe('2027-03-14 03:00 CDT');
    expect(momentInZone('2026-11-24T03:05:00.000Z', 'America/Los_Angeles')).toBe('2026-11-23 19:05 PST');
    expect(momentInZone('2026-11-24T12:00:00.000Z', 'UTC')).toBe('2026-11-24 12:00 UTC');
    expect(momentInZone('2026-07-01T12:00:00.000Z', 'Pacific/Auckland')).toBe('2026-07-02 00:00 GMT+12');
  });

  it('keeps the moment itself for programs', async () => {
    expect(await html('America/Chicago', '2026-11-01T07:30:00.000Z')).toContain(
      '<time class="moment" datetime="2026-11-01T07:30:00.000Z">2026-11-01 01:30 CST</time>',
    );
  });

  it('is in the zone of its own page, whatever another page was in', async () => {
    expect(await html('America/Denver', '2026-07-01T12:00:00.000Z')).toContain('06:00 MDT');
    expect(await page(<Moment at="2026-07-01T12:00:00.000Z" />)).toContain('12:00 UTC');
    const Words = () => <img src="/one" alt={`taken ${useMomentText()('2026-07-01T12:00:00.000Z')}`} />;
    const said = await page(
      <OfficeZone.Provider value="America/New_York">
        <Words />
      </OfficeZone.Provider>,
    );
    expect(said).toContain('alt="taken 2026-07-01 08:00 EDT"');
  });

  it('refuses what is no moment or no zone', () => {
    expect(() => momentInZone('yesterday', 'UTC')).toThrow(RangeError);
    expect(() => momentInZone('2026-07-01T12:00:00.000Z', 'Mars/Base')).toThrow(RangeError);
  });

  it('goes by the setting of the register, and by the zone that the service is started with before it', async () => {
    const sample = await sampleApp();
    try {
      expect(await sample.text('/fences')).toMatch(/Swept <time [^>]*>2026-11-24 12:00 UTC</);
      await writeSettings(sample.register.db, { timeZone: 'America/Chicago' }, '2026-11-24T12:00:00.000Z');
      const list = await sample.text('/fences');
      expect(list).toContain(
        'Swept <time class="moment" datetime="2026-11-24T12:00:00.000Z">2026-11-24 06:00 CST</time>',
      );
      const [, due = ''] = /the next sweep is due <time class="moment" datetime="([^"]*)"/.exec(list) ?? [];
      expect(list).toContain(`${momentInZone(due, 'America/Chicago')}</time> (every night at 04:30 America/Chicago)`);
      expect(await sample.text('/brief')).toContain('2026-11-24 06:00 CST</time>');
      expect(await sample.text('/fences/PR-02')).toMatch(/computed <time [^>]*>2026-11-24 06:00 CST<\/time>/);
    } finally {
      await sample.close();
    }
  });
});
