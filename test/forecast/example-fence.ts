import { nominalSection } from '../../src/capacity/post-section.ts';
import type { FenceFacts, SiteFacts } from '../../src/forecast/fence-facts.ts';
import type { PostWood } from '../../src/forecast/post-wood.ts';
import { metresFromFeet, mmFromInches } from '../../src/units/length.ts';
import { mpsFromMph } from '../../src/units/speed.ts';

/** A 4x4 No.2 southern pine post, ground contact. */
export const PINE_4X4: PostWood = {
  section: nominalSection('4x4'),
  species: 'southern-pine',
  grade: 'no-2',
  incised: false,
  treatmentClass: 'ground-contact',
  momentCapacityNm: null,
};

/** A warm, wet inland site: 105 mph once in 300 years, exposure B, medium sand. */
export const WARM_SITE: SiteFacts = {
  exposure: 'B',
  elevationM: 0,
  topographicFactor: 1,
  soilClass: 'medium-sand',
  soilSaturated: false,
  lateralBearingDoubled: true,
  climate: { kind: 'measured', rainMmPerYear: 1600, meanTemperatureC: 19.5, dryMonths: 0 },
  wind: {
    kind: 'map',
    basis: 'ultimate',
    speedMps: mpsFromMph(105),
    returnPeriodYears: 300,
    second: null,
    hurricane: false,
  },
  seasonWindow: { opens: '03-01', closes: '10-31', share: 0.8 },
};

/** 80 ft of 6 ft solid fence, 8 ft bays, both ends returned, 9 in collars 24 in deep, built on 1 March 2015. */
export const EXAMPLE_FENCE: FenceFacts = {
  ref: 'EX-1',
  site: WARM_SITE,
  run: {
    heightM: metresFromFeet(6),
    runLengthM: metresFromFeet(80),
    bottomGapM: 0,
    postSpacingM: metresFromFeet(8),
    solidity: 1,
    ends: [
      { kind: 'return', returnLengthM: metresFromFeet(20) },
      { kind: 'return', returnLengthM: metresFromFeet(20) },
    ],
  },
  wood: PINE_4X4,
  installed: { earliest: '2015-03-01', latest: '2015-03-01' },
  ground: { embedmentM: mmFromInches(24) / 1000, footing: 'concrete', footingDiameterM: mmFromInches(9) / 1000 },
  trimmer: { guards: null, yearlyCutMm: 0 },
  posts: [],
  works: [],
  inspections: [],
  outcomes: [],
  learned: null,
};
