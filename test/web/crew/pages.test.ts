import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { PHONE_SCRIPT_PATH, scriptBytes } from '../../../src/web/crew/crew-script.ts';
import { crewSample } from './crew-sample.ts';
import { crewSender } from './crew-sender.ts';

describe('the pages of a crew', () => {
  let sample: Awaited<ReturnType<typeof crewSample>>;
  beforeAll(async () => {
    sample = await crewSample();
  });
  afterAll(() => sample.close());
  const get = (path: string, cookie: string) => sample.pages.request(path, { headers: { cookie } });

  it("begin with the crew's own visits of the day, what was left, and the next days", async () => {
    const begin = await get('/', sample.crewCookie);
    expect(begin.headers.get('location')).toBe('/today');
    const text = await (await get('/today', sample.crewCookie)).text();
    expect(text).toContain('2 visits today.');
    expect(text).toContain('href="geo:29.41000,-94.98000?q=29.41000,-94.98000"');
    expect(text).toContain('The office has noted no position for this site.');
    expect(text).toContain('Through the side gate; the code is 4471.');
    expect(text).toContain('Ring at the gate house.');
    expect(text).toContain('811 is to be called by 2026-11-21');
    expect(text).toContain('concrete mix');
    expect(text.indexOf('today-1')).toBeLessThan(text.indexOf('past-1'));
    expect(text.indexOf('past-1')).toBeLessThan(text.indexOf('ahead-1'));
    expect(text).not.toContain('south-1');
  });

  it('show the office every crew, and the one that it chooses', async () => {
    const all = await (await get('/today', sample.cookie ?? '')).text();
    expect(all).toContain('3 visits today.');
    expect(all).toContain('south-1');
    const south = await (await get('/today?crew=south', sample.cookie ?? '')).text();
    expect(south).toContain('1 visit today.');
    expect(south).not.toContain('today-1');
    // a crew of its own has nothing to choose
    expect(await (await get('/today?crew=south', sample.crewCookie)).text()).not.toContain('south-1');
  });

  it('speak Spanish to whoever reads it', async () => {
    const today = await (await get('/today', sample.spanishCookie)).text();
    expect(today).toContain('<html lang="es">');
    expect(today).toContain('2 visitas hoy.');
    expect(today).toContain('martes 24 de noviembre de 2026');
    expect(today).toContain('cambio de postes');
    const fence = await (await get('/today/visits/today-1/fences/PR-02?method=caliper', sample.spanishCookie)).text();
    expect(fence).toContain('Ancho sano que queda, de lado a lado');
    expect(fence).toContain('quedan 2.40 in de ancho sano, 2° fuera de plomo');
    expect(fence).toContain('Peligroso: acordonado');
  });

  it('ask for the numbers that the method gives and never for a width where a depth is meant', async () => {
    const fieldsOf = async (method: string) => {
      const text = await (await get(`/today/visits/today-1/fences/PR-02?method=${method}`, sample.crewCookie)).text();
      const sets = [...text.matchAll(/<fieldset class="plain-set" data-method="([a-z-]+)"([^>]*)>(.*?)<\/fieldset>/gs)];
      const shown = sets.filter(([, , attributes]) => !attributes?.includes('hidden'));
      return new Set(
        shown.flatMap(([, , , inside]) => [...(inside ?? '').matchAll(/name="([a-z_]+)"/g)].map(([, name]) => name)),
      );
    };
    expect(await fieldsOf('caliper')).toEqual(new Set(['residual_width']));
    expect(await fieldsOf('awl-or-probe')).toEqual(new Set(['depth', 'sound_to', 'soft_to']));
    expect(await fieldsOf('drill-resistance')).toEqual(new Set(['depth', 'sound_to', 'soft_to', 'cavity']));
    expect(await fieldsOf('circumference-tape')).toEqual(new Set(['residual_circumference']));
    expect(await fieldsOf('level')).toEqual(new Set());
  });

  it('tick at the end what needs no inspection, and what is inspected once a post of it is entered', async () => {
    const ticked = async (uid: string): Promise<readonly string[]> => {
      const text = await (await get(`/today/visits/${uid}`, sample.crewCookie)).text();
      return [...text.matchAll(/<input[^>]*name="did\/([^"]+)"[^>]*>/g)]
        .filter(([box]) => / checked/.test(box))
        .map(([, ref]) => ref ?? '');
    };
    expect(await ticked('ahead-1')).toEqual(['PR-03']);
    expect(await ticked('today-2')).toEqual([]);
    const text = await (await get('/today/visits/today-2', sample.crewCookie)).text();
    expect(text).toContain('data-once-entered="/today/visits/today-2/fences/SK-01"');
    const { send } = await crewSender(sample, sample.crewCookie);
    const at = '/today/visits/today-2/fences/SK-01/posts/1';
    const closed = await send(`${at}/closed-off`, { entry: 'ticks-its-fence', closed_off: 'yes' });
    expect(closed.status).toBe(200);
    expect(await ticked('today-2')).toEqual(['SK-01']);
    expect((await send(`${at}/taken-back`, { entry: 'ticks-no-fence' })).status).toBe(200);
    expect(await ticked('today-2')).toEqual([]);
  });

  it('carry the most that a post can have, for the phone to refuse more without a signal', async () => {
    const path = '/today/visits/today-1/fences/PR-02?method=awl-or-probe';
    const english = await (await get(path, sample.crewCookie)).text();
    const depth = /<input id="depth-awl-or-probe-2"[^>]*>/.exec(english)?.[0] ?? '';
    expect(depth).toContain('data-most="1.75"');
    expect(depth).toContain('at most 1.75 in');
    expect(/<input id="trimmer_cut-2"[^>]*>/.exec(english)?.[0]).toContain('data-most="3.5"');
    expect(/<input id="lean_degrees-2"[^>]*>/.exec(english)?.[0]).not.toContain('data-most');
    const spanish = await (await get(path, sample.spanishCookie)).text();
    expect(/<input id="depth-awl-or-probe-2"[^>]*>/.exec(spanish)?.[0]).toContain('a lo sumo 1.75 in');
  });

  it('work as plain forms: a form leads back to its post, a refused one keeps what was typed', async () => {
    const { send, get: read } = await crewSender(sample, sample.crewCookie);
    const path = '/today/visits/today-1/fences/PR-01/posts/3/reading';
    const fields = { method: 'awl-or-probe', depth: '0.25', lean_degrees: '3', notes: 'ants' };
    const refused = await send(path, { entry: 'plain-form-0', ...fields, depth: '3' }, { byScript: false });
    expect(refused.status).toBe(422);
    const page = await refused.text();
    expect(page).toContain('deeper than half of the post');
    expect(page).toMatch(/value="3"[^>]*id="depth-awl-or-probe-3"|id="depth-awl-or-probe-3"[^>]*value="3"/);
    const taken = await send(path, { entry: 'plain-form-1', ...fields }, { byScript: false });
    expect(taken.status).toBe(303);
    const location = taken.headers.get('location') ?? '';
    expect(location).toBe('/today/visits/today-1/fences/PR-01?method=awl-or-probe&saved=plain-form-1#post-3');
    const after = await read(location.replace(/#.*/, ''));
    expect(after).toContain('0.25 in of rot on each face, 3° out of plumb');
    expect(after).toContain('1 of 11 posts entered');
    expect(after).toContain('Saved.');
    // what was known before stays beside it
    const other = '/today/visits/today-1/fences/PR-02';
    await send(`${other}/posts/2/reading`, { entry: 'plain-form-2', method: 'caliper', residual_width: '2.1' });
    const both = await read(other);
    expect(both).toContain('2026-05-04: 2.40 in of sound width left');
    expect(both).toContain('2.10 in of sound width left');
  });

  it('alone run scripts, which are small and come by an address that changes with them', async () => {
    expect(scriptBytes()).toBeLessThan(50_000);
    const page = await get('/today', sample.crewCookie);
    const policy = page.headers.get('content-security-policy') ?? '';
    expect(policy).toContain("script-src 'self'");
    expect(policy).not.toContain('unsafe');
    expect(page.headers.get('permissions-policy')).toContain('accelerometer=(self)');
    expect(await page.text()).toContain(`src="${PHONE_SCRIPT_PATH}"`);
    const script = await sample.pages.request(PHONE_SCRIPT_PATH);
    expect(script.headers.get('content-type')).toContain('text/javascript');
    expect(script.headers.get('cache-control')).toContain('immutable');
    const worker = await sample.pages.request('/crew-worker.js');
    expect(worker.headers.get('cache-control')).toBe('no-cache');
    for (const gone of [
      '/crew-script/000000000000/crew-page.js',
      PHONE_SCRIPT_PATH.replace('crew-page', 'crew-worker'),
    ]) {
      expect((await sample.pages.request(gone)).status).toBe(404);
    }
    for (const path of ['/fences', '/account', '/sign-in']) {
      const other = await get(path, sample.cookie ?? '');
      expect(other.headers.get('content-security-policy')).not.toContain('script-src');
      expect(other.headers.get('permissions-policy')).toContain('accelerometer=()');
    }
  });
});
