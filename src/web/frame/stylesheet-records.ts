/** Forms and lists of the office's records. */
export const RECORD_STYLES = `
textarea { font: inherit; color: var(--ink); background: var(--paper); border: 1px solid var(--field); border-radius: 3px; padding: 0.45rem 0.6rem; width: 100%; line-height: 1.45; resize: vertical; }
input[type='file'] { padding: 0.5rem; max-width: 100%; }
input[type='checkbox'], input[type='radio'] { width: 1.3rem; min-height: 1.3rem; height: 1.3rem; flex: none; margin: 0; padding: 0; accent-color: var(--link); }
form.tall .fixed-name { font-weight: 600; }
.two-ways { display: flex; flex-wrap: wrap; gap: 1rem 2.5rem; align-items: flex-end; margin: 1.25rem 0 0.5rem; }
.two-ways form.tall { margin: 0; max-width: none; }
dl.index { display: grid; gap: 0.9rem; margin: 0 0 1rem; max-width: 48rem; }
dl.index > div { display: grid; grid-template-columns: 12rem 1fr; gap: 0.2rem 1.5rem; }
dl.index dt { font-weight: 600; }
dl.index dd { margin: 0; color: var(--muted); }
dl.facts.wide { grid-template-columns: 1fr; max-width: 60rem; }
.kept-lines { white-space: pre-line; overflow-wrap: anywhere; }
.change-line { display: block; overflow-wrap: anywhere; }
form.in-line { display: flex; flex-wrap: wrap; align-items: center; gap: 0.4rem 1rem; margin: 0; }
.tall-fields { display: grid; grid-template-columns: repeat(auto-fill, minmax(min(100%, 18rem), 1fr)); gap: 1.1rem 2rem; max-width: 62rem; margin: 1.25rem 0; }
.tall-fields .field, form.entry-form > .field { display: flex; flex-direction: column; gap: 0.25rem; }
.tall-fields label, form.entry-form > .field > label { font-weight: 600; }
form.entry-form > .field { max-width: 44rem; margin: 0 0 1.1rem; }
@media screen and (min-width: 601px), print {
  .scroll table.entry { min-width: 62rem; }
  table.entry td, table.entry th { padding: 0.3rem 0.5rem 0.3rem 0; vertical-align: middle; }
  table.entry input[type='text'] { min-width: 4.5rem; }
  table.entry select { min-width: 7rem; }
}
iframe.message.whole { max-height: none; resize: vertical; }
iframe.whole-60 { height: 60rem; }
iframe.whole-90 { height: 90rem; }
iframe.whole-130 { height: 130rem; }
iframe.whole-180 { height: 180rem; }
iframe.whole-240 { height: 240rem; }
iframe.whole-320 { height: 320rem; }
form.search .field { flex: 1 1 16rem; max-width: 28rem; }
form.search .hint { flex: 1 1 100%; margin: -0.5rem 0 0; }
@media screen and (min-width: 601px), print {
  .scroll table.remarks, .scroll table.changes { table-layout: fixed; min-width: 56rem; }
  .remarks td, .remarks th, .changes td, .changes th { overflow-wrap: anywhere; }
  .remarks th:nth-child(1) { width: 21%; }
  .remarks th:nth-child(2) { width: 13%; }
  .remarks th:nth-child(3) { width: 18%; }
  .remarks th:nth-child(4) { width: 21%; }
  .changes th:nth-child(1) { width: 18%; }
  .changes th:nth-child(2) { width: 18%; }
}
@media screen and (max-width: 600px) {
  .stacked.remarks tr { grid-template-columns: 1fr; }
  .stacked.changes td:first-of-type { grid-column: 1 / -1; font-weight: 600; }
  .stacked.changes td:first-of-type::before { content: none; }
  .stacked.changes tbody th .small { display: inline; margin-left: 0.6rem; }
}
.entry-kept { border-bottom: 1px solid var(--rule); max-width: 52rem; }
.held td:first-child { width: 5rem; }
.held .group th { padding-top: 1.4rem; }
form.release .field { max-width: 44rem; margin: 1.25rem 0 0; display: flex; flex-direction: column; gap: 0.25rem; }
form.release .field label { font-weight: 600; }
@media (max-width: 34rem) { dl.index > div { grid-template-columns: 1fr; } }
@media print { .two-ways { display: none; } }
`;
