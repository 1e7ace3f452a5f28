import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { remarkInSpanish } from '../../../src/drawing/spanish/forecast-remarks.ts';
import { loadedMaterialIn, materialNameIn } from '../../../src/drawing/spanish/material-names.ts';
import { reasonStepIn } from '../../../src/drawing/spanish/reason-step-in.ts';
import { inputInSpanish } from '../../../src/drawing/spanish/sensitivity-inputs.ts';
import { worksReasonInSpanish } from '../../../src/drawing/spanish/works-reasons.ts';
import type { FenceFacts } from '../../../src/forecast/fence-facts.ts';
import { DEFAULT_SETTINGS } from '../../../src/forecast/forecast-fence.ts';
import type { ReasonStep } from '../../../src/forecast/reason-step.ts';
import { explainForecast } from '../../../src/forecast/reasons.ts';
import { SHIPPED_CATALOGUE } from '../../../src/season/works-catalogue.ts';
import { RECIPES } from '../../../src/season/works-options.ts';
import { EXAMPLE_FENCE, PINE_4X4, WARM_SITE } from '../../forecast/example-fence.ts';
import { englishLeft } from '../../web/spanish/english-left.ts';

const left = (text: string): readonly string[] => englishLeft(text.replaceAll('<', '&lt;'), []);

/** Every text in single quotes after a key, in the rooms that write reasons. */
function written(keys: string): readonly string[] {
  const found = new Set<string>();
  for (const room of ['forecast', 'forecast/evidence', 'capacity', 'decay']) {
    const folder = join('src', room);
    for (const name of readdirSync(folder).filter((each) => each.endsWith('.ts'))) {
      const source = readFileSync(join(folder, name), 'utf8');
      for (const [, text] of source.matchAll(new RegExp(`\\b(?:${keys}):\\s*'((?:[^'\\\\\\n]|\\\\.)+)'`, 'g')))
        found.add((text ?? '').replaceAll("\\'", "'"));
    }
  }
  return [...found];
}

const STEP: ReasonStep = {
  basis: 'both',
  group: 'rot',
  symbol: 'd',
  quantity: '',
  value: 1,
  unit: 'mm',
  us: null,
  equation: '',
  source: '',
  tag: 'derived',
};

describe('what the rooms below write in English, said in Spanish', () => {
  it.each(['quantity', 'equation', 'source'] as const)('leaves no English in any %s', (key) => {
    const texts = written(key);
    expect(texts.length).toBeGreaterThan(20);
    expect(texts.filter((text) => left(reasonStepIn({ ...STEP, [key]: text }, 'es')[key]).length > 0)).toEqual([]);
  });

  it('leaves no English in the reasons of fences of every kind', { timeout: 60_000 }, () => {
    const site = (some: Partial<FenceFacts['site']>): FenceFacts => ({
      ...EXAMPLE_FENCE,
      site: { ...WARM_SITE, ...some },
    });
    const wind = { ...WARM_SITE.wind, kind: 'local-rule', returnPeriodYears: null } as const;
    const fences: readonly FenceFacts[] = [
      EXAMPLE_FENCE,
      site({ soilClass: 'soft-clay', climate: { kind: 'decay-zone', zone: 3 }, wind }),
      site({ wind: { ...WARM_SITE.wind, hurricane: true }, soilSaturated: true }),
      site({ wind: { ...WARM_SITE.wind, basis: 'fastest-mile', second: { speedMps: 30, returnPeriodYears: 10 } } }),
      site({ wind: { ...WARM_SITE.wind, second: { speedMps: 60, returnPeriodYears: 10 } } }),
      { ...EXAMPLE_FENCE, ground: { embedmentM: null, footing: null, footingDiameterM: null } },
      { ...EXAMPLE_FENCE, run: { ...EXAMPLE_FENCE.run, solidity: 0.4, ends: [{ kind: 'free' }, { kind: 'gate' }] } },
      { ...EXAMPLE_FENCE, wood: { ...PINE_4X4, treatmentClass: 'does-not-rot', momentCapacityNm: 9000 } },
      { ...EXAMPLE_FENCE, wood: { ...PINE_4X4, section: { kind: 'round', diameterMm: 100 } } },
    ];
    const english = new Set<string>();
    for (const facts of fences) {
      for (const which of ['line posts', 'ends'] as const) {
        const { steps, sensitivity } = explainForecast(facts, 2027, DEFAULT_SETTINGS, { which });
        for (const step of steps.map((each) => reasonStepIn(each, 'es'))) {
          const { quantity, value, equation, source, basis, group, tag } = step;
          for (const text of [quantity, String(value), equation, source, basis, group, tag])
            for (const found of left(text)) english.add(found);
        }
        for (const { input, low, high } of sensitivity.bars)
          for (const text of [input, low.label.us, high.label.metric])
            if (text !== 'as recorded') for (const found of left(inputInSpanish(text))) english.add(found);
      }
    }
    expect([...english]).toEqual([]);
  });

  it('says why works belong together, and what they need', () => {
    const whys = RECIPES.flatMap(({ why }) => (why === null ? [] : [why]));
    expect(whys.filter((why) => worksReasonInSpanish(why) === why)).toEqual([]);
    const materials = Object.values(SHIPPED_CATALOGUE).flatMap(({ materials: each }) => each.map(({ name }) => name));
    expect(materials.length).toBeGreaterThan(10);
    expect(materials.filter((name) => materialNameIn(name, 'es') === name)).toEqual([]);
    // the office's own names are nobody's to translate
    expect(materialNameIn('gate latch, heavy', 'es')).toBe('gate latch, heavy');
    expect(loadedMaterialIn('brackets and screws, set', 'set', 'en')).toBe('brackets and screws');
    expect(loadedMaterialIn('brackets and screws, set', 'set', 'es')).toBe('escuadras y tornillos');
    expect(loadedMaterialIn('gate latch, heavy', 'piece', 'en')).toBe('gate latch, heavy');
  });

  it('says what was found at posts, for one and for several', () => {
    expect(remarkInSpanish('Post 9 is recorded leaning: stay away in wind.')).toBe(
      'Poste 9: anotado como inclinado. Aléjese cuando haya viento.',
    );
    expect(
      remarkInSpanish(
        'Posts 3, 4 are recorded broken and hold nothing; what the posts beside take over is not counted.',
      ),
    ).toMatch(/^Postes 3, 4: anotados como rotos/);
    expect(remarkInSpanish('something new')).toBe('something new');
  });
});
