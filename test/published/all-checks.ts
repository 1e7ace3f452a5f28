import { ANCHOR_CHECKS } from './anchors.checks.ts';
import { DECAY_LAW_CHECKS } from './decay-law.checks.ts';
import { FIELD_LIVES_CHECKS } from './field-lives.checks.ts';
import { FOOTING_CHECKS } from './footing.checks.ts';
import { FORCE_COEFFICIENT_CHECKS } from './force-coefficient.checks.ts';
import { HAZARD_CHECKS } from './hazard.checks.ts';
import { NORMAL_DISTRIBUTION_CHECKS } from './normal-distribution.checks.ts';
import type { PublishedCheck } from './published-check.ts';
import { REFERENCE_CASE_CHECKS } from './reference-case.checks.ts';
import { ROTTING_SHELL_CHECKS } from './rotting-shell.checks.ts';
import { SCHEFFER_CHECKS } from './scheffer.checks.ts';
import { SECTION_CHECKS } from './section.checks.ts';
import { TRADE_FACT_CHECKS } from './trade-facts.checks.ts';
import { WIND_PRESSURE_CHECKS } from './wind-pressure.checks.ts';

/** Every published check, in the order of the page. */
export const ALL_CHECKS: readonly PublishedCheck[] = [
  ...TRADE_FACT_CHECKS,
  ...REFERENCE_CASE_CHECKS,
  ...ROTTING_SHELL_CHECKS,
  ...WIND_PRESSURE_CHECKS,
  ...FORCE_COEFFICIENT_CHECKS,
  ...SECTION_CHECKS,
  ...FOOTING_CHECKS,
  ...HAZARD_CHECKS,
  ...DECAY_LAW_CHECKS,
  ...FIELD_LIVES_CHECKS,
  ...SCHEFFER_CHECKS,
  ...NORMAL_DISTRIBUTION_CHECKS,
  ...ANCHOR_CHECKS,
];
