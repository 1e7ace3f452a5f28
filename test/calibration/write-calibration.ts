import { writeFileSync } from 'node:fs';
import { picturePng } from '../../src/service/picture-png.ts';
import { PICTURE_FILE, RANKS_FILE } from './calibration-files.ts';
import { calibrationPicture, pText } from './calibration-picture.ts';
import { UNKNOWNS } from './calibration-ranks.ts';
import { RIGHT, runCalibrations } from './run-calibration.ts';

const [counts] = await runCalibrations([RIGHT]);
writeFileSync(RANKS_FILE, `${JSON.stringify({ seed: RIGHT.seed, fences: RIGHT.fences, counts }, null, 2)}\n`);
writeFileSync(PICTURE_FILE, picturePng(calibrationPicture(counts!), 860));
for (const unknown of UNKNOWNS) process.stdout.write(`${unknown}: ${pText(counts![unknown])}\n`);
