import { FOOTING_SPREAD } from '../capacity/soil-class.ts';
import type { LearnedFacts } from './evidence/learned-facts.ts';

/**
 * Prior of ln footing resistance about its median: shift and spread [-], as judged, or as the register learned from lean
 * outcomes and the office accepted.
 * Source: `FOOTING_SPREAD` (judgement).
 */
export const footingPrior = (learned: LearnedFacts | null): { readonly logShift: number; readonly spread: number } =>
  learned?.footing ?? { logShift: 0, spread: FOOTING_SPREAD };
