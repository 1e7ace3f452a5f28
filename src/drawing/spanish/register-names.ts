import { SOIL_CLASSES, type SoilClass } from '../../capacity/soil-class.ts';
import { TREATMENT_CLASSES, type TreatmentClass } from '../../decay/treatment-class.ts';
import type { FenceStanding } from '../../forecast/fence-forecast.ts';
import { soilName, standingName, treatmentName } from '../report/record-names.ts';
import { type Phrase, phraseBook } from './phrase-book.ts';

const STANDINGS: readonly FenceStanding[] = ['clear', 'closing', 'short', 'short from new'];

const PHRASES: readonly Phrase[] = [
  ...(Object.keys(TREATMENT_CLASSES) as TreatmentClass[]).map(
    (kind): Phrase => [TREATMENT_CLASSES[kind].name, treatmentName(kind, 'es')],
  ),
  ...(Object.keys(SOIL_CLASSES) as SoilClass[]).map((soil): Phrase => [SOIL_CLASSES[soil].name, soilName(soil, 'es')]),
  ...STANDINGS.map((standing): Phrase => [standing, standingName(standing, 'es')]),
];

/** Names of treatments, soils and standings as texts of the rooms below have them. */
export const registerNameInSpanish = phraseBook(PHRASES);
