import { createHash } from 'node:crypto';
import { CHART_STYLES } from './stylesheet-charts.ts';
import { CREW_STYLES } from './stylesheet-crew.ts';
import { FENCE_STYLES } from './stylesheet-fence.ts';
import { FORM_STYLES } from './stylesheet-forms.ts';
import { OWNER_STYLES } from './stylesheet-owner.ts';
import { PAGE_STYLES } from './stylesheet-page.ts';
import { RECORD_STYLES } from './stylesheet-records.ts';
import { REPORT_STYLES } from './stylesheet-reports.ts';
import { SEASON_STYLES } from './stylesheet-season.ts';
import { TABLE_STYLES } from './stylesheet-tables.ts';

/** The one stylesheet of every page. */
export const STYLESHEET = [
  PAGE_STYLES,
  TABLE_STYLES,
  CHART_STYLES,
  FORM_STYLES,
  CREW_STYLES,
  FENCE_STYLES,
  OWNER_STYLES,
  RECORD_STYLES,
  REPORT_STYLES,
  SEASON_STYLES,
].join('\n');

/** Path of the stylesheet; it changes with the content, so that it may be kept for long. */
export const STYLESHEET_PATH = `/style-${createHash('sha256').update(STYLESHEET).digest('hex').slice(0, 12)}.css`;
