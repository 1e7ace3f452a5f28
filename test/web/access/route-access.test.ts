import { Hono } from 'hono';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { authorize, noteCircumstances } from '../../../src/web/access/authorization.ts';
import { ROUTE_ACCESS } from '../../../src/web/access/route-access.ts';
import type { PageEnv } from '../../../src/web/access/visitor.ts';
import { storeAccount } from '../accounts/signed-in.ts';
import { type SampleApp, sampleApp } from '../sample-app.ts';
import { SAMPLE_NOW } from '../sample-register.ts';
import { EXPECTED, type Expected } from './access-expected.ts';
import { everybody, VISITORS } from './access-visitors.ts';

const named = ({ method, path }: { readonly method: string; readonly path: string }): string => `${method} ${path}`;

async function outcomeOf(response: Response): Promise<Expected> {
  const { status } = response;
  if (status === 303 && response.headers.get('location')?.match(/^\/sign-in(\?next=.*)?$/)) return 'sign in';
  if (status === 401) return '401';
  const text = await response.text();
  if (status === 403 && text.includes('may not open this page')) return 'refused';
  return status === 404 && text.includes('This link does not open anything') ? 'unknown' : status;
}

describe('whom a route answers', () => {
  let sample: SampleApp;
  let people: Awaited<ReturnType<typeof everybody>>;
  let places: Readonly<Record<string, string>>;
  beforeAll(async () => {
    sample = await sampleApp();
    await sample.sendMail();
    people = await everybody(sample);
    const board = await storeAccount(sample.register, SAMPLE_NOW, { name: 'looked-after', role: 'board' });
    const mailed = await sample.text('/mail');
    const mails = [...mailed.matchAll(/href="(\/mail\/[^"]+)"/g)].map(([, path]) => path as string);
    // the one with a file to fetch
    const withFile: string[] = [];
    for (const path of mails) {
      if ((await sample.text(path)).includes('/files/0"')) withFile.push(path);
    }
    places = {
      mail: withFile[0] ?? '',
      letter: /href="\/outbox\/(\d+)\/letter"/.exec(await sample.text('/outbox'))?.[1] ?? '',
      account: String(board.id),
      link: people.link.token,
    };
  });
  afterAll(() => sample.close());

  it('is in the table for every route there is, and the table has no other', () => {
    const declared = new Set(sample.pages.routes.filter(({ method }) => method !== 'ALL').map(named));
    expect([...declared].sort()).toEqual([...new Set(ROUTE_ACCESS.map(named))].sort());
    expect(declared.size).toBe(ROUTE_ACCESS.length);
  });

  it('is written down by hand for every one of them', () => {
    expect([...new Set(EXPECTED.map(([method, path]) => `${method} ${path}`))].sort()).toEqual(
      ROUTE_ACCESS.map(named).sort(),
    );
  });

  it.each(EXPECTED)('%s %s, asked as %s', async (method, _path, asked, expected) => {
    const path = asked.replace(/\{(\w+)\}/g, (_all, name: string) => places[name] ?? `{${name}}`);
    expect(path).not.toMatch(/[{}]|\/\//);
    const got: Record<string, Expected> = {};
    for (const who of VISITORS) got[who] = await outcomeOf(await people.ask(method, path, who));
    expect(got).toEqual(expected);
  });

  it('is nobody for a route that the table does not have, whoever asks', async () => {
    const app = new Hono<PageEnv>();
    app.use(noteCircumstances(sample.parts));
    app.use(authorize(sample.parts));
    app.get('/forgotten', (context) => context.text('secret'));
    app.get('/outbox', (context) => context.text('declared'));
    for (const who of VISITORS) {
      const headers = await people.headersOf(who);
      const response = await app.request('/forgotten', { headers });
      expect(response.status, who).toBe(403);
      expect(await response.text(), who).not.toContain('secret');
    }
    const declared = await app.request('/outbox', { headers: await people.headersOf('office') });
    expect(await declared.text()).toBe('declared');
  });

  it('asks for a sign-in for the figures where the pages are not for this machine only', async () => {
    const open = await sampleApp({ publicUrl: 'https://fences.example.org' });
    try {
      expect((await open.pages.request('/metrics', { headers: { host: 'localhost:8480' } })).status).toBe(303);
      expect((await open.app.request('/metrics')).status).toBe(200);
    } finally {
      await open.close();
    }
    const proxied = await sample.pages.request('/metrics', { headers: { 'x-forwarded-for': '203.0.113.9' } });
    expect(proxied.status).toBe(303);
  });

  it('is told a program in JSON, with the way out', async () => {
    const response = await sample.pages.request('/fences/PR-01', { headers: { authorization: 'Bearer stormpale_no' } });
    expect(response.status).toBe(401);
    expect(response.headers.get('www-authenticate')).toBe('Bearer');
    expect(await response.json()).toMatchObject({ wayOut: 'stormpale token new' });
  });

  it('leads back to where one wanted to go', async () => {
    const response = await sample.pages.request('/fences/PR-01/reasons?of=ends');
    expect(response.headers.get('location')).toBe('/sign-in?next=%2Ffences%2FPR-01%2Freasons%3Fof%3Dends');
  });
});
