import { type ClimateMonth, schefferClass, schefferIndex } from '../../src/decay/scheffer-index.ts';
import { monthsOf, type Place } from './daily-weather.ts';
import { EXACT, type PublishedCheck, withinAbsolute } from './published-check.ts';
import { SOURCES } from './sources.ts';

const TOPIC = 'Scheffer index (wood above ground)';
const second = { topic: TOPIC, source: SOURCES.secondDecay, tag: 'derived', unit: '-' } as const;

/** Central Park normals, degF and days with 0.01 in or more. */
const NEW_YORK_F = [32.6, 35.3, 42.5, 53, 62.4, 71.4, 76.5, 75.2, 68, 56.9, 47.7, 37.5];
const NEW_YORK_DAYS = [10.4, 9.2, 10.9, 11.5, 11.1, 11.2, 10.4, 9.5, 8.7, 8.9, 9.6, 10.6];

const months = (temperatures: readonly number[], days: readonly number[]): readonly ClimateMonth[] =>
  temperatures.map((meanTemperatureF, index) => ({ meanTemperatureF, wetDays: days[index]! }));
const half = (cold: number, warm: number): readonly number[] => [
  ...Array<number>(6).fill(cold),
  ...Array<number>(6).fill(warm),
];

export const SCHEFFER_CHECKS: readonly PublishedCheck[] = [
  {
    ...second,
    id: 'scheffer.normals',
    quantity: 'New York normals 1981-2010, clamped',
    computed: () => schefferIndex(months(NEW_YORK_F, NEW_YORK_DAYS)),
    published: 57.435,
    tolerance: withinAbsolute(0.0006),
    note: 'Unclamped 56.843: a cold month has two negative factors.',
  },
  {
    ...second,
    id: 'scheffer.even',
    quantity: 'every month 60 degF and 10 wet days',
    computed: () => schefferIndex(months(half(60, 60), half(10, 10))),
    published: 70,
    tolerance: withinAbsolute(1e-9),
  },
  {
    ...second,
    id: 'scheffer.clamp',
    quantity: 'six months of 20 degF and 1 wet day, six of 80 degF and 10',
    computed: () => schefferIndex(months(half(20, 80), half(1, 10))),
    published: 63,
    tolerance: withinAbsolute(1e-9),
    note: 'Unclamped 69.',
  },
  ...(
    [
      ['Seattle', [57.1, 61.5, 61.1, 51.7]],
      ['New York', [64.5, 48.7, 52, 44.9]],
    ] as const satisfies readonly (readonly [Place, readonly number[]])[]
  ).flatMap(([place, published]) =>
    published.flatMap((index, offset): PublishedCheck[] => {
      const year = 2012 + offset;
      return [
        {
          ...second,
          id: `scheffer.${place}.${year}`,
          quantity: `${place} ${year}, from daily observations`,
          computed: () => schefferIndex(monthsOf(place, year)),
          published: index,
          tolerance: withinAbsolute(0.05),
        },
        {
          topic: TOPIC,
          unit: '-',
          id: `scheffer.${place}.${year}.class`,
          quantity: `${place} ${year}: decay class`,
          computed: () => schefferClass(schefferIndex(monthsOf(place, year))),
          published: 'moderate',
          tolerance: EXACT,
          source: SOURCES.scheffer,
          tag: 'memory',
        },
      ];
    }),
  ),
];
