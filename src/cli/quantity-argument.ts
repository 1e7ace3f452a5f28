import { CliError } from './cli-error.ts';
import { EXIT } from './exit-codes.ts';

/** A unit as people write it: the end of the CSV column that holds it, and how many of that column's units it is. */
interface ArgumentUnit {
  readonly suffix: string;
  readonly times: number;
}

const unit = (suffix: string, times = 1): ArgumentUnit => ({ suffix, times });

/** Units of small lengths. */
export const LENGTH_UNITS: Readonly<Record<string, ArgumentUnit>> = {
  mm: unit('mm'),
  cm: unit('mm', 10),
  in: unit('in'),
  '"': unit('in'),
};
/** The same for speeds. */
export const SPEED_UNITS: Readonly<Record<string, ArgumentUnit>> = {
  mph: unit('mph'),
  'm/s': unit('mps'),
  mps: unit('mps'),
  'km/h': unit('kmh'),
  kmh: unit('kmh'),
  kt: unit('kt'),
};

/** `1/4`, or `1 1/2`, or `1-1/2`. */
const FRACTION = /^(?:(\d+)(?:\s+|-))?(\d+)\/(\d+)$/;
const PLAIN = /^(\d+(\.\d+)?|\.\d+)$/;
/** Digits kept of a number that was written as a fraction or in another unit. */
const DIGITS = 12;

const decimal = (value: number): string => String(Number(value.toPrecision(DIGITS)));

/** The number as its CSV cell takes it; one that is no number stays as it was written, for the import to refuse. */
function cellOf(value: string, times: number): string {
  const [, whole = '0', above, below] = FRACTION.exec(value) ?? [];
  if (above !== undefined && Number(below) > 0) {
    return decimal((Number(whole) + Number(above) / Number(below)) * times);
  }
  return times === 1 || !PLAIN.test(value) ? value : decimal(Number(value) * times);
}

/**
 * A number and its unit, as `6mm`, `0.25 in`, `1 1/2in` or `71mph`, split for the CSV column of that unit. Throws `CliError`
 * (usage).
 */
export function quantityArgument(
  argument: string,
  text: string,
  units: Readonly<Record<string, ArgumentUnit>>,
): { readonly value: string; readonly suffix: string } {
  const [, value = '', written = ''] = /^(\d+(?:\s+|-)\d+\/\d+|\d+\/\d+|-?[\d.,]*)\s*(.*)$/.exec(text.trim()) ?? [];
  const known = Object.hasOwn(units, written.toLowerCase()) ? units[written.toLowerCase()] : undefined;
  if (value !== '' && known) return { value: cellOf(value, known.times), suffix: known.suffix };
  const [first = ''] = Object.keys(units);
  throw new CliError(
    EXIT.usage,
    `${argument} ${JSON.stringify(text)}: ${value === '' ? 'not a number with its unit' : written === '' ? 'without a unit' : `the unit ${JSON.stringify(written)} is not known`}`,
    `write it as 6${first}; units are ${Object.keys(units).join(', ')}`,
  );
}
