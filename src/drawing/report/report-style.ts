import { CHART_FONT, CHART_PALETTE } from '../chart-palette.ts';

const { ink, muted, paper, snap } = CHART_PALETTE;

/**
 * How the parts of a report look that no other page has: drawings at the width there is room for, fields for a pen, sums, the foot.
 * Colours are the page's own where it has them.
 */
export const REPORT_PARTS_STYLE = `
.report p, .report li, .report dd { overflow-wrap: anywhere; }
.report-drawing { margin: 1.25rem 0 1rem; }
.report-drawing svg { display: block; max-width: 100%; height: auto; }
.report-drawing figcaption { color: var(--muted, ${muted}); font-size: 0.95rem; max-width: 56rem; padding-top: 0.4rem; }
.report-middle, .report-narrow { display: none; }
@media screen and (max-width: 66rem) { .report-wide { display: none; } .report-middle { display: block; } }
@media screen and (max-width: 44rem) { .report-middle { display: none; } .report-narrow { display: block; } }
.report-table caption { text-align: left; color: var(--muted, ${muted}); padding: 0 0 0.4rem; }
.report-table td, .report-table th { overflow-wrap: break-word; }
.report-table td svg { display: block; margin-top: 2px; }
.report-table .figure + :not(.figure) { padding-left: 1.75rem; }
.report .scroll table.few, .scroll table.few { min-width: 0; }
.report-table tfoot td, .report-table tfoot th { border-top: 1px solid var(--ink, ${ink}); font-weight: 600; }
.report-small { color: var(--muted, ${muted}); font-size: 0.95rem; }
.report-strong { font-weight: 600; border-left: 4px solid var(--ink, ${ink}); padding-left: 0.9rem; }
.report-answer { border-left: 4px solid var(--snap, ${snap}); padding: 0.2rem 0 0.2rem 1rem; margin: 0 0 1.1rem; max-width: 46rem; }
.report-answer p { font-size: 1.2rem; line-height: 1.4; margin: 0 0 0.35rem; }
.report-answer .about { font-size: 0.95rem; color: var(--muted, ${muted}); }
.report-cautions { border-top: 1px solid var(--rule, #d9d6cd); margin-top: 2.25rem; padding-top: 0.9rem; font-size: 0.98rem; }
.report-cautions h2 { font-size: 1.0625rem; margin: 0 0 0.4rem; }
.report-cautions p { margin-bottom: 0.35rem; max-width: 60rem; }
.report-foot { color: var(--muted, ${muted}); font-size: 0.92rem; max-width: none; margin-top: 1.25rem; overflow-wrap: anywhere; }
.report-picture { max-width: 100%; height: auto; background: ${paper}; }
.report-box { display: inline-block; flex: none; width: 1.5rem; height: 1.5rem; border: 2px solid var(--ink, ${ink}); border-radius: 4px; }
.report-blank { display: inline-block; width: 4.6rem; height: 2rem; border: 1px solid var(--field, #8b949b); border-radius: 4px; }
.report-ticks { list-style: none; margin: 0 0 0.9rem; padding: 0; }
.report-ticks li { display: flex; gap: 0.7rem; align-items: flex-start; padding: 0.3rem 0; }
.report-lines p { display: flex; gap: 0.6rem; align-items: flex-end; max-width: none; margin: 0 0 0.7rem; }
.report-lines i { flex: 1; border-bottom: 1px solid var(--field, #8b949b); min-width: 6rem; }
.report-new-page { border: 0; border-top: 1px solid var(--rule, #d9d6cd); margin: 2.5rem 0; }
@media print {
  .report-wide, .report-narrow { display: none; } .report-middle { display: block; }
  .report-new-page { break-after: page; border: 0; margin: 0; }
  .report-drawing, .report-table tr, .report-facts > div { break-inside: avoid; }
  .report-table thead { display: table-header-group; }
  .report-table tfoot { display: table-row-group; }
  .report .scroll table { min-width: 0; font-size: 0.86rem; }
  .report h2, .report h3, .report-table caption { break-after: avoid; }
  .report { font-size: 10.5pt; }
}
`;

/** The look of a report that stands alone, without the pages around it. */
export const REPORT_STYLE = `
@page { margin: 16mm 15mm 18mm; }
* { box-sizing: border-box; }
html { -webkit-text-size-adjust: 100%; }
.report-alone { margin: 0; background: #f7f5f0; color: ${ink}; font: 400 17px/1.5 ${CHART_FONT}; }
.report-alone main { max-width: 1080px; margin: 0 auto; padding: clamp(16px, 4vw, 48px); background: ${paper}; }
.report-alone h1 { font-size: clamp(1.6rem, 3.4vw, 2.1rem); line-height: 1.2; font-weight: 600; margin: 0 0 0.4rem; }
.report-alone h2 { font-size: 1.3rem; line-height: 1.3; font-weight: 600; margin: 2.2rem 0 0.6rem; }
.report-alone h3 { font-size: 1.0625rem; font-weight: 600; margin: 1.5rem 0 0.4rem; }
.report-alone p { margin: 0 0 0.8rem; max-width: 46rem; }
.report-alone .lead { font-size: 1.25rem; line-height: 1.4; }
.report-alone .where { color: ${muted}; margin-bottom: 0.2rem; }
.report-alone .where + :not(.where) { margin-top: 1.2rem; }
.report-alone .scroll { overflow-x: auto; margin: 0 0 1rem; }
.report-alone .scroll table { min-width: 34rem; }
.report-alone table { border-collapse: collapse; width: 100%; font-size: 0.96rem; font-variant-numeric: tabular-nums; }
.report-alone th, .report-alone td { text-align: left; vertical-align: top; padding: 0.4rem 0.8rem 0.4rem 0; border-bottom: 1px solid #d9d6cd; }
.report-alone th { font-weight: 600; }
.report-alone thead th { vertical-align: bottom; border-bottom: 1px solid ${muted}; line-height: 1.25; }
.report-alone .unit { display: block; font-weight: 400; color: ${muted}; font-size: 0.9em; }
.report-alone .small { display: block; color: ${muted}; font-size: 0.92em; font-weight: 400; line-height: 1.35; }
.report-alone .figure { text-align: right; }
.report-alone .figure:last-child { padding-right: 0; }
.report-alone dl.facts { display: grid; grid-template-columns: repeat(auto-fill, minmax(min(100%, 16rem), 1fr)); gap: 0.9rem 2rem; margin: 0 0 1rem; }
.report-alone dt { color: ${muted}; font-size: 0.93em; }
.report-alone dd { margin: 0; overflow-wrap: anywhere; }
.report-alone ul.plain { padding-left: 1.1rem; max-width: 46rem; margin: 0 0 0.9rem; }
@media print { .report-alone { background: ${paper}; } .report-alone main { max-width: none; padding: 0; } .report-alone .scroll { overflow: visible; } }
${REPORT_PARTS_STYLE}`;
