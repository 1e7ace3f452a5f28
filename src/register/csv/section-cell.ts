import {
  NOMINAL_SECTIONS_IN,
  type NominalSection,
  nominalSection,
  type PostSection,
} from '../../capacity/post-section.ts';
import { mmFromInches } from '../../units/length.ts';
import { RANGES } from '../value-ranges.ts';
import { type Parsed, plainDecimal } from './number-cell.ts';

const NOMINALS = Object.keys(NOMINAL_SECTIONS_IN) as readonly NominalSection[];
const ROUND = /^round (\d+(?:\.\d+)?) (in|mm)$/;
const SIZED = /^(\d+(?:\.\d+)?)x(\d+(?:\.\d+)?) (in|mm)$/;
const WAY_OUT = `write a nominal size (${NOMINALS.join(', ')}), or as round 5 in, round 125 mm, or 89x89 mm`;

/** Reads a post's section: a nominal size, `round 5 in`, `round 125 mm`, `3.5x3.5 in` or `89x89 mm` (along the fence first). */
export function parseSection(text: string): Parsed<PostSection> {
  const nominal = NOMINALS.find((name) => name === text.toLowerCase());
  if (nominal) return { value: nominalSection(nominal) };
  const round = ROUND.exec(text);
  const sized = SIZED.exec(text);
  const toMm = (number: string | undefined, unit: string | undefined): number =>
    unit === 'in' ? mmFromInches(Number(number)) : Number(number);
  let section: PostSection;
  if (round) section = { kind: 'round', diameterMm: toMm(round[1], round[2]) };
  else if (sized) {
    section = { kind: 'rectangular', widthMm: toMm(sized[1], sized[3]), depthMm: toMm(sized[2], sized[3]) };
  } else return { reason: `not a section; ${WAY_OUT}` };
  const [lowest, highest] = RANGES.sectionMm;
  const sides = section.kind === 'round' ? [section.diameterMm] : [section.widthMm, section.depthMm];
  if (sides.some((side) => side < lowest || side > highest)) {
    return { reason: `outside the allowed ${lowest} to ${highest} mm a side; give the dressed size of the post` };
  }
  return { value: section };
}

/** A section as the cell that reads back as exactly the same. */
export function writeSection(section: PostSection): string {
  if (section.kind === 'round') return `round ${plainDecimal(section.diameterMm)} mm`;
  const nominal = NOMINALS.find((name) => {
    const dressed = nominalSection(name);
    return dressed.kind === 'rectangular' && dressed.widthMm === section.widthMm && dressed.depthMm === section.depthMm;
  });
  return nominal ?? `${plainDecimal(section.widthMm)}x${plainDecimal(section.depthMm)} mm`;
}
