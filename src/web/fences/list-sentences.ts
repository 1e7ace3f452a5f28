import type { FencePage } from '../../register/fence-list.ts';
import type { SweepStatus } from '../../service/service-view.ts';
import { momentText } from '../frame/moment-text.ts';

/** What the register comes to, in plain words: first what is not computed yet, so that nothing sounds like an all-clear, then the computed. */
export function summarySentence(
  page: Pick<FencePage, 'counts' | 'total' | 'unswept'>,
  options: { readonly lookAheadSeasons: number; readonly nightly: string; readonly sweeping: boolean },
): string {
  const { total, unswept } = page;
  if (total === 0) return 'The register holds no fences yet.';
  const way = options.sweeping
    ? 'a sweep is at work'
    : `run stormpale sweep, or wait for the sweep at ${options.nightly}`;
  const lead =
    unswept === 0
      ? []
      : [
          total === 1
            ? `The fence is not computed yet: ${way}.`
            : `${unswept} of ${total} fences ${unswept === 1 ? 'is' : 'are'} not computed yet: ${way}.`,
        ];
  return [...lead, ...(unswept < total ? [computedSentence(page, options.lookAheadSeasons)] : [])].join(' ');
}

/** How the computed fences stand. */
function computedSentence(
  { counts, total, unswept }: Pick<FencePage, 'counts' | 'total' | 'unswept'>,
  lookAheadSeasons: number,
): string {
  const short = counts.short + counts['short from new'];
  const more = counts.closing;
  const within =
    lookAheadSeasons === 1
      ? 'within one season'
      : `within ${lookAheadSeasons === 2 ? 'two' : lookAheadSeasons} seasons`;
  const kind = unswept === 0 ? '' : 'computed ';
  const computed = total - unswept;
  if (computed === 1) {
    if (short === 1) return `The ${kind}fence is short of its design gust now.`;
    return `The ${kind}fence is not short of its design gust now; it ${more === 1 ? 'goes' : 'does not go'} short ${within}.`;
  }
  const now = `${short === 0 ? 'None' : short} of ${computed} ${kind}fences ${short === 1 ? 'is' : 'are'} short of ${short === 1 ? 'its' : 'their'} design gust now`;
  if (more === 0) return `${now}; ${short === 0 ? 'none' : 'no other'} goes short ${within}.`;
  return `${now}; ${more}${short === 0 ? '' : ' more'} ${more === 1 ? 'goes' : 'go'} short ${within}.`;
}

/**
 * When the numbers were computed, when they will be again, and what could not be computed.
 * @param nightly time of day of the nightly sweep with its zone
 */
export function sweepSentence(page: Pick<FencePage, 'total'>, sweep: SweepStatus, nightly: string): string {
  if (sweep.progress)
    return `A sweep is at work: ${sweep.progress.done} of ${page.total} fences done. Load the page again to see more.`;
  const next = `${momentText(sweep.nextAt)} (every night at ${nightly})`;
  const last = sweep.lastFinished?.finishedAt;
  const when = last
    ? `Swept ${momentText(last)}; the next sweep is due ${next}.`
    : `Not swept yet; the first sweep is due ${next}.`;
  const { failures } = sweep;
  const failed =
    failures.length === 0
      ? ''
      : ` ${failures.length === 1 ? '1 fence' : `${failures.length} fences`} could not be forecast: ${failures
          .slice(0, 3)
          .map(({ ref, message }) => `${ref} (${message})`)
          .join('; ')}${failures.length > 3 ? ' and others' : ''}.`;
  return `${when}${failed}`;
}
