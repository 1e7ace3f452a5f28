/** A fence's own page: its run, its posts cut through, what was and what might be done; and the filters of the list. */
export const FENCE_STYLES = `
.run-drawing, .post-sections { display: block; width: 100%; height: auto; }
.run-boards { fill: var(--grid); }
.run-rail, .run-torn, .run-bracket { stroke: var(--muted); }
.run-ground, .run-cross, .run-crack, .run-bars { stroke: var(--ink); }
.run-post { fill: var(--paper); stroke: var(--ink); }
.run-post-short { fill: var(--snap); stroke: var(--ink); }
.run-ring { fill: var(--paper); stroke: var(--ink); }
.run-wedge { fill: var(--ink); }
.ps-clear { fill: var(--paper); }
.ps-dot { fill: var(--lean); }
.ps-built { stroke: var(--muted); }
.ps-likely, .ps-sound { fill: var(--snap); }
.ps-solid { fill: var(--snap); stroke: var(--ink); }
.ps-middle, .ps-sleeve, .ps-crossed { stroke: var(--ink); }
.ps-cavity { fill: var(--paper); stroke: var(--ink); }
.ways-on ul { display: flex; flex-wrap: wrap; gap: 0.35rem 1.5rem; list-style: none; margin: 0 0 1.4rem; padding: 0; }
.moment { white-space: nowrap; }
dl.facts.money { grid-template-columns: repeat(auto-fill, minmax(9.5rem, 1fr)); gap: 0.9rem 1.5rem; max-width: 64rem; }
form.filters .field.wide { flex: 2 1 16rem; max-width: 26rem; }
form.filters details.more { flex: 1 0 100%; margin: 0; }
form.filters .folded { display: flex; flex-wrap: wrap; align-items: end; gap: 0.9rem 1.1rem; padding: 0.5rem 0 0.25rem; }
form.filters .field.year { flex: 0 1 9.5rem; }
form.filters { margin-bottom: 0.75rem; }
.list-ways { display: flex; flex-wrap: wrap; gap: 0.4rem 1.75rem; margin-bottom: 1.5rem; max-width: none; }
.fences caption .shown { display: block; color: var(--ink); font-size: 1.0625rem; }
.fences .standing .dangerous { display: block; }
.fences .standing .small { white-space: nowrap; }
form.what-if { margin: 1.25rem 0 1.75rem; }
form.what-if legend { font-weight: 600; padding: 0 0.4rem; }
form.what-if button { margin-top: 1rem; }
.works-choice { display: grid; grid-template-columns: repeat(auto-fill, minmax(min(100%, 17rem), 1fr)); gap: 0.25rem 2rem; align-items: start; }
.works-kind { display: flex; flex-wrap: wrap; align-items: center; gap: 0 0.75rem; }
.works-kind .tick { flex: 1 1 10rem; }
.works-kind select { flex: 1 1 9rem; width: auto; }
@media screen and (min-width: 601px) { .side-by-side td { white-space: nowrap; } }
.everything tbody th { min-width: 15rem; font-weight: 400; }
ol.history { list-style: none; margin: 0 0 1rem; padding: 0; border-left: 2px solid var(--rule); max-width: 52rem; }
ol.history li { position: relative; padding: 0 0 0.9rem 1.4rem; }
ol.history li::before { content: ''; position: absolute; left: -0.4rem; top: 0.5rem; width: 0.65rem; height: 0.65rem; border-radius: 50%; background: var(--paper); border: 2px solid var(--snap); }
ol.history .day { display: inline-block; min-width: 7rem; font-variant-numeric: tabular-nums; color: var(--muted); }
ol.history .kind { font-weight: 600; }
ol.history .small { display: block; color: var(--muted); font-size: 0.95rem; line-height: 1.4; }
@media print { form.what-if { display: none; } .ways-on, .list-ways { display: none; } }
`;
