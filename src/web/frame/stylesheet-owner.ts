/** The pages behind an owner's link: the line of their pages, forms of one button, days to choose among. */
export const OWNER_STYLES = `
.owner-places { border-bottom: 1px solid var(--rule); margin: 0 0 1.75rem; }
.owner-places ul { display: flex; flex-wrap: wrap; gap: 0.1rem 1.5rem; list-style: none; margin: 0; padding: 0 0 0.5rem; }
.owner-places a { color: var(--ink); display: inline-block; padding: 0.45rem 0; text-decoration-color: transparent; }
.owner-places a:hover, .owner-places a[aria-current] { text-decoration-color: currentColor; }
.owner-places a[aria-current] { font-weight: 600; }
.link-note { margin-top: 2.5rem; font-size: 0.98rem; }
form.one-button { margin: 0.75rem 0 1.25rem; }
.answer-box { border: 1px solid var(--rule); background: var(--paper); border-radius: 3px; padding: 1rem 1.25rem 0.25rem; margin: 1.75rem 0; max-width: 46rem; }
.answer-box h2, .answer-box h3 { margin-top: 0; }
.days { display: grid; gap: 0.1rem; border: 0; padding: 0; margin: 0 0 1rem; }
.days legend { padding: 0 0 0.3rem; font-weight: 600; }
.days .tick label { font-weight: 400; }
.days .tick input { border-radius: 50%; }
textarea { font: inherit; color: var(--ink); background: var(--paper); border: 1px solid var(--field); border-radius: 3px; padding: 0.45rem 0.6rem; width: 100%; min-height: 6rem; }
.as-written { color: var(--muted); font-size: 0.92rem; line-height: 1.35; }
.tick label { padding: 0.35rem 0; line-height: 1.35; }
.scroll table.by-year { min-width: 0; }
@media screen and (max-width: 600px) { .by-year .rest { display: none; } }
.sum th, .sum td { border-bottom: 0; }
.wide-text { overflow-wrap: anywhere; }
@media print { .owner-places, form.one-button { display: none; } }
`;
