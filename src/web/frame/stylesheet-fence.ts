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
form.filters .field.wide { flex: 2 1 16rem; max-width: 26rem; }
form.filters details.more { flex: 1 0 100%; margin: 0; }
form.filters .folded { display: flex; flex-wrap: wrap; align-items: end; gap: 0.9rem 1.1rem; padding: 0.5rem 0 0.25rem; }
form.filters .field.year { flex: 0 1 9.5rem; }
form.filters { margin-bottom: 0.75rem; }
.list-ways { display: flex; flex-wrap: wrap; gap: 0.4rem 1.75rem; margin-bottom: 1.5rem; max-width: none; }
.fences caption .shown { display: block; color: var(--ink); font-size: 1.0625rem; }
.fences .standing .small { white-space: nowrap; }
@media print { .list-ways { display: none; } }
`;
