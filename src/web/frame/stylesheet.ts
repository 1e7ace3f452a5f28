import { createHash } from 'node:crypto';
import { CHART_STYLES } from './stylesheet-charts.ts';
import { FENCE_STYLES } from './stylesheet-fence.ts';
import { FORM_STYLES } from './stylesheet-forms.ts';
import { PAGE_STYLES } from './stylesheet-page.ts';
import { TABLE_STYLES } from './stylesheet-tables.ts';

/** The one stylesheet of every page. */
export const STYLESHEET = `${PAGE_STYLES}\n${TABLE_STYLES}\n${CHART_STYLES}\n${FORM_STYLES}\n${FENCE_STYLES}`;

/** Path of the stylesheet; it changes with the content, so that it may be kept for long. */
export const STYLESHEET_PATH = `/style-${createHash('sha256').update(STYLESHEET).digest('hex').slice(0, 12)}.css`;
