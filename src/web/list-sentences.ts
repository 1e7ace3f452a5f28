import type { FencePage } from '../register/fence-list.ts';
import type { SweepStatus } from '../service/service-view.ts';
import { momentText } from './moment-text.ts';

/** What the register comes to, in plain words. */
export function summarySentence(page: Pick<FencePage, 'counts' | 'total'>, lookAheadSeasons: number): string {
  const { counts, total } = page;
  if (total === 0) return 'The register holds no fences yet.';
  const short = counts.short + counts['short from new'];
  const more = counts.closing;
  const within =
    lookAheadSeasons === 1
      ? 'within one season'
      : `within ${lookAheadSeasons === 2 ? 'two' : lookAheadSeasons} seasons`;
  if (total === 1) {
    if (short === 1) return 'The fence is short of its design gust now.';
    return `The fence is not short of its design gust now; it ${more === 1 ? 'goes' : 'does not go'} short ${within}.`;
  }
  const now = `${short === 0 ? 'None' : short} of ${total} fences ${short === 1 ? 'is' : 'are'} short of ${short === 1 ? 'its' : 'their'} design gust now`;
  if (more === 0) return `${now}; ${short === 0 ? 'none' : 'no other'} goes short ${within}.`;
  return `${now}; ${more}${short === 0 ? '' : ' more'} ${more === 1 ? 'goes' : 'go'} short ${within}.`;
}

/** When the numbers were computed, and what is being done about those that are missing. */
export function sweepSentence(page: Pick<FencePage, 'unswept' | 'total'>, sweep: SweepStatus): string {
  if (sweep.progress)
    return `A sweep is at work: ${sweep.progress.done} of ${page.total} fences done. Load the page again to see more.`;
  const last = sweep.lastFinished?.finishedAt;
  const when = last
    ? `Swept ${momentText(last)}; the next sweep is due ${momentText(sweep.nextAt)}.`
    : `Not swept yet; the first sweep is due ${momentText(sweep.nextAt)}.`;
  const { failures } = sweep;
  const failed =
    failures.length === 0
      ? ''
      : ` ${failures.length === 1 ? '1 fence' : `${failures.length} fences`} could not be forecast: ${failures
          .slice(0, 3)
          .map(({ ref, message }) => `${ref} (${message})`)
          .join('; ')}${failures.length > 3 ? ' and others' : ''}.`;
  const missing =
    page.unswept === 0
      ? ''
      : ` ${page.unswept === 1 ? '1 fence has' : `${page.unswept} fences have`} no numbers until then.`;
  return `${when}${failed}${missing}`;
}
