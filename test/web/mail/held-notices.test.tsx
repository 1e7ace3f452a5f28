import { Hono } from 'hono';
import { describe, expect, it } from 'vitest';
import type { HeldNotice, HeldOverview } from '../../../src/register/held-notices.ts';
import type { OfficeNotice } from '../../../src/register/office-notices.ts';
import { HeldNotices, OfficeNotices } from '../../../src/web/mail/held-notices.tsx';

const held = (id: number, matter: string, ownerRef = 'ANN'): HeldNotice => ({
  id,
  matter,
  ownerRef,
  occasion: 'as built',
  fenceRef: 'F-1',
  siteName: 'Heron & Landing',
  ownerName: 'Ann <Tidewell>',
  held: 'first sweep',
  createdAt: '2027-01-15T12:00:00.000Z',
});

/** What a page that holds nothing else sends. */
async function htmlOf(part: ReturnType<typeof HeldNotices>): Promise<string> {
  const app = new Hono().get('/', (context) => context.html(<main>{part}</main>));
  return (await app.request('/')).text();
}

const overview = (first: readonly HeldNotice[], more: Partial<HeldOverview> = {}): HeldOverview => ({
  notices: first.length,
  owners: new Set(first.map(({ ownerRef }) => ownerRef)).size,
  dangerous: first.filter(({ matter }) => matter === 'dangerous').length,
  first,
  ...more,
});

describe('HeldNotices', () => {
  it('says how much waits and how it is released, the dangerous first', async () => {
    const html = await htmlOf(<HeldNotices held={overview([held(2, 'dangerous', 'BEA'), held(1, 'short')])} />);
    expect(html).toContain('2 notices to 2 owners wait until you release them');
    expect(html).toContain('stormpale mail release --all');
    expect(html).toContain('1 notice of danger among them');
    expect(html.indexOf('<th scope="row">dangerous')).toBeLessThan(html.indexOf('<th scope="row">short'));
    expect(html).toContain('Ann &lt;Tidewell&gt;');
  });

  it('shows the first hundred of many, and nothing of none', async () => {
    const many = Array.from({ length: 100 }, (_, index) => held(index, 'closing'));
    const html = await htmlOf(<HeldNotices held={overview(many, { notices: 130 })} />);
    expect(html).toContain('Held notices, 100 of 130');
    expect(html.match(/<tr>/g)).toHaveLength(101);
    expect(await htmlOf(<HeldNotices held={overview([])} />)).toBe('<main></main>');
  });
});

describe('OfficeNotices', () => {
  it('says what was found, without the day it was told, and how it is settled', async () => {
    const notice: OfficeNotice = {
      id: 4,
      fenceRef: 'F-1',
      siteName: 'Heron Landing',
      matter: 'dangerous',
      occasion: 'broken 4; told 2027-01-15',
      createdAt: '2027-01-15T12:00:00.000Z',
    };
    const html = await htmlOf(<OfficeNotices notices={[notice]} />);
    expect(html).toContain('broken 4<');
    expect(html).toContain('stormpale mail office --settle NUMBER');
    expect(await htmlOf(<OfficeNotices notices={[]} />)).toBe('<main></main>');
  });
});
