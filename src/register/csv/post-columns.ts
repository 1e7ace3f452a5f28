import { GRADES, SPECIES_KEYS } from '../../capacity/wood-strength.ts';
import { TREATMENT_CLASS_KEYS } from '../../decay/treatment-class.ts';
import type { InstallDate } from '../../forecast/fence-facts.ts';
import { sectionFields, sectionOf, type WoodFields } from '../post-wood-record.ts';
import { RANGES } from '../value-ranges.ts';
import type { CsvField, Draft, FieldOptions } from './csv-field.ts';
import { parseInstalled, writeInstalled } from './installed-cell.ts';
import { DIMENSIONS } from './quantity-column.ts';
import { parseSection, writeSection } from './section-cell.ts';
import { choiceField, numberField, quantityField, refField, yesNoField } from './value-fields.ts';

const NO_SECTION: Draft = { sectionKind: null, sectionWidthMm: null, sectionDepthMm: null };
const NO_DATE: Draft = { installedEarliest: null, installedLatest: null };

/** The `section` column: three keys of the record. */
const sectionField = (required: boolean): CsvField => ({
  keys: ['sectionKind', 'sectionWidthMm', 'sectionDepthMm'],
  columns: ['section'],
  required,
  column: () => 'section',
  read: (row, draft) => {
    const text = row.cell('section');
    if (text === '') return;
    const parsed = parseSection(text);
    if ('reason' in parsed) row.refuse('section', parsed.reason);
    else Object.assign(draft, sectionFields(parsed.value));
  },
  settle: () => NO_SECTION,
  write: (record) => ({
    section: record.sectionKind === null ? '' : writeSection(sectionOf(record as unknown as WoodFields)),
  }),
});

/** The `installed` column: earliest and latest day. */
export const installedField = (required: boolean): CsvField => ({
  keys: ['installedEarliest', 'installedLatest'],
  columns: ['installed'],
  required,
  column: () => 'installed',
  read: (row, draft) => {
    const text = row.cell('installed');
    if (text === '') return;
    const parsed = parseInstalled(text, row.today);
    if ('reason' in parsed) row.refuse('installed', parsed.reason);
    else Object.assign(draft, { installedEarliest: parsed.value.earliest, installedLatest: parsed.value.latest });
  },
  settle: () => NO_DATE,
  write: ({ installedEarliest: earliest, installedLatest: latest }) => ({
    installed: earliest === null ? '' : writeInstalled({ earliest, latest } as InstallDate),
  }),
});

const NULLABLE: FieldOptions = { fallback: null };

/** The columns of a post's material. On a fence they are required or have a default; elsewhere empty says nothing. */
export const woodFields = (of: 'fence' | 'other'): readonly CsvField[] => {
  const required = of === 'fence';
  return [
    sectionField(required),
    choiceField('species', 'species', SPECIES_KEYS, required ? {} : NULLABLE),
    choiceField('grade', 'grade', GRADES, { fallback: required ? 'unknown' : null }),
    yesNoField('incised', 'incised', {
      ...(required
        ? { fallbackFrom: (draft: Readonly<Draft>) => draft.treatmentClass === 'refractory-incised' }
        : NULLABLE),
    }),
    choiceField('treatmentClass', 'treatment_class', TREATMENT_CLASS_KEYS, required ? {} : NULLABLE),
    quantityField('momentCapacityNm', 'moment_capacity', DIMENSIONS.moment, RANGES.momentCapacityNm, NULLABLE),
  ];
};

/** Columns of posts that differ from their fence. */
export const POST_FIELDS: readonly CsvField[] = [
  refField('fenceRef', 'fence'),
  numberField('number', 'post', RANGES.postNumber, { whole: true }),
  quantityField('positionM', 'position', DIMENSIONS.length, RANGES.positionM, NULLABLE),
  installedField(false),
  ...woodFields('other'),
  refField('sharedFenceRef', 'shared_with', NULLABLE),
  choiceField('sharedEnd', 'shared_end', ['A', 'B'], NULLABLE),
];
