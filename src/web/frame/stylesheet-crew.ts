/**
 * The crew's pages, made for a phone in the sun and a gloved thumb: nothing to touch is under 3 rem high, what matters is
 * black on white (or the reverse), and what one does stands where a thumb reaches.
 */
export const CREW_STYLES = `
.crew { max-width: 44rem; }
.crew textarea { font: inherit; color: var(--ink); background: var(--paper); border: 1px solid var(--field); border-radius: 3px; padding: 0.6rem; width: 100%; }
.crew input, .crew select, .crew button { min-height: 3.25rem; font-size: 1.125rem; }
.crew summary { min-height: 3.25rem; display: flex; align-items: center; width: 100%; font-size: 1.125rem; list-style: none; position: relative; padding-right: 2rem; }
.crew summary::-webkit-details-marker { display: none; }
.crew summary::after { content: ''; position: absolute; right: 0.5rem; top: 50%; width: 0.6rem; height: 0.6rem; border: solid currentColor; border-width: 0 2px 2px 0; transform: translateY(-70%) rotate(45deg); }
.crew details[open] > summary::after { transform: translateY(-30%) rotate(225deg); }
.crew .small { display: block; color: var(--muted); font-size: 0.98rem; line-height: 1.4; }
.crew .figures { font-variant-numeric: tabular-nums; white-space: nowrap; }
.crew .wide { display: flex; align-items: center; justify-content: center; width: 100%; min-height: 3.25rem; padding: 0.5rem 1rem; border: 1px solid var(--ink); border-radius: 3px; background: var(--paper); color: var(--ink); font-weight: 600; text-decoration: none; text-align: center; }
.crew .wide:hover { background: var(--ink); color: var(--paper); }
.crew .primary { width: 100%; background: var(--ink); color: var(--paper); border: 2px solid var(--ink); min-height: 3.75rem; font-size: 1.2rem; }
.crew .primary:hover { background: var(--paper); color: var(--ink); }
.crew .back { margin: 0 0 0.25rem; }
.crew .big-back, .crew .big-link a { display: inline-flex; align-items: center; min-height: 3rem; }
.crew .said { border-left: 4px solid var(--rule); padding: 0.2rem 0 0.2rem 1rem; }
.crew-name { border-bottom: 1px solid var(--rule); padding-bottom: 0.3rem; }
.crew .big-link { margin: 0.75rem 0 0; font-weight: 600; font-size: 1.125rem; }
.crew .load { margin: 0 0 1rem; }
.stop { background: var(--paper); border: 1px solid var(--rule); border-radius: 4px; padding: 1rem clamp(0.9rem, 3vw, 1.5rem) 1rem; margin: 1.25rem 0; }
.stop h2 { margin: 0.1rem 0 0.2rem; }
.first-head { font-weight: 600; margin: 0.1rem 0 0.2rem; }
.stop h2 { font-size: 1.5rem; }
.stop h2 a { color: var(--ink); display: inline-flex; align-items: center; min-height: 3rem; }
.stop-when { margin: 0; font-size: 1.125rem; }
.stop-when span { color: var(--muted); }
.stop-when b::after { content: ' ·'; font-weight: 400; }
.ways-there { display: flex; flex-wrap: wrap; align-items: center; gap: 0.5rem 1rem; margin: 0.5rem 0 1rem; }
.ways-there .big { display: inline-flex; align-items: center; min-height: 3.25rem; padding: 0 1.5rem; border: 1px solid var(--ink); border-radius: 3px; font-weight: 600; color: var(--ink); text-decoration: none; }
.ways-there span { color: var(--muted); }
.first-things { border-left: 4px solid var(--ink); padding: 0.1rem 0 0.1rem 1rem; margin: 1rem 0; }
.fence-links, .visit-links { list-style: none; margin: 0.75rem 0 0; padding: 0; display: grid; gap: 0.6rem; }
.fence-link, .visit-links a { display: grid; gap: 0.1rem; min-height: 3.5rem; padding: 0.7rem 2.5rem 0.7rem 1rem; border: 1px solid var(--field); border-radius: 4px; background: var(--paper); color: var(--ink); text-decoration: none; position: relative; }
.fence-links + p, .visit-links + p { margin-top: 1rem; }
.crew #phone-kept { margin-top: 1.5rem; }
.fence-link::after, .visit-links a::after { content: ''; position: absolute; right: 1.2rem; top: 50%; width: 0.6rem; height: 0.6rem; border: solid currentColor; border-width: 2px 2px 0 0; transform: translateY(-50%) rotate(45deg); }
.fence-link:hover, .visit-links a:hover { border-color: var(--ink); }
.fence-link b, .visit-links b { font-size: 1.2rem; }
.visit-links .when { color: var(--muted); }
.crew .access { margin: 0.4rem 0 0.4rem 1rem; }
.phone { margin: 0 0 1rem; }
#phone-state { background: var(--ink); color: var(--paper); padding: 0.8rem 1rem; margin: 0 0 0.6rem; border-radius: 4px; font-weight: 600; max-width: none; }
#phone-state .wide { margin-top: 0.6rem; }
.kept-entries { list-style: none; margin: 0.6rem 0; padding: 0; display: grid; gap: 0.6rem; }
.kept-entries li { border: 2px dashed var(--ink); border-radius: 4px; padding: 0.7rem 0.9rem; background: var(--paper); display: grid; gap: 0.35rem; overflow-wrap: anywhere; }
.kept-entries li[data-state='refused'] { border-style: solid; border-width: 3px; }
.kept-entries p { margin: 0; }
.kept-entries .acts { display: flex; flex-wrap: wrap; gap: 0.5rem; }
.kept-entries .acts .wide { flex: 1 1 9rem; width: auto; }
.method-choice { margin: 1.25rem 0; border: 1px solid var(--rule); border-radius: 4px; background: var(--paper); padding: 0.2rem 1rem; }
.method-choice details { margin: 0; }
.method-choice summary { flex-wrap: wrap; gap: 0.2rem 0.75rem; }
.method-choice summary span { font-weight: 400; }
.method-choice fieldset { border: 0; padding: 0 0 0.8rem; }
.method-choice fieldset > .primary { margin-top: 0.9rem; }
.crew legend { font-weight: 600; padding: 0; margin-bottom: 0.4rem; }
.crew legend.hint { font-weight: 400; }
.big-choices { display: grid; grid-template-columns: 1fr 1fr; gap: 0.5rem; }
.big-choices.in-a-row { grid-template-columns: repeat(auto-fit, minmax(4.2rem, 1fr)); }
.crew label.big-choice { position: relative; display: flex; align-items: center; justify-content: center; text-align: center; min-height: 3.25rem; padding: 0.35rem 0.4rem; border: 1px solid var(--field); border-radius: 4px; background: var(--paper); cursor: pointer; line-height: 1.2; font-weight: 400; }
.big-choice input { position: absolute; inset: 0; width: 100%; height: 100%; min-height: 0; margin: 0; opacity: 0; cursor: pointer; }
.crew label.big-choice:has(input:checked) { background: var(--ink); color: var(--paper); border-color: var(--ink); font-weight: 600; }
.crew label.big-choice:has(input:focus-visible) { outline: 3px solid var(--lean); outline-offset: 2px; }
.crew label.big-tick { display: flex; align-items: center; gap: 0.9rem; min-height: 3.5rem; padding: 0.35rem 0.9rem; border: 1px solid var(--field); border-radius: 4px; background: var(--paper); cursor: pointer; font-weight: 600; }
.big-tick input { flex: none; width: 1.9rem; height: 1.9rem; min-height: 1.9rem; margin: 0; accent-color: var(--ink); }
.crew label.big-tick:has(input:checked) { border: 2px solid var(--ink); }
.crew-form { display: flex; flex-direction: column; gap: 1rem; margin: 0.5rem 0 1rem; }
.crew-form .field { display: flex; flex-direction: column; gap: 0.25rem; }
.crew-form label { font-weight: 600; }
.crew-form.tall { max-width: none; }
.crew-form.tall button { align-self: stretch; }
.crew-form .plain-set { border: 0; padding: 0; display: flex; flex-direction: column; gap: 0.5rem; }
.crew-form .plain-set[hidden] { display: none; }
.crew-form fieldset:not(.plain-set) { display: flex; flex-direction: column; gap: 0.5rem; padding: 0.8rem 1rem; border-radius: 4px; }
.crew-form .at-posts { padding-left: 3.7rem; }
.with-unit { display: flex; align-items: center; gap: 0.6rem; }
.with-unit input { max-width: 10rem; font-size: 1.5rem; font-variant-numeric: tabular-nums; }
.with-unit .unit { color: var(--muted); font-size: 1.2rem; }
body:has(.crew) .masthead li a, body:has(.crew) .who a { display: inline-flex; align-items: center; min-height: 3rem; }
body:has(.crew) .who button { min-height: 3rem; }
.posts-head .small { font-weight: 400; }
.post-jump { margin: 0 0 1rem; }
.post-jump ul { list-style: none; margin: 0; padding: 0; display: grid; grid-template-columns: repeat(auto-fill, minmax(3rem, 1fr)); gap: 0.4rem; }
.post-jump a { display: flex; align-items: center; justify-content: center; min-height: 3rem; border: 1px solid var(--field); border-radius: 4px; background: var(--paper); color: var(--ink); text-decoration: none; font-variant-numeric: tabular-nums; }
.post-jump .has-works { border: 2px solid var(--ink); font-weight: 600; }
.post-jump .is-read { background: var(--rule); }
.post { background: var(--paper); border: 1px solid var(--rule); border-radius: 4px; padding: 0.9rem 1rem; margin: 0 0 0.9rem; scroll-margin-top: 0.5rem; }
.post.has-kept { border-color: var(--ink); }
.post-head { display: flex; flex-wrap: wrap; align-items: baseline; gap: 0.1rem 0.8rem; }
.post-head h3 { font-size: 1.35rem; margin: 0; }
.post-head .post-todo { flex-basis: 100%; }
.post-todo { margin: 0; }
.post-bad { margin: 0.3rem 0 0; font-weight: 600; }
.post-known { margin: 0.6rem 0; display: grid; gap: 0.5rem; }
.post-known div { display: grid; grid-template-columns: 5.5rem 1fr; gap: 0 0.75rem; }
.post-known div[hidden] { display: none; }
.post-known dt { color: var(--muted); }
.post-known dd { margin: 0; overflow-wrap: anywhere; }
.post-now dd { font-weight: 600; }
.post-now dd .small { font-weight: 400; }
.post-entry { border-top: 1px solid var(--rule); margin: 0.6rem 0 0; }
.closed-off { border-top: 1px solid var(--rule); padding-top: 0.7rem; display: flex; flex-wrap: wrap; align-items: center; gap: 0.6rem 1rem; }
.closed-off .danger { flex: 1 1 12rem; border: 4px double var(--ink); min-height: 3.5rem; }
.closed-off.is-closed { background: var(--ink); color: var(--paper); border-radius: 4px; padding: 0.7rem 1rem; }
.closed-off.is-closed .danger { flex: 0 0 auto; background: var(--ink); color: var(--paper); border: 1px solid var(--paper); }
.closed-off.is-closed .danger:hover { background: var(--paper); color: var(--ink); }
.closed-off .closed-now { flex: 1 1 8rem; font-weight: 600; }
.photo-form { display: flex; flex-direction: column; gap: 0.4rem; margin: 0.75rem 0; }
.photo-form label { font-weight: 600; }
.photo-form input { padding: 0.7rem; }
.photo-list { list-style: none; margin: 0.75rem 0; padding: 0; display: grid; grid-template-columns: repeat(auto-fill, minmax(8rem, 1fr)); gap: 0.75rem; }
.photo-list img { display: block; width: 100%; height: 8rem; object-fit: cover; border: 1px solid var(--rule); }
.photo-list a { display: block; }
.finish { border-top: 2px solid var(--ink); margin-top: 2.5rem; }
.finish h2 { margin-top: 1rem; }
@media (max-width: 34rem) { .stop, .post { margin-left: -0.4rem; margin-right: -0.4rem; } }
@media print { .crew form, .phone, .post-jump { display: none; } }
`;
