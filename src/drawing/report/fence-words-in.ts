import type { ChartLanguage } from '../chart-words.ts';
import type { FenceReportWords } from './fence-report-words.ts';
import { FENCE_REPORT_WORDS_EN } from './fence-report-words-en.ts';
import { FENCE_REPORT_WORDS_ES } from './fence-report-words-es.ts';

/** The words of a fence's report in one language. */
export const fenceReportWords = (language: ChartLanguage): FenceReportWords =>
  language === 'es' ? FENCE_REPORT_WORDS_ES : FENCE_REPORT_WORDS_EN;
