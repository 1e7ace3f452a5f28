import { ANCHOR_CHECKS } from './anchors.checks.ts';
import { DECAY_LAW_CHECKS } from './decay-law.checks.ts';
import { EVIDENCE_CHECKS } from './evidence.checks.ts';
import { FIELD_LIVES_CHECKS } from './field-lives.checks.ts';
import { FOOTING_CHECKS } from './footing.checks.ts';
import { FORCE_COEFFICIENT_CHECKS } from './force-coefficient.checks.ts';
import { FOUND_FACT_CHECKS } from './found-facts.checks.ts';
import { HAZARD_CHECKS } from './hazard.checks.ts';
import { LOCAL_RULE_CHECKS } from './local-rules.checks.ts';
import { MONEY_CHECKS } from './money.checks.ts';
import { NORMAL_DISTRIBUTION_CHECKS } from './normal-distribution.checks.ts';
import { POLE_PRACTICE_CHECKS } from './pole-practice.checks.ts';
import { POST_TRIAL_CHECKS } from './post-trials.checks.ts';
import type { PublishedCheck } from './published-check.ts';
import { REFERENCE_CASE_CHECKS } from './reference-case.checks.ts';
import { ROTTING_SHELL_CHECKS } from './rotting-shell.checks.ts';
import { SCHEFFER_CHECKS } from './scheffer.checks.ts';
import { SECTION_CHECKS } from './section.checks.ts';
import { STORM_SEASON_CHECKS } from './storm-season.checks.ts';
import { TRADE_FACT_CHECKS } from './trade-facts.checks.ts';
import { WIND_FIGURE_CHECKS } from './wind-figure.checks.ts';
import { WIND_PRESSURE_CHECKS } from './wind-pressure.checks.ts';
import { WOOD_TEST_CHECKS } from './wood-tests.checks.ts';

/** Every published check, in the order of the page. */
export const ALL_CHECKS: readonly PublishedCheck[] = [
  ...TRADE_FACT_CHECKS,
  ...REFERENCE_CASE_CHECKS,
  ...ROTTING_SHELL_CHECKS,
  ...WIND_PRESSURE_CHECKS,
  ...WIND_FIGURE_CHECKS,
  ...FORCE_COEFFICIENT_CHECKS,
  ...LOCAL_RULE_CHECKS,
  ...SECTION_CHECKS,
  ...WOOD_TEST_CHECKS,
  ...FOOTING_CHECKS,
  ...FOUND_FACT_CHECKS,
  ...HAZARD_CHECKS,
  ...DECAY_LAW_CHECKS,
  ...FIELD_LIVES_CHECKS,
  ...EVIDENCE_CHECKS,
  ...POST_TRIAL_CHECKS,
  ...POLE_PRACTICE_CHECKS,
  ...SCHEFFER_CHECKS,
  ...STORM_SEASON_CHECKS,
  ...MONEY_CHECKS,
  ...NORMAL_DISTRIBUTION_CHECKS,
  ...ANCHOR_CHECKS,
];
