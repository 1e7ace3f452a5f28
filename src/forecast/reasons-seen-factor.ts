import type { Provenance } from '../units/provenance.ts';
import { type ReasonStep, reasonStep } from './reason-step.ts';

const SPREAD: Provenance = { source: 'spread from fence to fence of the model', tag: 'judgement' };

/** A factor over the median that storms and readings moved: exp(shift + spread z). */
export interface SeenFactor {
  readonly group: string;
  readonly symbol: string;
  readonly quantity: string;
  /** Spread of the ln of the factor [-]. */
  readonly spread: number;
  /** Score: the median of what is believed of it [-]. */
  readonly score: number;
  /** Shift of the ln of the factor that the register learned [-]; null where none was. */
  readonly learnedShift: number | null;
  readonly seen: Provenance;
}

/** Steps from a spread and a score to the factor they make, each with its number; none where the factor is one. */
export function seenFactorSteps(factor: SeenFactor): readonly ReasonStep[] {
  const { symbol, spread, score, learnedShift, seen } = factor;
  const value = Math.exp((learnedShift ?? 0) + spread * score);
  if (value === 1) return [];
  const step = (what: Omit<Parameters<typeof reasonStep>[1], 'unit'>, provenance: Provenance): ReasonStep =>
    reasonStep({ basis: 'expected', group: factor.group }, { ...what, unit: '-' }, provenance);
  const shift =
    learnedShift === null
      ? []
      : [
          step(
            {
              symbol: `m_${symbol}`,
              quantity: `shift of ln ${symbol}`,
              value: learnedShift,
              equation: 'as this register learned it',
            },
            seen,
          ),
        ];
  return [
    ...shift,
    step(
      {
        symbol: `s_${symbol}`,
        quantity: `spread of ln ${symbol} from fence to fence`,
        value: spread,
        equation:
          learnedShift === null ? 'standard deviation, model' : 'standard deviation, as this register learned it',
      },
      learnedShift === null ? SPREAD : seen,
    ),
    step(
      { symbol: `z_${symbol}`, quantity: `score of ln ${symbol}`, value: score, equation: 'median of the posterior' },
      seen,
    ),
    step(
      {
        symbol,
        quantity: factor.quantity,
        value,
        equation: `exp(${learnedShift === null ? '' : `m_${symbol} + `}s_${symbol} z_${symbol})`,
      },
      seen,
    ),
  ];
}
