import type { RegisterSettings } from '../register/settings-store.ts';

/** What each setting of the register is for. */
export const SETTING_WORDS: Readonly<Record<keyof RegisterSettings, string>> = {
  standingReturnPeriodYears: 'years: the design gust is read off a site’s curve at this return period',
  lookAheadSeasons: 'seasons after the next that count as closing',
  reminderDays: 'days before a season opens at which owners of short fences are reminded; 0: never',
  holdFirstSweep:
    'yes or no: what the first sweep finds waits until you release it on the page Notices or by "stormpale mail release"',
  largeImportFences:
    'new fences of one import from which on their first notices wait until you release them on the page Notices or by "stormpale mail release"',
  currency: 'three letters: what prices are in, as mails name it',
  timeZone: 'zone of the office: nightly sweep, days of an import',
  companyName: 'who writes to owners, unless the configuration names another',
  companyPostalAddress: 'where the office is found',
  companyPhone: 'number that owners call, unless the configuration names another',
  senderAddress: 'address that mails come from, unless the configuration names another',
};
