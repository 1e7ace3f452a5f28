/** The season brief, the plan and the visits: sentences first, small drawings beside their numbers. */
export const SEASON_STYLES = `
.season-strip, .parts-bar { display: block; max-width: 100%; height: auto; margin-top: 0.2rem; }
.ss-line { stroke: var(--muted); }
.ss-season, .pb-full { fill: var(--snap); }
.pb-half { fill: var(--ends); }
.ss-today, .pb-beyond { stroke: var(--ink); }
.pb-frame { stroke: var(--field); }
.brief h2 { margin-top: 2.25rem; }
.brief ul.plain { max-width: 46rem; }
.dateline { color: var(--muted); margin-bottom: 0.4rem; }
table.ledger td, table.ledger th { white-space: nowrap; }
table.ledger .small { white-space: normal; }
table.ledger details { margin: 0; }
table.ledger details p { margin: 0 0 0.5rem; white-space: normal; }
table.ledger summary { font-weight: 400; padding: 0.25rem 0 0; }
@media screen and (max-width: 600px) { table.ledger summary { white-space: normal; width: auto; } }
.act { display: flex; flex-wrap: wrap; gap: 0.9rem 1.25rem; align-items: center; margin: 1rem 0 1.5rem; }
.act form { margin: 0; }
.act p { margin: 0; }
.secret { overflow-wrap: anywhere; background: var(--paper); border: 1px solid var(--rule); padding: 0.8rem 1rem; max-width: 46rem; }
.state-confirmed { font-weight: 600; }
.state-proposed { font-style: italic; }
.state-missed, .state-cancelled { color: var(--muted); text-decoration: line-through; text-decoration-thickness: 1px; }
form.inline { display: inline; }
form.inline button { min-height: 2.25rem; padding: 0.2rem 0.8rem; font-weight: 400; border-color: var(--field); }
.forms details { border-top: 1px solid var(--rule); max-width: 44rem; margin: 0; }
.forms details:last-of-type { border-bottom: 1px solid var(--rule); }
.forms summary { padding: 0.8rem 0; width: auto; }
@media screen and (min-width: 601px), print { .now td, .now th { border-top: 2px solid var(--ink); border-bottom: 2px solid var(--ink); } }
@media screen and (max-width: 600px) { .stacked td.whole { grid-column: 1 / -1; } }
@media print { .ss-season, .pb-full, .pb-half { print-color-adjust: exact; -webkit-print-color-adjust: exact; } .act, .forms { display: none; } }
`;
