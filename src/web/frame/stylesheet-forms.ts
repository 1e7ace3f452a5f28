/** Forms that change something: one column, each field with its name above and its reasons below. */
export const FORM_STYLES = `
form.tall { display: flex; flex-direction: column; gap: 1.1rem; max-width: 26rem; margin: 1.25rem 0 2rem; }
form.tall .field { display: flex; flex-direction: column; gap: 0.25rem; }
form.tall label, form.tall legend { font-weight: 600; }
form.tall button { align-self: flex-start; }
.hint { margin: 0; color: var(--muted); font-size: 0.98rem; line-height: 1.4; }
.fault { margin: 0; font-weight: 600; line-height: 1.4; }
.fault::before { content: '↑ '; }
[aria-invalid='true'] { border: 2px solid var(--ink); }
.alert { border-left: 4px solid var(--ink); padding: 0.4rem 0 0.4rem 1rem; font-weight: 600; max-width: 44rem; }
.done { border-left: 4px solid var(--rule); padding: 0.4rem 0 0.4rem 1rem; max-width: 44rem; }
fieldset { border: 1px solid var(--rule); border-radius: 3px; padding: 0.6rem 1rem 0.8rem; margin: 0; min-width: 0; }
.tick { display: flex; align-items: center; gap: 0.7rem; min-height: 2.75rem; }
.tick input { width: 1.3rem; min-height: 1.3rem; height: 1.3rem; flex: none; margin: 0; accent-color: var(--link); }
form.tall .tick label { font-weight: 400; }
.ways { display: grid; gap: 0.75rem; max-width: 40rem; margin: 1.25rem 0 1.75rem; padding: 0; list-style: none; }
.ways li { display: grid; grid-template-columns: 14rem 1fr; gap: 0.35rem 1.25rem; align-items: center; }
.ways button { width: 100%; text-align: left; }
.ways span { color: var(--muted); }
form.who { display: flex; align-items: center; gap: 0.9rem; margin: 0 0 0 auto; }
form.who a { color: var(--ink); text-decoration-color: transparent; padding: 0.2rem 0; }
form.who a:hover, form.who a[aria-current] { text-decoration-color: currentColor; }
button.quiet { border-color: var(--field); font-weight: 400; padding: 0.2rem 0.8rem; min-height: 2.25rem; }
.languages { margin-top: 2.5rem; }
@media (max-width: 34rem) { .ways li { grid-template-columns: 1fr; } form.who { margin-left: 0; width: 100%; justify-content: space-between; } }
@media print { form.who, form.tall, .ways { display: none; } }
`;
