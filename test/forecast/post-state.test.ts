import { describe, expect, it } from 'vitest';
import { type PostState, SOUND_CONDITION, soundPost } from '../../src/forecast/post-state.ts';
import { RUNNING_CLOCK } from '../../src/forecast/rot-clock.ts';
import { PINE_4X4 } from './example-fence.ts';

const POST: PostState = {
  number: 3,
  piece: '3 by W',
  positionM: 5,
  bays: 2,
  wood: PINE_4X4,
  installed: { earliest: '2015-03-01', latest: '2015-03-01' },
  condition: {
    broken: true,
    leaning: true,
    closedOff: true,
    collarCracked: true,
    railConnection: 0.4,
    cavityDiameterMm: 30,
  },
  clock: RUNNING_CLOCK,
  cuts: { measured: { depthMm: 3, day: 20_000 }, yearlyCutMm: 0.5, untilDay: null },
  sleeveNm: 4000,
  ground: { embedmentM: 0.6, footing: 'concrete', footingDiameterM: 0.23 },
  sharedRun: null,
};

describe('a sound post', () => {
  it('is neither broken nor leaning nor closed off, its collar whole, its heart full, its rails not looked at', () => {
    expect(SOUND_CONDITION).toEqual({
      broken: false,
      leaning: false,
      closedOff: false,
      collarCracked: false,
      railConnection: null,
      cavityDiameterMm: 0,
    });
  });

  it('is the post with nothing found at it, all else as it is', () => {
    expect(soundPost(POST)).toEqual({ ...POST, condition: SOUND_CONDITION });
  });
});
