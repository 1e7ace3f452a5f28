import { FOOTING_KINDS } from '../../capacity/footing.ts';
import {
  BOARD_RUNS,
  CONSEQUENCES,
  END_KINDS,
  FENCE_STYLES,
  type FenceStyle,
  STYLE_SOLIDITY,
  TRIMMER_GUARDS,
} from '../fence-record.ts';
import { RANGES } from '../value-ranges.ts';
import type { CsvField } from './csv-field.ts';
import { installedField, woodFields } from './post-columns.ts';
import { DIMENSIONS } from './quantity-column.ts';
import { choiceField, numberField, quantityField, refField, textField } from './value-fields.ts';

const { length, shortLength } = DIMENSIONS;
const NULLABLE = { fallback: null };

/** Columns of fences. */
export const FENCE_FIELDS: readonly CsvField[] = [
  refField('ref', 'ref'),
  refField('siteRef', 'site'),
  refField('ownerRef', 'owner'),
  refField('secondOwnerRef', 'second_owner', NULLABLE),
  choiceField('style', 'style', FENCE_STYLES),
  numberField('solidity', 'solidity', RANGES.solidity, {
    fallbackFrom: (draft) => STYLE_SOLIDITY[draft.style as FenceStyle],
  }),
  quantityField('heightM', 'height', shortLength, RANGES.heightM),
  quantityField('runLengthM', 'run_length', length, RANGES.runLengthM),
  quantityField('bottomGapM', 'bottom_gap', shortLength, RANGES.bottomGapM, { fallback: 0 }),
  quantityField('postSpacingM', 'post_spacing', length, RANGES.postSpacingM),
  textField('namedEnd', 'named_end'),
  choiceField('endAKind', 'end_a', END_KINDS, { fallback: 'unknown' }),
  quantityField('endAReturnM', 'end_a_return', length, RANGES.returnLengthM, NULLABLE),
  choiceField('endBKind', 'end_b', END_KINDS, { fallback: 'unknown' }),
  quantityField('endBReturnM', 'end_b_return', length, RANGES.returnLengthM, NULLABLE),
  ...woodFields('fence'),
  quantityField('retentionKgM3', 'retention', DIMENSIONS.retention, RANGES.retentionKgM3, NULLABLE),
  installedField(true),
  quantityField('embedmentM', 'embedment', shortLength, RANGES.embedmentM, NULLABLE),
  choiceField('footing', 'footing', FOOTING_KINDS, NULLABLE),
  quantityField('footingDiameterM', 'footing_diameter', shortLength, RANGES.footingDiameterM, NULLABLE),
  choiceField('boards', 'boards', BOARD_RUNS, { fallback: 'unknown' }),
  choiceField('trimmerGuards', 'trimmer_guards', TRIMMER_GUARDS, { fallback: 'unknown' }),
  quantityField('yearlyTrimmerCutMm', 'yearly_trimmer_cut', DIMENSIONS.thickness, RANGES.yearlyTrimmerCutMm, {
    fallback: 0,
  }),
  choiceField('consequence', 'consequence', CONSEQUENCES, { fallback: 'ordinary' }),
  textField('accessNote', 'access_note', { fallback: '' }),
  textField('note', 'note', { fallback: '' }),
];
