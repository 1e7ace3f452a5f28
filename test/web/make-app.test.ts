import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { STYLESHEET_PATH } from '../../src/web/frame/stylesheet.ts';
import type { SampleApp } from './sample-app.ts';
import { sampleApp } from './sample-app.ts';

describe('every answer of the pages', () => {
  let sample: SampleApp;
  beforeAll(async () => {
    sample = await sampleApp({ publicUrl: 'https://fences.example.org/' });
  });
  afterAll(() => sample.close());

  it('allows no script and nothing from elsewhere', async () => {
    for (const path of ['/fences', '/fences/PR-01', '/fences/PR-01/reasons', '/outbox', '/mail', '/nowhere']) {
      const response = await sample.app.request(path);
      const policy = response.headers.get('content-security-policy') ?? '';
      expect(policy, path).toContain("default-src 'none'");
      expect(policy, path).not.toContain('unsafe-inline');
      expect(response.headers.get('x-content-type-options'), path).toBe('nosniff');
      expect(response.headers.get('referrer-policy'), path).toBe('no-referrer');
      const html = await response.text();
      expect(html, path).not.toMatch(/<script|\son[a-z]+=|style="/);
      expect(html, path).toMatch(/^<html lang="en">|^<!DOCTYPE html><html lang="en">/i);
    }
  });

  it('refuses a name that is neither loopback nor its own', async () => {
    const ask = (host: string) => sample.app.request('/fences', { headers: { host } });
    for (const host of ['localhost:8480', '127.0.0.1:8480', '[::1]:8480', 'LOCALHOST', 'fences.example.org']) {
      expect((await ask(host)).status, host).toBe(200);
    }
    for (const host of ['evil.example.com', 'localhost.evil.example.com', '192.0.2.7:8480', '127.0.0.1.example.net']) {
      const refused = await ask(host);
      expect(refused.status, host).toBe(421);
      expect(await refused.text()).toContain('http://localhost');
    }
  });

  it('serves its stylesheet, its fonts and its icon itself', async () => {
    expect((await sample.app.request(STYLESHEET_PATH)).headers.get('content-type')).toContain('text/css');
    const font = await sample.app.request('/fonts/source-sans-3-600.ttf');
    expect(font.status).toBe(200);
    expect((await font.arrayBuffer()).byteLength).toBeGreaterThan(50_000);
    expect((await sample.app.request('/fonts/..%2Fpackage.json')).status).toBe(404);
    expect((await sample.app.request('/icon.svg')).headers.get('content-type')).toContain('image/svg+xml');
  });

  it('tells a monitor that it is up, ready, and how the fences stand', async () => {
    expect((await sample.app.request('/healthz')).status).toBe(200);
    expect(await (await sample.app.request('/readyz')).json()).toMatchObject({ ok: true });
    const metrics = await sample.text('/metrics');
    expect(metrics).toContain('stormpale_fences{standing="short from new"} 1');
    expect(metrics).toContain('stormpale_last_sweep_failed_fences 0');
  });

  it('refuses every method but reading', async () => {
    for (const method of ['POST', 'PUT', 'DELETE', 'PATCH']) {
      const refused = await sample.app.request('/fences/PR-01', { method });
      expect(refused.status, method).toBe(405);
      expect(refused.headers.get('allow'), method).toBe('GET, HEAD');
    }
    expect((await sample.app.request('/fences', { method: 'HEAD' })).status).toBe(200);
  });

  it('says the way out where there is no page', async () => {
    const response = await sample.app.request('/nowhere');
    expect(response.status).toBe(404);
    const html = await response.text();
    expect(html).toContain('There is no page at /nowhere.');
    expect(html).toContain('Go to the list of fences');
  });

  it('answers plainly where the register is gone, without its inner words', async () => {
    const broken = await sampleApp();
    await broken.register.close();
    try {
      const page = await broken.app.request('/fences');
      expect(page.status).toBe(500);
      const html = await page.text();
      expect(html).toContain('Nothing in the register was changed.');
      expect(html).not.toMatch(/driver|sqlite|at .*\.ts/i);
      expect((await broken.app.request('/readyz')).status).toBe(503);
    } finally {
      await broken.close();
    }
  });
});
