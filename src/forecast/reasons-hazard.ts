import type { Provenance } from '../units/provenance.ts';
import type { GroupSpeeds } from './fence-forecast.ts';
import { HAZARD_PROVENANCE } from './hazard-curve.ts';
import type { ReasonContext } from './reason-context.ts';
import { RECORDED, type ReasonStep, reasonStep } from './reason-step.ts';
import type { WindEntry } from './wind-entry.ts';

const BELIEF: Provenance = { source: 'quantiles over the belief points; spreads by judgement', tag: 'judgement' };
const MODEL: Provenance = { source: 'definition of standing', tag: 'judgement' };

/** Where a site's curve comes from: two entered points fix it; from one it follows by the non-hurricane ratio. */
function curveProvenance(wind: WindEntry): Provenance {
  const twoPoints = wind.second !== null && wind.kind === 'map' && wind.returnPeriodYears !== null;
  return twoPoints ? { source: 'Gumbel curve through the two entered gusts', tag: 'derived' } : HAZARD_PROVENANCE;
}

/** Steps from the entered design wind to the site's curve and its design gust. */
export function hazardSteps({ facts, forecast }: ReasonContext): readonly ReasonStep[] {
  const { wind } = facts.site;
  const { hazard, designGust } = forecast;
  const curve = curveProvenance(wind);
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
          equation: hazard.explanation,
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
          equation: hazard.explanation,
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

/** Steps from the speeds to what is told: the belief's band, once in N years, the standing. */
export function standingSteps({ forecast, season }: ReasonContext, group: GroupSpeeds): readonly ReasonStep[] {
  const part = { basis: 'expected', group: 'standing' } as const;
  const { snapMps, leanMps } = group;
  const steps = [
    reasonStep(
      part,
      {
        symbol: 'V_snap',
        quantity: `snap speed p50 (p10 ${snapMps.p10.toFixed(1)}, p90 ${snapMps.p90.toFixed(1)} m/s), by ${group.snapState}`,
        value: snapMps.p50,
        unit: 'm/s',
        equation: 'the lesser of bending and shear, over the belief points',
      },
      BELIEF,
    ),
    reasonStep(
      part,
      {
        symbol: 'V_lean',
        quantity: `lean speed p50 (p10 ${leanMps.p10.toFixed(1)}, p90 ${leanMps.p90.toFixed(1)} m/s), by ${group.leanState}`,
        value: leanMps.p50,
        unit: 'm/s',
        equation: 'the lesser of footing and collar, over the belief points',
      },
      BELIEF,
    ),
  ];
  if (group.onceInYears !== null) {
    steps.push(
      reasonStep(
        part,
        {
          symbol: 'N',
          quantity: 'the gust it still holds comes about once in',
          value: group.onceInYears,
          unit: 'a',
          equation: 'exp((V_snap - u) / a)',
        },
        { source: 'Gumbel, rate form 1/T = exp(-(v - u)/a)', tag: 'derived' },
      ),
    );
  }
  if (season.season === 1) {
    steps.push(
      reasonStep(
        part,
        {
          symbol: 'standing',
          quantity: `standing of the ${season.line ? 'line posts' : 'end posts'}, before any margin`,
          value: forecast.standing,
          unit: '-',
          equation: 'V_snap against V_design, as built, now and within the look-ahead',
        },
        MODEL,
      ),
    );
  }
  return steps;
}
