import type { FenceFacts } from '../../src/forecast/fence-facts.ts';
import { DEFAULT_SETTINGS } from '../../src/forecast/forecast-fence.ts';
import { type Sensitivity, sensitivityOf } from '../../src/forecast/sensitivity.ts';
import { EXAMPLE_FENCE, PINE_4X4, WARM_SITE } from '../forecast/example-fence.ts';

const COOL_SITE = { ...WARM_SITE, climate: { kind: 'decay-zone', zone: 2 } } as const;

const FENCES = {
  usual: EXAMPLE_FENCE,
  'short from new': { ...EXAMPLE_FENCE, site: { ...WARM_SITE, exposure: 'C' } },
  'with an install date known as a range': {
    ...EXAMPLE_FENCE,
    installed: { earliest: '1999-01-01', latest: '2026-01-01' },
  },
  'with an end beyond sixty years': {
    ...EXAMPLE_FENCE,
    site: COOL_SITE,
    wood: { ...PINE_4X4, treatmentClass: 'heavy-duty' },
  },
  'not short within sixty years': {
    ...EXAMPLE_FENCE,
    installed: { earliest: '2026-03-01', latest: '2026-03-01' },
    site: COOL_SITE,
    wood: { ...PINE_4X4, treatmentClass: 'extreme-duty', grade: 'no-1' },
  },
  'near the gust when new, of slow rot': {
    ...EXAMPLE_FENCE,
    site: { ...COOL_SITE, exposure: 'C', wind: { ...WARM_SITE.wind, speedMps: 46 } },
    wood: { ...PINE_4X4, treatmentClass: 'extreme-duty' },
  },
  'of steel': { ...EXAMPLE_FENCE, wood: { ...PINE_4X4, treatmentClass: 'does-not-rot', momentCapacityNm: 9000 } },
} as const satisfies Record<string, FenceFacts>;

/** Fences whose pictures of sensitivity differ most. */
export const SENSITIVE_FENCES = Object.keys(FENCES) as readonly (keyof typeof FENCES)[];

const known = new Map<string, Sensitivity>();

/** The sensitivity of one of these fences, worked out once. */
export function sensitivityNamed(name: keyof typeof FENCES): Sensitivity {
  const found = known.get(name) ?? sensitivityOf(FENCES[name], 2027, DEFAULT_SETTINGS);
  known.set(name, found);
  return found;
}
