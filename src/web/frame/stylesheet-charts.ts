/** The charts take the page's colours; the one size that suits the screen is shown. */
export const CHART_STYLES = `
figure.chart { margin: 1.5rem 0 1rem; padding: clamp(0.5rem, 1.5vw, 1.25rem); background: var(--paper); border: 1px solid var(--rule); }
figure.chart figcaption { color: var(--muted); font-size: 0.98rem; max-width: 56rem; padding: 0.5rem 0.5rem 0; }
.fence-years { display: block; width: 100%; height: auto; }
.chart-middle, .chart-narrow { display: none; }
@media (max-width: 58rem) { .chart-wide { display: none; } .chart-middle { display: block; } }
@media (max-width: 34rem) { .chart-middle { display: none; } .chart-narrow { display: block; } figure.chart { margin-left: -0.5rem; margin-right: -0.5rem; } }
@media print { .chart-wide, .chart-narrow { display: none; } .chart-middle { display: block; } figure.chart { margin-left: 0; margin-right: 0; } }
.fy-paper { fill: var(--paper); }
.fy-ink-text { fill: var(--ink); }
.fy-muted-text { fill: var(--muted); }
.fy-snap-text, .fy-snap-band { fill: var(--snap); }
.fy-lean-text { fill: var(--lean); }
.fy-on-snap-text { fill: var(--paper); }
.fy-snaps-first { fill: var(--snap); }
.fy-leans-first { fill: var(--lean-band); }
.fy-leader { stroke: var(--muted); }
.fy-ends-text { fill: var(--ends); }
.fy-lean-band { fill: var(--lean-band); }
.fy-grid { stroke: var(--grid); }
.fy-tick { stroke: var(--muted); }
.fy-gust, .fy-today, .fy-turnover { stroke: var(--ink); }
.fy-snap-line, .fy-mark { stroke: var(--snap); }
.fy-lean-line { stroke: var(--lean); }
.fy-ends-line { stroke: var(--ends); }
.fy-snap-dot { fill: var(--snap); stroke: var(--paper); }
.fy-lean-dot { fill: var(--lean); stroke: var(--paper); }
.fy-short { fill: var(--paper); stroke: var(--ink); }
.sensitivity-bars { display: block; width: 100%; height: auto; }
.sy-unknown, .sy-recorded { fill: var(--snap); }
.findings { list-style: none; margin: 0 0 1.1rem; padding: 0.1rem 0 0.1rem 1rem; border-left: 4px solid var(--ink); max-width: 44rem; }
.findings li { margin: 0.35rem 0; }
.findings .pressing { font-weight: 600; font-size: 1.15rem; }
table + .after-tables { margin-top: 1.25rem; }
.stacked-name { display: none; }
.snap-bar { display: block; margin-top: 0.3rem; max-width: 100%; }
.sb-track { fill: var(--rule); }
.sb-bar { fill: var(--snap); }
.sb-gust { stroke: var(--ink); }
@media screen and (min-width: 601px), print { .spaced td.figure + td:not(.figure), .spaced th.figure + th:not(.figure) { padding-left: 2rem; } }
@media screen and (max-width: 600px) { .stacked-name { display: inline; } }
@media print { .sb-bar, .sb-track, .sy-unknown, .sy-recorded { print-color-adjust: exact; -webkit-print-color-adjust: exact; } }
`;
