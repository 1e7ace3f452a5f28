import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { SampleApp } from '../sample-app.ts';
import { sampleApp } from '../sample-app.ts';

describe('caught mail and the outbox', () => {
  let sample: SampleApp;
  let paths: readonly string[];
  beforeAll(async () => {
    sample = await sampleApp();
    await sample.sendMail();
    paths = [...(await sample.text('/mail')).matchAll(/href="(\/mail\/[^"]+)"/g)].map((found) => found[1] as string);
  });
  afterAll(() => sample.close());

  it('lists every mail that was caught', () => {
    expect(paths).toHaveLength(2);
  });

  it('shows a mail with its headers, both parts and its files', async () => {
    const [path] = paths;
    const html = await sample.text(path as string);
    expect(html).toContain('office@example.org');
    expect(html).toContain(`<iframe class="message" title="HTML part of the mail" src="${path}/html" sandbox=""`);
    expect(html).toMatch(/<pre>[^<]{200,}/);
    expect(html).toContain(`href="${path}/raw"`);
  });

  it('gives the HTML part with a policy that lets nothing in it act', async () => {
    const response = await sample.app.request(`${paths[0]}/html`);
    const policy = response.headers.get('content-security-policy') ?? '';
    expect(response.status).toBe(200);
    expect(policy.split('; ')).toContain('sandbox');
    expect(policy).toContain("default-src 'none'");
    expect(policy).not.toContain('script-src');
    expect(policy).toContain("frame-ancestors 'self'");
  });

  it('gives the mail as it came, and its files, as downloads only', async () => {
    const raw = await sample.app.request(`${paths[0]}/raw`);
    expect(raw.headers.get('content-disposition')).toMatch(/^attachment; filename="[^"]+\.eml"$/);
    expect(await raw.text()).toMatch(/^Message-ID: </im);
    expect((await sample.app.request(`${paths[0]}/files/99`)).status).toBe(404);
  });

  it('answers 404 for a mail that is not there, also where its name reaches out of the folder', async () => {
    for (const path of ['/mail/none', '/mail/..%2F..%2Fregister.sqlite', '/mail/none/html', '/mail/none/raw']) {
      expect((await sample.app.request(path)).status, path).toBe(404);
    }
  });

  it('carries the cautions where subjects tell speeds', async () => {
    for (const path of ['/mail', '/outbox']) {
      expect(await sample.text(path), path).toContain('not a structural certification');
    }
  });

  it('shows the outbox with states, and narrows it to one', async () => {
    const html = await sample.text('/outbox');
    expect(html).toContain('2 caught</a>: kept here, no mail server is set');
    expect(html).not.toContain('taken by the mail server');
    expect(html).toContain('1 to print');
    const letters = await sample.text('/outbox?state=to+print');
    expect(letters).toContain('Mason Yards');
    expect(letters).not.toContain('Rosa Quinn');
  });

  it('shows a letter under the policy of messages, and no mail in its place', async () => {
    const [, path] = /href="(\/outbox\/\d+\/letter)"/.exec(await sample.text('/outbox')) ?? [];
    const letter = await sample.app.request(path as string);
    expect(letter.status).toBe(200);
    expect(letter.headers.get('content-security-policy')).toContain('sandbox');
    const text = await letter.text();
    expect(text).toContain('Mason Yards');
    expect(text).toContain('<link rel="icon" href="data:,">');
    expect((await sample.app.request('/outbox/99999/letter')).status).toBe(404);
  });

  it('has no page of caught mail where mail is sent for real', async () => {
    const real = await sampleApp({ empty: true, catcher: false });
    try {
      expect((await real.app.request('/mail')).status).toBe(404);
      expect(await real.text('/fences')).not.toContain('href="/mail"');
    } finally {
      await real.close();
    }
  });
});
