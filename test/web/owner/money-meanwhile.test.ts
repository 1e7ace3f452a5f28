import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { worksMeanwhile } from '../../../src/service/works-meanwhile.ts';
import { answeringSample, ownerPathOf } from './answering-sample.ts';
import { ownerBrowser } from './owner-browser.ts';

const TODAY = '2026-11-24';
const due = (ref: string) => ({ ref, isOutworn: true, ahead: null });

describe('a fence that money says to replace now and that the season plan mends', () => {
  let sample: Awaited<ReturnType<typeof answeringSample>>;
  beforeAll(async () => {
    sample = await answeringSample();
  });
  afterAll(() => sample.close());

  it('is known by its visit, and no other is: not one that is kept, nor one that is rebuilt or only looked at', async () => {
    const { register } = sample;
    const of = async (fences: Parameters<typeof worksMeanwhile>[1]) => [
      ...(await worksMeanwhile(register, fences, TODAY)).values(),
    ];
    expect(await of([due('PR-02'), { ...due('PR-01'), isOutworn: false }])).toMatchObject([
      { fenceRef: 'PR-02', firstDay: '2027-01-12', state: 'proposed', works: [{ kind: 'post-swap' }] },
    ]);
    await register.db
      .updateTable('visit_items')
      .set({ works: JSON.stringify([{ kind: 'rebuild', posts: [], postCount: 9 }]) })
      .where('uid', '=', 'V-HOA')
      .execute();
    expect(await of([due('PR-02')])).toEqual([]);
    await register.db
      .updateTable('visit_items')
      .set({ works: JSON.stringify([{ kind: 'inspect', posts: [2], postCount: 1 }]) })
      .where('uid', '=', 'V-HOA')
      .execute();
    expect(await of([due('PR-02')])).toEqual([]);
  });

  it('says on the page of money why both are so, and what to do', { timeout: 60_000 }, async () => {
    await sample.register.db
      .updateTable('fences')
      .set({ installed_earliest: '1999-03-20', installed_latest: '1999-03-20' })
      .where('ref', '=', 'PR-04')
      .execute();
    const browser = ownerBrowser(sample, await ownerPathOf(sample, 'QUINN'));
    await expect
      .poll(async () => (await browser.get('/money')).text, { timeout: 50_000 })
      .toContain('ya: travesaños y tablas están gastados');
    const { text } = await browser.get('/money');
    expect(text).toContain(
      'El plan de la temporada le hace cambio de postes, postes 2, 5 el 11 de enero de 2027 (propuesto) de todos modos',
    );
    expect(text).toContain('Si la reconstruye antes, díganoslo y esa visita se cancela.');
    expect(text).toMatch(
      /Para cubrir lo previsto: (\d[\d,]* USD ahora y )?\d[\d,]* USD cada año, \d[\d,]* USD en total\./,
    );
    expect(text).toContain('la suma prevista de ese año puede quedar por encima del rango');
    // thousands stand apart by commas, in Spanish too
    expect(text).toMatch(/\d,\d{3} USD/);
    expect(text).not.toMatch(/\d\.\d{3} USD/);
  });
});
