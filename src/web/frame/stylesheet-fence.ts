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
figure.chart > h3 { margin: 0.25rem 0.5rem 0.75rem; }
`;
