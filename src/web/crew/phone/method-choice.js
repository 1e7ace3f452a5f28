// Shows at every post the numbers that the chosen method gives, and no other; remembers the choice for the fence.

const KEY = `stormpale-method ${location.pathname}`;

/** @param {ParentNode} part @param {string} method */
function apply(part, method) {
  for (const set of part.querySelectorAll('fieldset[data-method]')) {
    if (!(set instanceof HTMLFieldSetElement)) continue;
    const isChosen = set.dataset.method === method;
    set.hidden = !isChosen;
    set.disabled = !isChosen;
  }
  for (const input of part.querySelectorAll('input[type="hidden"][name="method"]')) {
    /** @type {HTMLInputElement} */ (input).value = method;
  }
}

/** @returns {string} the method of this fence; empty until one is chosen */
export function chosenMethod() {
  const chosen = document.querySelector('[data-method-choice] input[name="method"]:checked');
  return chosen instanceof HTMLInputElement ? chosen.value : '';
}

/**
 * Applies the chosen method to a part of the page.
 * @param {ParentNode} part
 */
export function applyMethod(part) {
  const method = chosenMethod();
  if (method !== '') apply(part, method);
}

/** Lets the choice work at once. */
export function offerMethods() {
  const form = document.querySelector('[data-method-choice]');
  if (!(form instanceof HTMLFormElement)) return;
  for (const button of form.querySelectorAll('[data-without-script]')) button.toggleAttribute('hidden', true);
  const remembered = localStorage.getItem(KEY);
  const before = form.querySelector(`input[value="${remembered}"]`);
  if (chosenMethod() === '' && before instanceof HTMLInputElement) before.checked = true;
  const show = () => {
    const chosen = form.querySelector('input:checked');
    const name = form.querySelector('[data-method-name]');
    if (!(chosen instanceof HTMLInputElement) || !name) return;
    name.textContent = chosen.parentElement?.textContent?.trim() ?? '';
    form.querySelector('[data-method-first]')?.toggleAttribute('hidden', true);
    form.querySelector('details')?.removeAttribute('open');
    for (const hint of document.querySelectorAll('.method-missing')) hint.toggleAttribute('hidden', true);
    applyMethod(document);
  };
  form.addEventListener('change', () => {
    localStorage.setItem(KEY, chosenMethod());
    show();
  });
  form.addEventListener('submit', (event) => event.preventDefault());
  show();
}
