import { EXPOSURES } from '../capacity/velocity-pressure.ts';
import { addDays, DAYS_PER_YEAR } from '../units/calendar-day.ts';
import { metresFromFeet } from '../units/length.ts';
import { climateChanges } from './climate-changes.ts';
import type { InstallDate } from './fence-facts.ts';
import {
  type ChangeEnd,
  changedByStep,
  changedEitherWay,
  type InputChange,
  sameText,
  shortNumber,
  type ValueText,
} from './input-change.ts';
import { runChanges } from './run-changes.ts';
import { type SensitivityCase, withPosts, withSite } from './sensitivity-case.ts';
import { woodChanges } from './wood-changes.ts';

/**
 * How far a record may plausibly be off; judgement throughout: a design gust read off a map by eye, the nearest weather
 * station for the site, a tape read by a crew, boards counted by eye, a year remembered instead of a day.
 */
const PLAUSIBLE_ERRORS = {
  /** Design gust, as a share [-]. */
  gustShare: 0.05,
  /** Mean annual rain, as a share [-]. */
  rainShare: 0.2,
  /** Mean annual temperature [degC]. */
  temperatureC: 1.5,
  /** Each side of the section [mm]. */
  sectionMm: 3,
  /** Post spacing [m]: 1 ft. */
  spacingM: metresFromFeet(1),
  /** Height [m]: a quarter of a foot. */
  heightM: metresFromFeet(0.25),
  /** Solidity [-]. */
  solidity: 0.1,
  /** Install date [a]. */
  installYears: 1,
} as const;

const signedText = (sign: -1 | 1, text: string): ValueText => sameText(`${sign < 0 ? '−' : '+'}${text}`);

const shiftedDate = (date: InstallDate, days: number): InstallDate => ({
  earliest: addDays(date.earliest, days),
  latest: addDays(date.latest, days),
});

/** The present build set so much earlier or later; posts set at another time keep theirs. */
function installEnd(at: SensitivityCase, sign: -1 | 1): ChangeEnd {
  const { built } = at.state;
  const installed = shiftedDate(built, sign * PLAUSIBLE_ERRORS.installYears * DAYS_PER_YEAR);
  const shifted = withPosts(at, (post) =>
    post.installed.earliest === built.earliest && post.installed.latest === built.latest
      ? { ...post, installed }
      : post,
  );
  return {
    label: signedText(sign, `${PLAUSIBLE_ERRORS.installYears} year`),
    at: { ...shifted, state: { ...shifted.state, built: installed } },
  };
}

/**
 * Every recorded input of a fence moved by the plausible error of its record, one at a time.
 * Source: `PLAUSIBLE_ERRORS` and the steps between classes, judgement.
 */
export function recordedChanges(at: SensitivityCase): readonly InputChange[] {
  const { built } = at.state;
  return [
    changedByStep(
      'exposure category',
      EXPOSURES,
      (exposure) => exposure === at.site.exposure,
      (exposure) => ({ label: sameText(exposure), at: withSite(at, { exposure }) }),
    ),
    changedEitherWay('design gust', (sign) => ({
      label: signedText(sign, `${shortNumber(PLAUSIBLE_ERRORS.gustShare * 100, 0)} %`),
      at: { ...at, gustMps: at.gustMps * (1 + sign * PLAUSIBLE_ERRORS.gustShare) },
    })),
    ...climateChanges(at, PLAUSIBLE_ERRORS),
    ...woodChanges(at, PLAUSIBLE_ERRORS),
    ...runChanges(at, PLAUSIBLE_ERRORS),
    ...(built.earliest === built.latest ? [changedEitherWay('install date', (sign) => installEnd(at, sign))] : []),
  ];
}
