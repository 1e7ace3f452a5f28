import { REPORT_PARTS_STYLE } from '../../drawing/report/report-style.ts';

/** Reports as pages, the list of documents, and the page on which a board begins. */
export const REPORT_STYLES = `${REPORT_PARTS_STYLE}
.report-ways { display: flex; flex-wrap: wrap; gap: 0.4rem 1.5rem; margin: 0 0 1.5rem; padding: 0; list-style: none; }
.documents { list-style: none; margin: 0 0 1.25rem; padding: 0; max-width: 46rem; }
.documents li { padding: 0.55rem 0; border-bottom: 1px solid var(--rule); display: flex; flex-wrap: wrap; gap: 0.2rem 1.25rem; align-items: baseline; }
.documents .what { flex: 1 1 18rem; }
.documents .small { display: block; color: var(--muted); font-size: 0.95rem; line-height: 1.4; }
.documents .links { display: flex; gap: 1.25rem; }
.documents a { padding: 0.2rem 0; }
.board-sites { margin-bottom: 1.5rem; }
@media print { .report-ways { display: none; } }
`;
