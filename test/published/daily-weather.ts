import { readFileSync } from 'node:fs';
import { parse } from 'csv-parse/sync';
import type { ClimateMonth } from '../../src/decay/scheffer-index.ts';
import { fahrenheitFromCelsius } from '../../src/units/temperature.ts';

/** A day with at least this much precipitation counts as wet [mm]: 0.01 in. */
const WET_MM = 0.254;

interface Day {
  readonly location?: string;
  readonly date: string;
  readonly precipitation: string;
  readonly temp_max: string;
  readonly temp_min: string;
}

const read = (file: string): readonly Day[] =>
  parse(readFileSync(new URL(`../../node_modules/vega-datasets/data/${file}`, import.meta.url)), { columns: true });

const FILES = {
  Seattle: () => read('seattle-weather.csv'),
  'New York': () => read('weather.csv').filter((day) => day.location === 'New York'),
} as const;
export type Place = keyof typeof FILES;

/** Months of one year of daily observations (United States Government work, in vega-datasets): mean of (max + min)/2, wet days. */
export function monthsOf(place: Place, year: number): readonly ClimateMonth[] {
  const days = FILES[place]();
  return Array.from({ length: 12 }, (_, index) => {
    const month = `${year}-${String(index + 1).padStart(2, '0')}`;
    const ofMonth = days.filter((day) => day.date.startsWith(month));
    if (ofMonth.length < 28) throw new Error(`daily weather of ${place}: ${month} has ${ofMonth.length} days`);
    const meanC =
      ofMonth.reduce((sum, day) => sum + (Number(day.temp_max) + Number(day.temp_min)) / 2, 0) / ofMonth.length;
    return {
      meanTemperatureF: fahrenheitFromCelsius(meanC),
      wetDays: ofMonth.filter((day) => Number(day.precipitation) >= WET_MM).length,
    };
  });
}
