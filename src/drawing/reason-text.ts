import { figureText } from './quantity-text.ts';

const POWERS: Readonly<Record<string, string>> = { '2': '²', '3': '³' };

/** A unit as people write it: `mm3` as `mm³`, `degC` as `°C`. */
const unitText = (unit: string): string =>
  unit.replace(/\bdeg(?=[CF]\b)/, '°').replace(/(?<=[a-z])[23](?=$|[ /])/g, (power) => POWERS[power] ?? power);

function figure(value: number): string {
  if (value !== 0 && Math.abs(value) < 0.001) return value.toExponential(2);
  return figureText(value, Math.abs(value) >= 1000 ? 6 : 4);
}

/** The value of a step of the reasons as people read it: four figures, large ones grouped, with its unit; texts as they stand. */
export function quantityText(quantity: { readonly value: number | string; readonly unit: string }): string {
  const { value, unit } = quantity;
  const text = typeof value === 'string' ? value : figure(value);
  return unit === '' || unit === '-' ? text : `${text} ${unitText(unit)}`;
}
