import { describe, expect, it } from 'vitest';
import { depthSeen } from '../../../src/forecast/evidence/depth-likelihood.ts';
import { type GroundlineReading, INSPECTION_METHODS } from '../../../src/forecast/evidence/inspection.ts';
import { READING_METHODS } from '../../../src/forecast/evidence/reading-method.ts';

const EVERY_KIND: Readonly<Record<GroundlineReading['kind'], GroundlineReading>> = {
  depth: { kind: 'depth', depthMm: 5 },
  'residual-width': { kind: 'residual-width', widthMm: 80 },
  'residual-circumference': { kind: 'residual-circumference', circumferenceMm: 300 },
  'sound-to': { kind: 'sound-to', depthMm: 2 },
  'soft-to': { kind: 'soft-to', depthMm: 20 },
  broken: { kind: 'broken' },
};

const givenBy = (kind: GroundlineReading['kind']): readonly string[] =>
  INSPECTION_METHODS.filter((method) => READING_METHODS[method].gives.includes(kind));

describe('the methods of an inspection', () => {
  it('can all say that a post is broken', () => {
    expect(givenBy('broken')).toEqual(INSPECTION_METHODS);
  });

  it('see depths and their bounds only where something goes into the wood', () => {
    for (const kind of ['depth', 'sound-to', 'soft-to'] as const) {
      expect(givenBy(kind)).toEqual(['awl-or-probe', 'drill-resistance']);
    }
  });

  it('see what is left sound only where something goes round it', () => {
    expect(givenBy('residual-width')).toEqual(['caliper']);
    expect(givenBy('residual-circumference')).toEqual(['circumference-tape']);
  });

  it('have an error wherever they measure something, and none where they do not', () => {
    for (const method of INSPECTION_METHODS) {
      const { gives, errorMm } = READING_METHODS[method];
      expect(errorMm > 0, method).toBe(gives.length > 1);
    }
  });

  it('measure to 2 mm in depth or width, 1.5 mm with a drill and 10 mm in girth', () => {
    expect(Object.fromEntries(INSPECTION_METHODS.map((method) => [method, READING_METHODS[method].errorMm]))).toEqual({
      'awl-or-probe': 2,
      caliper: 2,
      'drill-resistance': 1.5,
      'circumference-tape': 10,
      level: 0,
      eye: 0,
    });
  });

  it('never give a measured depth without an error', () => {
    for (const method of INSPECTION_METHODS) {
      for (const kind of READING_METHODS[method].gives) {
        const seen = depthSeen(EVERY_KIND[kind], { kind: 'round', diameterMm: 120 }, method);
        if (seen.kind === 'measured') expect(seen.errorMm, `${method} ${kind}`).toBeGreaterThan(0);
      }
    }
  });

  it('say of their errors that they are judged, and why', () => {
    for (const method of INSPECTION_METHODS) {
      const { name, provenance } = READING_METHODS[method];
      expect(provenance.tag).toBe('judgement');
      expect(provenance.source.length).toBeGreaterThan(10);
      expect(name).not.toBe('');
    }
    expect(READING_METHODS['awl-or-probe'].provenance.source).toContain('2 mm in depth');
  });
});
