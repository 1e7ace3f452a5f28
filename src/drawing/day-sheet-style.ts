import { CHART_FONT, CHART_PALETTE } from './chart-palette.ts';

const { ink, muted, snap, lean } = CHART_PALETTE;

/** The look of a day sheet: wide rows and boxes for a pen in a glove, one column of cards on a phone, plain ink on paper. */
export const DAY_SHEET_STYLE = `
@page { margin: 12mm 12mm 14mm; }
* { box-sizing: border-box; }
html { -webkit-text-size-adjust: 100%; }
body { margin: 0; background: #f7f5f0; color: ${ink}; font: 400 17px/1.4 ${CHART_FONT}; -webkit-print-color-adjust: exact; print-color-adjust: exact; }
.sheet { max-width: 1080px; margin: 0 auto; padding: clamp(16px, 3vw, 40px); background: #fff; }
.sheet + .sheet { margin-top: 24px; }
header { display: flex; flex-wrap: wrap; justify-content: space-between; align-items: baseline; gap: 2px 24px; border-bottom: 3px solid ${ink}; padding-bottom: 10px; }
h1 { font-size: 30px; line-height: 1.15; font-weight: 600; letter-spacing: -0.01em; margin: 0; }
header .day { font-size: 21px; margin: 0; }
header .people { flex-basis: 100%; margin: 2px 0 0; color: ${muted}; }
h2 { font-size: 24px; line-height: 1.2; font-weight: 600; margin: 0; }
h3 { font-size: 20px; line-height: 1.25; font-weight: 600; margin: 0; }
.load-head { font-size: 17px; margin: 20px 0 6px; }
p { margin: 0 0 6px; }
.muted { color: ${muted}; }
ul { list-style: none; margin: 0; padding: 0; }
.box { display: inline-block; flex: none; width: 26px; height: 26px; border: 2px solid ${ink}; border-radius: 4px; background: #fff; }
.load { display: grid; grid-template-columns: repeat(auto-fill, minmax(min(100%, 300px), 1fr)); gap: 4px 28px; }
.load li { display: flex; align-items: center; gap: 12px; min-height: 40px; border-bottom: 1px solid #d9d6cd; }
.load b { min-width: 84px; }
.stop { margin-top: 34px; }
.stop-head { display: flex; gap: 14px; align-items: flex-start; }
.turn { flex: none; min-width: 44px; height: 44px; border-radius: 22px; background: ${snap}; color: #fff; font-size: 24px; font-weight: 600; line-height: 44px; text-align: center; }
.stop-head .what { flex: 1; }
.stop-head .when { text-align: right; font-size: 21px; font-weight: 600; line-height: 1.2; }
.stop-head .when span { display: block; font-size: 16px; font-weight: 400; color: ${muted}; }
.word { border-left: 5px solid ${lean}; padding: 4px 0 4px 12px; margin: 12px 0; font-size: 18px; white-space: pre-line; }
.first li { display: flex; gap: 12px; align-items: flex-start; padding: 8px 0; font-weight: 600; }
.owners { margin: 10px 0; }
.fence { margin-top: 26px; border-top: 1.5px solid ${ink}; padding-top: 12px; }
.fence .do { font-size: 19px; margin: 2px 0 4px; }
.strip { margin: 10px 0 2px; }
.strip svg { display: block; }
table { width: 100%; border-collapse: collapse; margin-top: 8px; table-layout: fixed; }
.c-tick { width: 44px; } .c-post { width: 68px; } .c-read { width: 25%; } .c-believed { width: 168px; } .c-found, .c-lean { width: 98px; }
thead th { text-align: left; vertical-align: bottom; font-size: 14px; line-height: 1.2; font-weight: 400; color: ${muted}; padding: 0 8px 5px; border-bottom: 1.5px solid ${ink}; }
tbody tr { border-bottom: 1px solid #b9b5aa; }
tbody tr.new { border-bottom-style: dashed; }
td, tbody th { vertical-align: middle; text-align: left; padding: 6px 8px; height: 50px; font-weight: 400; }
td.tick { width: 44px; padding-left: 0; }
tbody th { white-space: nowrap; }
tbody th b { font-size: 23px; font-weight: 600; }
tbody th span, .small { font-size: 14.5px; color: ${muted}; line-height: 1.25; }
tbody th span { display: block; }
td .works { display: block; font-weight: 600; line-height: 1.25; }
td .bad { display: block; font-size: 15px; line-height: 1.25; }
td.believed { white-space: nowrap; font-variant-numeric: tabular-nums; }
td.believed svg { display: block; margin-top: 1px; }
td.read { font-size: 15px; line-height: 1.25; }
.blank { display: inline-block; width: 84px; height: 34px; border: 1px solid #8b949b; border-radius: 4px; background: #fff; vertical-align: middle; }
td.blank-cell { padding-left: 4px; padding-right: 4px; }
.ends { display: flex; flex-wrap: wrap; gap: 10px 28px; margin-top: 12px; align-items: center; }
.ends span { display: inline-flex; gap: 10px; align-items: center; }
.ends .remark { flex: 1 1 300px; }
.ends .remark i { flex: 1; border-bottom: 1px solid #8b949b; height: 30px; }
.cautions { margin-top: 34px; padding-top: 12px; border-top: 1px solid #b9b5aa; font-size: 14.5px; color: ${muted}; }
.cautions p { margin-bottom: 3px; }
.stacked { display: none; }
@media screen and (max-width: 640px) {
  h1 { font-size: 26px; }
  .stop-head { flex-wrap: wrap; }
  .stop-head .when { flex-basis: 100%; text-align: left; padding-left: 58px; }
  .strip { overflow-x: auto; }
  .strip svg { min-width: 600px; }
  .stop-head .when span, tbody th span { display: inline; margin-left: 8px; }
  thead, colgroup { display: none; }
  table, tbody { display: block; }
  tbody tr { display: grid; grid-template-columns: 40px 96px 1fr; gap: 2px 8px; padding: 12px 0; align-items: start; }
  td, tbody th { display: block; height: auto; padding: 0; }
  td.tick { grid-row: 1 / span 5; width: auto; padding-top: 3px; }
  td.todo { padding-top: 3px; }
  td.read, td.believed, td.blank-cell { grid-column: 2 / -1; width: auto; white-space: normal; padding: 0; }
  td.blank-cell { display: flex; gap: 10px; align-items: center; margin-top: 4px; }
  .stacked { display: inline; color: ${muted}; font-size: 14.5px; }
  td.blank-cell .stacked { min-width: 96px; }
}
@media print {
  body { background: #fff; color: #000; font-size: 10.5pt; }
  .sheet { max-width: none; padding: 0; }
  .sheet + .sheet { margin-top: 0; break-before: page; }
  h1 { font-size: 20pt; } header .day { font-size: 14pt; } h2 { font-size: 15pt; } h3 { font-size: 12.5pt; } .load-head { font-size: 11pt; }
  .muted, thead th, tbody th span, .small, .cautions { color: #3c3c3c; }
  thead th, tbody th span, .small, td.read, td .bad { font-size: 9pt; }
  tbody th b { font-size: 14pt; }
  td, tbody th { height: 12.5mm; }
  .word, .fence .do { font-size: 11.5pt; }
  .box { width: 7mm; height: 7mm; }
  .blank { width: 20mm; height: 9mm; }
  .c-tick { width: 10mm; } .c-post { width: 15mm; } .c-believed { width: 33mm; } .c-found, .c-lean { width: 22mm; }
  .turn { background: #fff; color: #000; border: 2pt solid #000; line-height: 40px; }
  .load { grid-template-columns: 1fr 1fr; }
  thead { display: table-header-group; }
  .stop-head, .first li, tr, .strip, .ends, .load li, .cautions { break-inside: avoid; }
  h2, h3, .fence .do, .strip { break-after: avoid; }
}
`;
