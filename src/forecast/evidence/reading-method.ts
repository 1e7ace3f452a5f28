import type { Provenance } from '../../units/provenance.ts';
import type { GroundlineReading, InspectionMethod } from './inspection.ts';

/** What a method can say of the groundline, and how well. */
export interface ReadingMethod {
  readonly name: string;
  /** Kinds of groundline readings it can give. */
  readonly gives: readonly GroundlineReading['kind'][];
  /** Standard deviation of what it measures [mm]: of a depth, a width or a circumference; 0 where it measures none. */
  readonly errorMm: number;
  readonly provenance: Provenance;
}

const judged = (source: string): Provenance => ({ source, tag: 'judgement' });

/** The methods of an inspection. Errors are judgement throughout. */
export const READING_METHODS: Readonly<Record<InspectionMethod, ReadingMethod>> = {
  'awl-or-probe': {
    name: 'awl or probe',
    gives: ['depth', 'sound-to', 'soft-to', 'broken'],
    errorMm: 2,
    provenance: judged('2 mm in depth: what a point sinks into soft wood, read against its own marks'),
  },
  caliper: {
    name: 'caliper on the sound shell',
    gives: ['residual-width', 'broken'],
    errorMm: 2,
    provenance: judged('2 mm in width, so 1 mm in depth: both jaws on scraped, sound wood'),
  },
  'drill-resistance': {
    name: 'drill resistance',
    gives: ['depth', 'sound-to', 'soft-to', 'broken'],
    errorMm: 1.5,
    provenance: judged('1.5 mm in depth: where the needle meets resistance'),
  },
  'circumference-tape': {
    name: 'circumference tape',
    gives: ['residual-circumference', 'broken'],
    errorMm: 10,
    provenance: judged('10 mm in girth, so about 1.6 mm in depth: scraped wood is seldom round'),
  },
  level: {
    name: 'level',
    gives: ['broken'],
    errorMm: 0,
    provenance: judged('says nothing of the groundline'),
  },
  eye: {
    name: 'by eye',
    gives: ['broken'],
    errorMm: 0,
    provenance: judged('says nothing of the groundline but that a post is broken'),
  },
};
