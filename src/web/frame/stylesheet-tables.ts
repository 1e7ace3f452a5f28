/** Tables: ruled, figures aligned; the list of fences stacks on a narrow screen, wide tables scroll in their own frame. */
export const TABLE_STYLES = `
.scroll { overflow-x: auto; margin: 0 0 1rem; }
table { border-collapse: collapse; width: 100%; font-size: 1rem; font-variant-numeric: tabular-nums; }
caption { text-align: left; color: var(--muted); padding: 0 0 0.6rem; }
th, td { text-align: left; vertical-align: top; padding: 0.55rem 0.9rem 0.55rem 0; border-bottom: 1px solid var(--rule); }
thead th { font-weight: 600; vertical-align: bottom; border-bottom: 1px solid var(--muted); line-height: 1.25; }
thead th .unit { display: block; font-weight: 400; color: var(--muted); font-size: 0.9rem; }
tbody th { font-weight: 600; }
.when { white-space: nowrap; }
td.figure, th.figure { text-align: right; white-space: nowrap; }
thead th.figure { white-space: normal; }
td.figure:last-child, th.figure:last-child { padding-right: 0; }
td .small, th .small { display: block; color: var(--muted); font-size: 0.92rem; font-weight: 400; line-height: 1.35; }
.season-one th, .season-one td { border-top: 2px solid var(--ink); border-bottom: 2px solid var(--ink); }
table.seasons td, table.seasons th { padding-top: 0.35rem; padding-bottom: 0.35rem; white-space: nowrap; }
table.seasons thead th { white-space: normal; }
.fences thead a { color: inherit; text-decoration-color: transparent; }
.fences thead a:hover, .fences th[aria-sort] a { text-decoration-color: currentColor; }
.standing { white-space: nowrap; }
.standing-clear { color: var(--muted); }
.standing-closing { font-style: italic; }
.standing-short, .standing-short-from-new { font-weight: 600; }
.standing-short-from-new { text-decoration: underline; text-decoration-style: double; text-underline-offset: 0.2em; text-decoration-thickness: 1px; }
.fences .ref, .fences .nowrap { white-space: nowrap; }
.fences .ends span { text-decoration: none; font-weight: 400; }
.scroll caption { max-width: min(44rem, calc(100vw - 2.5rem)); }
.scroll table { min-width: 40rem; }
.scroll table.reasons { min-width: 52rem; }
.reasons tbody th { font-weight: 400; }
.reasons .group th { font-weight: 600; padding-top: 1.6rem; font-size: 1.15rem; }
.reasons .equation { font-size: 0.95rem; color: var(--muted); overflow-wrap: anywhere; min-width: 16rem; }
.reasons .value { white-space: nowrap; text-align: right; }
@media print { .scroll table, .scroll table.reasons { min-width: 0; font-size: 0.9rem; } th, td { padding-right: 0.6rem; } }
@media (max-width: 60rem) {
  .fences, .fences tbody, .fences caption { display: block; }
  .fences thead { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%); }
  .fences tr { display: grid; grid-template-columns: repeat(auto-fill, minmax(9.5rem, 1fr)); gap: 0.35rem 1.25rem; padding: 1rem 0 1.1rem; border-bottom: 1px solid var(--rule); }
  .fences th, .fences td { border: 0; padding: 0; }
  .fences tbody th { grid-column: 1 / -1; font-size: 1.15rem; }
  .fences td.figure { text-align: left; }
  .fences td::before { content: attr(data-label); display: block; color: var(--muted); font-size: 0.9rem; font-weight: 400; line-height: 1.3; }
}
@media screen and (max-width: 600px) {
  .fences td.rest { display: none; }
  .fences tr { grid-template-columns: 1fr 1fr; padding: 0.6rem 0 0.7rem; }
  .fences tbody th { grid-column: 1; }
  .fences td.place { grid-column: 1 / -1; }
  .fences td.place .small { display: inline; margin-left: 0.6rem; }
  .fences .standing::before, .fences td.place::before { content: none; }
  .scroll table.stacked { display: block; min-width: 0; }
  .stacked tbody, .stacked caption { display: block; }
  .stacked thead { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%); }
  .stacked tr { display: grid; grid-template-columns: 1fr 1fr; gap: 0.3rem 1.25rem; padding: 0.8rem 0; border-bottom: 1px solid var(--rule); }
  .stacked th, .stacked td { border: 0; padding: 0; overflow-wrap: anywhere; min-width: 0; }
  .stacked tbody th { grid-column: 1 / -1; order: -1; font-weight: 600; }
  .stacked .equation { grid-column: 1 / -1; min-width: 0; }
  .stacked td.figure, .stacked .value { text-align: left; white-space: normal; }
  .stacked td::before { content: attr(data-label); display: block; color: var(--muted); font-size: 0.9rem; line-height: 1.3; }
}
`;
