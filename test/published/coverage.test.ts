import { describe, expect, it } from 'vitest';
import { TREATMENT_CLASS_KEYS, TREATMENT_CLASSES } from '../../src/decay/treatment-class.ts';
import { ALL_CHECKS } from './all-checks.ts';
import { CLASS_CHECKS, LIMIT_STATES, STATE_CHECKS } from './coverage.ts';
import { OUTSIDE_TAGS, type PublishedCheck } from './published-check.ts';
import { OWN_SOURCES } from './sources.ts';

const byId = new Map(ALL_CHECKS.map((check) => [check.id, check]));
const outside = ALL_CHECKS.filter((check) => OUTSIDE_TAGS.has(check.tag));

describe('outside evidence', () => {
  it('is at least 85 checks from at least 22 works, none of them our own', () => {
    expect(outside.length).toBeGreaterThanOrEqual(85);
    expect(new Set(outside.map((check) => check.source)).size).toBeGreaterThanOrEqual(22);
    expect(outside.filter((check) => OWN_SOURCES.has(check.source)).map((check) => check.id)).toEqual([]);
  });

  it('is named for every treatment class and limit state that it is said to touch', () => {
    const named = [...Object.values(CLASS_CHECKS), ...Object.values(STATE_CHECKS)].flat();
    expect(named.filter((id) => !OUTSIDE_TAGS.has(byId.get(id)?.tag ?? 'memory'))).toEqual([]);
    expect(Object.keys(CLASS_CHECKS)).toEqual([...TREATMENT_CLASS_KEYS]);
    expect(Object.keys(STATE_CHECKS)).toEqual([...LIMIT_STATES]);
  });

  it('moves with the class that it is said to touch', () => {
    const print = (check: PublishedCheck): string => `${check.computed()} ${check.detail?.() ?? ''}`;
    const idle = TREATMENT_CLASS_KEYS.flatMap((key) =>
      CLASS_CHECKS[key].filter((id) => {
        const check = byId.get(id)!;
        const parameters: { woodFactor: number } = TREATMENT_CLASSES[key];
        const kept = parameters.woodFactor;
        const before = print(check);
        parameters.woodFactor = 0.3 * kept;
        try {
          return print(check) === before;
        } finally {
          parameters.woodFactor = kept;
        }
      }),
    );
    expect(idle).toEqual([]);
  });
});
