import type { Provenance } from '../units/provenance.ts';
import { HAZARD_PROVENANCE } from './hazard-curve.ts';
import type { ReasonContext } from './reason-context.ts';
import { RECORDED, type ReasonStep, reasonStep } from './reason-step.ts';
import { threeSecondGust } from './three-second-gust.ts';
import type { WindBasis, WindEntry } from './wind-entry.ts';

const CONVERTED: Provenance = { source: 'IBC 1609.3.1 and its table of both speeds', tag: 'memory' };

/** How an entered speed becomes a 3-second gust, for the bases that are none. */
const CONVERSIONS: Partial<Readonly<Record<WindBasis, string>>> = {
  asd: 'V_entered / sqrt(0.6)',
  'fastest-mile': '1.05 V_entered + 10.5 mph',
};

/** Where a site's curve comes from: two entered points fix it; from one it follows by the non-hurricane ratio. */
function curveOf(wind: WindEntry): {
  readonly provenance: Provenance;
  readonly location: string;
  readonly scale: string;
} {
  const twoPoints = wind.second !== null && wind.kind === 'map' && wind.returnPeriodYears !== null;
  return twoPoints
    ? {
        provenance: { source: 'Gumbel curve through the two entered gusts', tag: 'derived' },
        location: 'V_1 - a ln T_1',
        scale: '(V_2 - V_1) / ln(T_2 / T_1)',
      }
    : { provenance: HAZARD_PROVENANCE, location: 'V_50 (0.36 + 0.1 ln 12)', scale: '0.1 V_50' };
}

/** Steps from the entered design wind to the site's curve and its design gust. */
export function hazardSteps({ facts, forecast }: ReasonContext): readonly ReasonStep[] {
  const { wind } = facts.site;
  const { hazard, designGust } = forecast;
  const ofCurve = curveOf(wind);
  const curve = ofCurve.provenance;
  const part = { basis: 'both', group: 'hazard' } as const;
  const steps = [
    reasonStep(
      part,
      {
        symbol: 'V_entered',
        quantity: `${wind.kind === 'map' ? 'map speed' : 'local fence rule'}, ${wind.basis}${wind.returnPeriodYears === null ? '' : `, ${wind.returnPeriodYears} years`}`,
        value: wind.speedMps,
        unit: 'm/s',
        equation: 'as entered',
      },
      RECORDED,
    ),
  ];
  const conversion = CONVERSIONS[wind.basis];
  if (conversion !== undefined) {
    steps.push(
      reasonStep(
        part,
        {
          symbol: 'V_3s',
          quantity: 'entered speed as a 3-second gust',
          value: threeSecondGust(wind.basis, wind.speedMps),
          unit: 'm/s',
          equation: conversion,
        },
        CONVERTED,
      ),
    );
  }
  if (wind.second) {
    steps.push(
      reasonStep(
        part,
        {
          symbol: 'V_second',
          quantity: `second gust, ${wind.second.returnPeriodYears} years, same basis`,
          value: wind.second.speedMps,
          unit: 'm/s',
          equation: 'as entered',
        },
        RECORDED,
      ),
    );
  }
  if (hazard.kind === 'gumbel') {
    steps.push(
      reasonStep(
        part,
        {
          symbol: 'u',
          quantity: 'location of the yearly maximum gust',
          value: hazard.locationMps,
          unit: 'm/s',
          equation: `${ofCurve.location}, ${hazard.explanation}`,
        },
        curve,
      ),
      reasonStep(
        part,
        {
          symbol: 'a',
          quantity: 'scale of the yearly maximum gust',
          value: hazard.scaleMps,
          unit: 'm/s',
          equation: `${ofCurve.scale}, ${hazard.explanation}`,
        },
        curve,
      ),
    );
  } else {
    steps.push(
      reasonStep(
        part,
        { symbol: 'u, a', quantity: 'hazard curve', value: 'none', unit: '-', equation: hazard.reason },
        curve,
      ),
    );
  }
  steps.push(
    reasonStep(
      part,
      {
        symbol: 'V_design',
        quantity: 'design gust',
        value: designGust.gustMps,
        unit: 'm/s',
        equation: designGust.explanation,
      },
      wind.kind === 'local-rule' ? RECORDED : curve,
    ),
  );
  return steps;
}
