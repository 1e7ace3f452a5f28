import { CliError } from './cli-error.ts';
import { EXIT } from './exit-codes.ts';

/** Units of small lengths as people write them, with the end of the CSV column that holds them. */
export const LENGTH_UNITS: Readonly<Record<string, string>> = { mm: 'mm', in: 'in', '"': 'in' };
/** The same for speeds. */
export const SPEED_UNITS: Readonly<Record<string, string>> = {
  mph: 'mph',
  'm/s': 'mps',
  mps: 'mps',
  'km/h': 'kmh',
  kmh: 'kmh',
  kt: 'kt',
};

/** A number and its unit, as `6mm`, `0.25 in` or `71mph`, split for the CSV column of that unit. Throws `CliError` (usage). */
export function quantityArgument(
  argument: string,
  text: string,
  units: Readonly<Record<string, string>>,
): { readonly value: string; readonly suffix: string } {
  const [, value = '', unit = ''] = /^(-?[\d.,]*)\s*(.*)$/.exec(text.trim()) ?? [];
  const suffix = Object.hasOwn(units, unit.toLowerCase()) ? units[unit.toLowerCase()] : undefined;
  if (value !== '' && suffix !== undefined) return { value, suffix };
  const [first = ''] = Object.keys(units);
  throw new CliError(
    EXIT.usage,
    `${argument} ${JSON.stringify(text)}: ${value === '' ? 'not a number with its unit' : unit === '' ? 'without a unit' : `the unit ${JSON.stringify(unit)} is not known`}`,
    `write it as 6${first}; units are ${Object.keys(units).join(', ')}`,
  );
}
