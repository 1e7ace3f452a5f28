/** Type, colours and the frame of every page, on light and dark ground and on paper. */
export const PAGE_STYLES = `
@font-face { font-family: 'Source Sans 3'; font-weight: 400; font-display: swap; src: url('/fonts/source-sans-3-400.ttf') format('truetype'); }
@font-face { font-family: 'Source Sans 3'; font-weight: 600; font-display: swap; src: url('/fonts/source-sans-3-600.ttf') format('truetype'); }
:root {
  color-scheme: light dark;
  --ground: #f7f5f0; --paper: #ffffff; --ink: #1f2a33; --muted: #56626c; --rule: #d9d6cd; --grid: #e3e6e8;
  --snap: #26476a; --ends: #5d7690; --lean: #8a5a1c; --lean-band: #c99a52; --link: #26476a; --field: #8b949b;
}
@media (prefers-color-scheme: dark) {
  :root {
    --ground: #161c21; --paper: #1d252b; --ink: #e9e6df; --muted: #a9b3ba; --rule: #37424a; --grid: #303a42;
    --snap: #9dc0e4; --ends: #93a9bf; --lean: #dfb46f; --lean-band: #c99a52; --link: #a9c9ea; --field: #76828b;
  }
}
* { box-sizing: border-box; }
html { -webkit-text-size-adjust: 100%; }
body { margin: 0; background: var(--ground); color: var(--ink); font: 400 1.0625rem/1.55 'Source Sans 3', 'Segoe UI', Roboto, sans-serif; }
a { color: var(--link); text-decoration-thickness: 1px; text-underline-offset: 0.18em; }
a:hover { text-decoration-thickness: 2px; }
:focus-visible { outline: 3px solid var(--lean); outline-offset: 2px; border-radius: 2px; }
.skip { position: absolute; left: 1rem; top: -4rem; background: var(--paper); color: var(--ink); padding: 0.5rem 1rem; z-index: 2; }
.skip:focus { top: 0.5rem; }
.masthead { border-bottom: 1px solid var(--rule); }
.masthead-inner, main, .cautions-inner { max-width: 84rem; margin: 0 auto; padding: 0 clamp(1rem, 3vw, 2.5rem); }
.masthead-inner { display: flex; flex-wrap: wrap; align-items: center; gap: 0.25rem 2rem; padding-top: 0.9rem; padding-bottom: 0.9rem; }
.name { font-weight: 600; font-size: 1.25rem; color: var(--ink); text-decoration: none; display: inline-flex; align-items: center; gap: 0.6rem; }
.name svg { stroke: currentColor; flex: none; }
.masthead ul { display: flex; flex-wrap: wrap; gap: 0.2rem 1.4rem; list-style: none; margin: 0; padding: 0; }
.masthead li a { color: var(--ink); text-decoration-color: transparent; display: inline-block; padding: 0.2rem 0; }
.masthead li a:hover, .masthead li a[aria-current] { text-decoration-color: currentColor; }
main { padding-top: clamp(1.5rem, 4vw, 2.75rem); padding-bottom: 3rem; }
h1 { font-size: clamp(1.6rem, 3.4vw, 2.2rem); line-height: 1.2; font-weight: 600; margin: 0 0 0.4rem; letter-spacing: -0.01em; }
h2 { font-size: 1.35rem; line-height: 1.3; font-weight: 600; margin: 2.75rem 0 0.75rem; }
h3 { font-size: 1.0625rem; font-weight: 600; margin: 1.75rem 0 0.5rem; }
p { margin: 0 0 0.9rem; max-width: 44rem; }
.lead { font-size: clamp(1.2rem, 2.2vw, 1.45rem); line-height: 1.4; max-width: 46rem; }
.muted { color: var(--muted); }
.where { color: var(--muted); margin-bottom: 1.25rem; }
.back { margin-bottom: 0.75rem; }
ul.plain { padding-left: 1.1rem; max-width: 44rem; margin: 0 0 0.9rem; }
ul.plain li { margin-bottom: 0.35rem; }
code, pre { font-family: ui-monospace, 'SF Mono', Menlo, Consolas, monospace; font-size: 0.9em; }
pre { white-space: pre-wrap; overflow-wrap: anywhere; background: var(--paper); border: 1px solid var(--rule); padding: 1rem; margin: 0 0 1rem; }
.hash { overflow-wrap: anywhere; }
dl.facts { display: grid; grid-template-columns: repeat(auto-fill, minmax(min(100%, 17rem), 1fr)); gap: 1.1rem 2.5rem; margin: 0 0 1rem; }
dl.facts dt { color: var(--muted); font-size: 0.95rem; }
dl.facts dd { margin: 0; }
dl.facts .small { display: block; color: var(--muted); font-size: 0.95rem; line-height: 1.4; }
form.narrow { display: flex; flex-wrap: wrap; align-items: end; gap: 0.9rem 1.1rem; margin: 1.5rem 0 1.75rem; }
form.narrow .field { display: flex; flex-direction: column; gap: 0.2rem; flex: 1 1 10rem; max-width: 16rem; }
form.narrow label { font-size: 0.95rem; color: var(--muted); }
input, select, button { font: inherit; color: var(--ink); background: var(--paper); border: 1px solid var(--field); border-radius: 3px; padding: 0.45rem 0.6rem; min-height: 2.75rem; width: 100%; }
button { width: auto; cursor: pointer; padding: 0.45rem 1.3rem; border-color: var(--ink); font-weight: 600; }
button:hover { background: var(--ink); color: var(--paper); }
details { margin: 0 0 1rem; }
summary { cursor: pointer; padding: 0.4rem 0; font-weight: 600; width: fit-content; }
.pages { display: flex; gap: 1.5rem; margin-top: 1.25rem; flex-wrap: wrap; }
.cautions { border-top: 1px solid var(--rule); padding: 1.75rem 0 2.5rem; color: var(--muted); font-size: 0.98rem; }
.cautions h2 { margin: 0 0 0.5rem; font-size: 1.0625rem; color: var(--ink); }
.cautions p { margin-bottom: 0.35rem; max-width: 60rem; }
iframe.message { width: 100%; height: 60rem; max-height: 80vh; border: 1px solid var(--rule); background: #ffffff; }
.visually-hidden { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%); white-space: nowrap; }
@media print {
  :root {
    color-scheme: light; font-size: 10.5pt;
    --ground: #ffffff; --paper: #ffffff; --ink: #000000; --muted: #3c3c3c; --rule: #999999; --grid: #e3e6e8;
    --snap: #26476a; --ends: #5d7690; --lean: #8a5a1c; --lean-band: #c99a52; --link: #000000; --field: #8b949b;
  }
  body { font-size: 1rem; }
  .masthead ul, form.narrow, .pages, .skip, .back { display: none; }
  main { padding-top: 1rem; }
  h2 { margin-top: 1.75rem; }
  .scroll { overflow: visible; }
  h2 { break-after: avoid; }
  figure, tr { break-inside: avoid; }
  a { text-decoration: none; color: inherit; }
}
`;
