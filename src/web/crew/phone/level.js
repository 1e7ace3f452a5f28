// Reads how far the phone's long edge is out of plumb, once somebody taps for it and taps again to take it.
import { word } from './kept-list.js';

/** How long a phone without a level is waited for [ms]. */
const PATIENCE_MS = 2500;

/**
 * Out of plumb of the long edge [deg], 0 to 90, in whatever direction it leans, from the tilt front to back.
 * The long edge makes the sine of beta with the horizontal. Source: W3C Device Orientation, rotation order Z-X'-Y''.
 * @param {number} beta [deg]
 */
export function outOfPlumb(beta) {
  const up = Math.min(1, Math.abs(Math.sin((beta * Math.PI) / 180)));
  return (Math.acos(up) * 180) / Math.PI;
}

/** @returns {Promise<boolean>} */
async function mayRead() {
  const asking = /** @type {{ requestPermission?: () => Promise<string> }} */ (
    /** @type {unknown} */ (DeviceOrientationEvent)
  );
  if (typeof asking.requestPermission !== 'function') return true;
  return (await asking.requestPermission().catch(() => 'denied')) === 'granted';
}

/** @param {HTMLButtonElement} button @param {HTMLInputElement} input */
function offer(button, input) {
  /** @type {number | null} */
  let degrees = null;
  let isReading = false;
  button.hidden = false;
  button.textContent = word('takeLevel');
  /** @param {DeviceOrientationEvent} event */
  const read = (event) => {
    if (event.beta === null) return;
    degrees = Math.round(outOfPlumb(event.beta));
    button.textContent = word('levelAsk').replace('{n}', String(degrees));
  };
  const stop = () => {
    isReading = false;
    window.removeEventListener('deviceorientation', read);
  };
  const tapped = async () => {
    if (isReading && degrees !== null) {
      input.value = String(degrees);
      input.dispatchEvent(new Event('input', { bubbles: true }));
      stop();
      button.textContent = word('takeLevel');
      return;
    }
    if (!(await mayRead())) {
      button.textContent = word('levelNone');
      return;
    }
    degrees = null;
    isReading = true;
    window.addEventListener('deviceorientation', read);
    setTimeout(() => {
      if (!isReading || degrees !== null) return;
      stop();
      button.textContent = word('levelNone');
    }, PATIENCE_MS);
  };
  button.addEventListener('click', () => void tapped());
}

/**
 * Offers the level beside each lean of a part of the page.
 * @param {ParentNode} part
 */
export function offerLevel(part) {
  if (!('DeviceOrientationEvent' in window)) return;
  for (const button of part.querySelectorAll('[data-take-level]')) {
    const input = button.closest('.field')?.querySelector('[data-lean]');
    if (button instanceof HTMLButtonElement && input instanceof HTMLInputElement) offer(button, input);
  }
}
