import { kgM3FromPcf, pcfFromKgM3 } from '../../units/density.ts';
import { N_PER_LBF } from '../../units/force.ts';
import { feetFromMetres, inchesFromMm, M_PER_FT, MM_PER_M, metresFromFeet, mmFromInches } from '../../units/length.ts';
import { kmhFromMps, mphFromMps, mpsFromKmh, mpsFromMph } from '../../units/speed.ts';
import { celsiusFromFahrenheit, fahrenheitFromCelsius } from '../../units/temperature.ts';
import { plainDecimal } from './number-cell.ts';

/** One unit in which a column may be written: the end of the column's name, and the way to and from SI. */
export interface ColumnUnit {
  readonly suffix: string;
  readonly label: string;
  readonly toSi: (value: number) => number;
  readonly fromSi: (value: number) => number;
}

/** The units of a quantity: the register's own (SI), the one a US export prefers, and all that an import takes. */
export interface Dimension {
  readonly si: ColumnUnit;
  readonly us: ColumnUnit;
  readonly all: readonly ColumnUnit[];
}

const same = (suffix: string, label: string): ColumnUnit => ({
  suffix,
  label,
  toSi: (value) => value,
  fromSi: (value) => value,
});

const SI_DIGITS = 12;

/** A converted unit: what comes out in SI is kept to 12 digits, so that 24 in is 0.6096 m and not a hair less. */
const converted = (unit: ColumnUnit): ColumnUnit => ({
  ...unit,
  toSi: (value) => Number(unit.toSi(value).toPrecision(SI_DIGITS)),
});

/** Metres per second in one knot [(m/s)/kt], exact (nautical mile of 1852 m). */
const MPS_PER_KT = 1852 / 3600;
/** Newton metres in one pound-force foot [(N m)/(lbf ft)], derived. */
const NM_PER_LBFT = N_PER_LBF * M_PER_FT;

const metre = same('m', 'm');
const millimetre = same('mm', 'mm');
const foot = converted({ suffix: 'ft', label: 'ft', toSi: metresFromFeet, fromSi: feetFromMetres });
const inchOfMetres = converted({
  suffix: 'in',
  label: 'in',
  toSi: (value) => mmFromInches(value) / MM_PER_M,
  fromSi: (value) => inchesFromMm(value * MM_PER_M),
});
const millimetreOfMetres = converted({
  suffix: 'mm',
  label: 'mm',
  toSi: (value) => value / MM_PER_M,
  fromSi: (value) => value * MM_PER_M,
});
const inch = converted({ suffix: 'in', label: 'in', toSi: mmFromInches, fromSi: inchesFromMm });
const metresPerSecond = same('mps', 'm/s');
const milesPerHour = converted({ suffix: 'mph', label: 'mph', toSi: mpsFromMph, fromSi: mphFromMps });
const kilometresPerHour = converted({ suffix: 'kmh', label: 'km/h', toSi: mpsFromKmh, fromSi: kmhFromMps });
const knot = converted({
  suffix: 'kt',
  label: 'kt',
  toSi: (value) => value * MPS_PER_KT,
  fromSi: (value) => value / MPS_PER_KT,
});
const celsius = same('c', 'degrees C');
const fahrenheit = converted({
  suffix: 'f',
  label: 'degrees F',
  toSi: celsiusFromFahrenheit,
  fromSi: fahrenheitFromCelsius,
});
const kilogramsPerCubicMetre = same('kg_m3', 'kg/m3');
const poundsPerCubicFoot = converted({ suffix: 'pcf', label: 'pcf', toSi: kgM3FromPcf, fromSi: pcfFromKgM3 });
const newtonMetre = same('nm', 'N m');
const poundFoot = converted({
  suffix: 'lbft',
  label: 'lbf ft',
  toSi: (value) => value * NM_PER_LBFT,
  fromSi: (value) => value / NM_PER_LBFT,
});

/** A share as a percentage. */
export const PERCENT: ColumnUnit = converted({
  suffix: 'percent',
  label: 'percent',
  toSi: (value) => value / 100,
  fromSi: (value) => value * 100,
});

/** Every quantity that a CSV column can hold. */
export const DIMENSIONS = {
  /** Metres; usually said in feet. */
  length: { si: metre, us: foot, all: [inchOfMetres, foot, metre, millimetreOfMetres] },
  /** Metres; usually said in inches. */
  shortLength: { si: metre, us: inchOfMetres, all: [inchOfMetres, foot, metre, millimetreOfMetres] },
  /** Millimetres. */
  thickness: { si: millimetre, us: inch, all: [inch, millimetre] },
  rain: { si: millimetre, us: inch, all: [inch, millimetre] },
  speed: {
    si: metresPerSecond,
    us: milesPerHour,
    all: [milesPerHour, metresPerSecond, kilometresPerHour, knot],
  },
  temperature: { si: celsius, us: fahrenheit, all: [fahrenheit, celsius] },
  retention: { si: kilogramsPerCubicMetre, us: poundsPerCubicFoot, all: [poundsPerCubicFoot, kilogramsPerCubicMetre] },
  moment: { si: newtonMetre, us: poundFoot, all: [poundFoot, newtonMetre] },
} as const satisfies Record<string, Dimension>;

const MOST_DIGITS = 12;

/** The shortest decimal in a unit that converts back to exactly the same SI value; null where none of 12 digits does. */
export function exactInUnit(unit: ColumnUnit, siValue: number): string | null {
  const value = unit.fromSi(siValue);
  for (let digits = 1; digits <= MOST_DIGITS; digits += 1) {
    const rounded = Number(value.toPrecision(digits));
    if (unit.toSi(rounded) === siValue) return plainDecimal(rounded === 0 ? 0 : rounded);
  }
  return null;
}

/** A limit in a unit, to four digits, for a message. */
export const limitInUnit = (unit: ColumnUnit, siValue: number): string =>
  plainDecimal(Number(unit.fromSi(siValue).toPrecision(4)));
