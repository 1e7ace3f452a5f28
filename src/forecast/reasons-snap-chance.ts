import type { Provenance } from '../units/provenance.ts';
import type { GroupSpeeds } from './fence-forecast.ts';
import { breakProbability } from './hazard-curve.ts';
import type { ReasonContext } from './reason-context.ts';
import { RECORDED, type ReasonStep, reasonStep } from './reason-step.ts';
import { STORM_LOAD_SPREAD } from './storm-load.ts';

const FRAGILITY: Provenance = { source: 'spread of ln force from storm to storm', tag: 'judgement' };
const CHANCE: Provenance = { source: 'convolution of fragility and hazard; survival over the belief', tag: 'derived' };

const add = (what: Parameters<typeof reasonStep>[1], provenance: Provenance): ReasonStep =>
  reasonStep({ basis: 'expected', group: 'chance' }, what, provenance);

/** Steps from the snap speed and the site's curve to the chance that the fence snaps in the season; none without a curve. */
export function snapChanceSteps({ facts, forecast, season }: ReasonContext, group: GroupSpeeds): readonly ReasonStep[] {
  const { hazard } = forecast;
  if (hazard.kind === 'none' || season.pSnap === null) return [];
  const { share } = facts.site.seasonWindow;
  const beta = STORM_LOAD_SPREAD / 2;
  return [
    add(
      {
        symbol: 'w_season',
        quantity: 'share of the yearly hazard that falls into the season',
        value: share,
        unit: '-',
        equation: 'site',
      },
      RECORDED,
    ),
    add(
      {
        symbol: 'beta',
        quantity: 'spread of ln capacity, as a speed, in one storm',
        value: beta,
        unit: '-',
        equation: `half of ${STORM_LOAD_SPREAD}, the spread of ln force`,
      },
      FRAGILITY,
    ),
    add(
      {
        symbol: 'P_50',
        quantity: 'chance to snap in one season, were V_snap certain',
        value: breakProbability(hazard, group.snapMps.p50, beta, share),
        unit: '-',
        equation: 'mean over z, standard normal, of 1 - exp(-w_season exp(-(V_snap exp(beta z) - u) / a))',
      },
      CHANCE,
    ),
    add(
      {
        symbol: 'P(snap)',
        quantity: 'chance to snap in this season, where it still stands at its opening',
        value: season.pSnap,
        unit: '-',
        equation:
          'the mean of the same over the points of the belief, each with its own speed and weighed by the chance that it survived the seasons from season 1 on: the weak points weigh most',
      },
      CHANCE,
    ),
  ];
}
