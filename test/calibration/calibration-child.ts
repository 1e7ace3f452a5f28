import { calibrationRanks, type Mistake } from './calibration-ranks.ts';

/** One share of a calibration: seed, first and last fence, and the mistake made on purpose. Prints the rank counts. */
const [seed, from, to, mistake] = process.argv.slice(2);
const fences = Array.from({ length: Number(to) - Number(from) }, (_, i) => Number(from) + i);
process.stdout.write(JSON.stringify(calibrationRanks(Number(seed), fences, mistake as Mistake)));
