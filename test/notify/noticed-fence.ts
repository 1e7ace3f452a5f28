import type { FenceFacts } from '../../src/forecast/fence-facts.ts';
import { forecastFence } from '../../src/forecast/forecast-fence.ts';
import type { Matter } from '../../src/notify/matter-rules.ts';
import type { NoticedFence, OfficeFacts, RecipientFacts } from '../../src/notify/message-facts.ts';

export const OFFICE: OfficeFacts = {
  name: 'Gale & Rail Fence Care',
  phone: '555-0100',
  email: 'office@example.org',
  postalAddress: null,
};
export const ANN: RecipientFacts = { name: 'Ann Tidewell', language: 'en', letter: null, covering: null };

const FACTS: FenceFacts = {
  ref: 'F-1',
  site: {
    exposure: 'B',
    elevationM: 5,
    topographicFactor: 1,
    soilClass: 'medium-sand',
    soilSaturated: false,
    lateralBearingDoubled: false,
    climate: { kind: 'measured', rainMmPerYear: 1300, meanTemperatureC: 18, dryMonths: 0 },
    wind: { kind: 'map', basis: 'ultimate', speedMps: 46.9392, returnPeriodYears: 300, second: null, hurricane: false },
    seasonWindow: { opens: '06-01', closes: '11-30', share: 0.8 },
  },
  run: {
    heightM: 1.8288,
    runLengthM: 24.384,
    bottomGapM: 0,
    postSpacingM: 2.4384,
    solidity: 1,
    ends: [
      { kind: 'return', returnLengthM: 5 },
      { kind: 'return', returnLengthM: 5 },
    ],
  },
  wood: {
    section: { kind: 'rectangular', widthMm: 88.9, depthMm: 88.9 },
    species: 'southern-pine',
    grade: 'no-2',
    incised: false,
    treatmentClass: 'above-ground-stock',
    momentCapacityNm: null,
  },
  installed: { earliest: '2014-04-15', latest: '2014-04-15' },
  ground: { embedmentM: 0.6096, footing: 'concrete', footingDiameterM: 0.2286 },
  trimmer: { guards: true, yearlyCutMm: 0 },
  posts: [],
  works: [],
  inspections: [],
  outcomes: [],
  learned: null,
};

/** How a test's fence differs from the common one. */
export interface FenceChanges extends Partial<Omit<NoticedFence, 'forecast' | 'matters'>> {
  readonly ref?: string;
  readonly installed?: string;
  readonly ground?: FenceFacts['ground'];
  readonly wind?: FenceFacts['site']['wind'];
  readonly matters?: readonly Matter[];
}

/** A fence in Georgia as the message room gets it, in January 2027, with its real forecast. */
export function noticedFence(changes: FenceChanges = {}): NoticedFence {
  const { ref, installed, ground, wind, ...rest } = changes;
  const facts: FenceFacts = {
    ...FACTS,
    ref: ref ?? FACTS.ref,
    installed: installed ? { earliest: installed, latest: installed } : FACTS.installed,
    ground: ground ?? FACTS.ground,
    site: { ...FACTS.site, wind: wind ?? FACTS.site.wind },
  };
  const forecast = forecastFence(facts, 2027, { standingReturnPeriodYears: 300, lookAheadSeasons: 2 });
  return {
    forecast,
    standing: forecast.standing,
    endsStanding: forecast.endsStanding,
    siteName: 'Heron Landing',
    place: 'Marshfield, Georgia',
    units: 'us',
    matters: ['short'],
    first: true,
    today: '2027-01-15',
    seasonCloses: '11-30',
    renewal: null,
    remindedSeason: null,
    gain: null,
    offer: null,
    ...rest,
  };
}
