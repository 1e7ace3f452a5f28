import { describe, expect, it } from 'vitest';
import { fenceStates, stateBefore, stateOn } from '../../src/forecast/fence-state.ts';
import { PINE_4X4 } from './example-fence.ts';
import {
  inspection,
  lastState,
  NO_1_WOOD,
  outcome,
  postOf,
  reading,
  STRONG_WOOD,
  withFacts,
  works,
} from './made-up-events.ts';

const swap = works('post-swap', { wood: STRONG_WOOD });

describe('what happens on one day', () => {
  it('goes from the storm over what is found to what is done about it', () => {
    const facts = {
      outcomes: [outcome({})],
      inspections: [inspection('2022-03-05', reading(5, { railConnection: 0.3 }))],
      works: [swap],
    };
    const states = fenceStates(withFacts(facts));
    expect(states).toHaveLength(2);
    // Swapped last: neither broken nor with the loose rails that were found.
    expect(postOf(states[1]!.state, 5)).toMatchObject({
      piece: '5 by W',
      condition: { broken: false, railConnection: null },
    });
    const sleeved = lastState({ outcomes: [outcome({})], works: [works('steel-sleeve', { momentCapacityNm: 2000 })] });
    expect(postOf(sleeved, 5).condition.broken).toBe(false);
  });

  it('counts two storms of one day each for its own posts, whichever is recorded first', () => {
    const gale = outcome({ ref: 'O-1', storm: 'gale', posts: [5] });
    const squall = outcome({ ref: 'O-2', storm: 'squall', posts: [7], result: 'leaned' });
    for (const outcomes of [
      [gale, squall],
      [squall, gale],
    ]) {
      const states = fenceStates(withFacts({ outcomes }));
      expect(states.map(({ fromDay }) => fromDay)).toEqual([null, '2022-03-05']);
      const { state } = states[1]!;
      expect(state.posts.filter(({ condition }) => condition.broken).map(({ number }) => number)).toEqual([5]);
      expect(state.posts.filter(({ condition }) => condition.leaning).map(({ number }) => number)).toEqual([7]);
    }
  });

  it('gives each storm of a day the posts that only its own reports name apart', () => {
    const named = outcome({ ref: 'O-1', storm: 'gale', posts: [5] });
    const rest = outcome({ ref: 'O-2', storm: 'gale', posts: 'all', result: 'leaned' });
    const other = outcome({ ref: 'O-3', storm: 'squall', posts: [6] });
    const state = lastState({ outcomes: [named, rest, other] });
    expect(state.posts.filter(({ condition }) => condition.leaning).map(({ number }) => number)).toEqual([
      1, 2, 3, 4, 6, 7, 8, 9, 10, 11,
    ]);
    expect(state.posts.filter(({ condition }) => condition.broken).map(({ number }) => number)).toEqual([5, 6]);
  });

  it('is done in the order of the records where they are of one sort', () => {
    const first = works('post-swap', { ref: 'A', wood: STRONG_WOOD });
    const second = works('post-swap', { ref: 'B', wood: NO_1_WOOD });
    for (const done of [
      [first, second],
      [second, first],
    ]) {
      expect(postOf(lastState({ works: done }), 5)).toMatchObject({ piece: '5 by B', wood: NO_1_WOOD });
    }
  });
});

describe('the state on a day', () => {
  const states = () =>
    fenceStates(
      withFacts({
        works: [
          works('post-swap', { ref: 'B', day: '2024-01-01', wood: NO_1_WOOD }),
          works('post-swap', { ref: 'A', day: '2022-03-05', wood: STRONG_WOOD }),
        ],
      }),
    );
  const woodOn = (day: string) => postOf(stateOn(states(), day), 5).wood;
  const woodBefore = (day: string) => postOf(stateBefore(states(), day), 5).wood;

  it('holds from the day of what changed it, and never acts back', () => {
    expect([woodOn('2022-03-04'), woodOn('2022-03-05'), woodOn('2023-12-31'), woodOn('2024-01-01')]).toEqual([
      PINE_4X4,
      STRONG_WOOD,
      STRONG_WOOD,
      NO_1_WOOD,
    ]);
  });

  it('on the eve of that day is the one before', () => {
    expect([woodBefore('2022-03-05'), woodBefore('2022-03-06'), woodBefore('2024-01-01')]).toEqual([
      PINE_4X4,
      STRONG_WOOD,
      STRONG_WOOD,
    ]);
    expect(woodBefore('2030-01-01')).toBe(NO_1_WOOD);
  });

  it('is no other where nothing was found', () => {
    const looked = [inspection('2021-05-05', reading(5, { groundline: { kind: 'depth', depthMm: 4 } }))];
    expect(fenceStates(withFacts({ inspections: looked, outcomes: [outcome({ result: 'stood' })] }))).toHaveLength(1);
  });
});
