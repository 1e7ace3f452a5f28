import type { FC } from 'hono/jsx';
import { heldText } from '../../drawing/held-text.ts';
import { speedText } from '../../drawing/speed-text.ts';
import type { FenceSummary } from '../../register/fence-summaries.ts';
import { ScrollFrame } from '../frame/scroll-frame.tsx';

/** Fences shown at most in one list. */
const MOST_FENCES = 300;

/** The field by which a list is searched. */
export const SearchForm: FC<{ readonly path: string; readonly label: string; readonly text: string }> = ({
  path,
  label,
  text,
}) => (
  <search aria-label={label}>
    <form class="narrow" method="get" action={path}>
      <div class="field">
        <label for="q">{label}</label>
        <input id="q" name="q" type="search" value={text} />
      </div>
      <button type="submit">Show</button>
    </form>
  </search>
);

/** Links to the page before and after. */
export const PageLinks: FC<{
  readonly path: string;
  readonly text: string;
  readonly page: number;
  readonly pages: number;
}> = ({ path, text, page, pages }) => {
  const to = (number: number): string =>
    `${path}?${new URLSearchParams({ ...(text === '' ? {} : { q: text }), page: String(number) }).toString()}`;
  return pages === 1 ? null : (
    <nav class="pages" aria-label="Pages of the list">
      {page > 1 && (
        <a rel="prev" href={to(page - 1)}>
          Page {page - 1}
        </a>
      )}
      <span>
        Page {page} of {pages}
      </span>
      {page < pages && (
        <a rel="next" href={to(page + 1)}>
          Page {page + 1}
        </a>
      )}
    </nav>
  );
};

/** How many fences stand how, in words: `3 short, 2 closing, 7 clear`. */
export function standingsText(fences: readonly FenceSummary[]): string {
  if (fences.length === 0) return 'no fences';
  const counts = new Map<string, number>();
  for (const { standing } of fences) {
    const name = standing ?? 'not swept yet';
    counts.set(name, (counts.get(name) ?? 0) + 1);
  }
  return [...counts].map(([name, number]) => `${number} ${name}`).join(', ');
}

/** How many fences there are and how they stand, as a sentence: `6 fences: 4 short, 2 clear.` */
export const fencesSentence = (fences: readonly FenceSummary[]): string =>
  `${fences.length === 1 ? '1 fence' : `${fences.length} fences`}: ${standingsText(fences)}.`;

/** The fences of an owner or a site, the worst first. */
export const FenceSummaries: FC<{ readonly fences: readonly FenceSummary[]; readonly beside: 'site' | 'owner' }> = ({
  fences,
  beside,
}) => (
  <ScrollFrame label="Fences">
    <table class="stacked">
      <caption>
        {standingsText(fences)}
        {fences.length > MOST_FENCES && `; the first ${MOST_FENCES} of ${fences.length}`}
      </caption>
      <thead>
        <tr>
          <th scope="col">Fence</th>
          <th scope="col">Standing</th>
          <th scope="col">Short season</th>
          <th scope="col">Snap speed</th>
          <th scope="col">Design gust</th>
          <th scope="col">{beside === 'site' ? 'Site' : 'Owner'}</th>
          <th scope="col">Enter</th>
        </tr>
      </thead>
      <tbody>
        {fences.slice(0, MOST_FENCES).map((fence) => {
          const path = `/fences/${encodeURIComponent(fence.ref)}`;
          return (
            <tr>
              <th scope="row">
                <a href={path}>{fence.ref}</a>
              </th>
              <td data-label="Standing">{fence.standing ?? <span class="muted">not swept yet</span>}</td>
              <td data-label="Short season">{shortText(fence)}</td>
              <td data-label="Snap speed">
                {fence.snapMps === null ? '–' : heldText(fence.snapMps, fence.units, 'en')}
              </td>
              <td data-label="Design gust">
                {fence.designGustMps === null ? '–' : speedText(fence.designGustMps, fence.units)}
              </td>
              <td data-label={beside === 'site' ? 'Site' : 'Owner'}>
                {beside === 'site' ? (
                  <a href={`/sites/${encodeURIComponent(fence.siteRef)}`}>{fence.siteName}</a>
                ) : (
                  <a href={`/owners/${encodeURIComponent(fence.ownerRef)}`}>{fence.ownerName}</a>
                )}
              </td>
              <td data-label="Enter">
                <a href={`${path}/inspect`} aria-label={`An inspection of fence ${fence.ref}`}>
                  inspection
                </a>
                {', '}
                <a href={`${path}/works`} aria-label={`Works at fence ${fence.ref}`}>
                  works
                </a>
              </td>
            </tr>
          );
        })}
      </tbody>
    </table>
  </ScrollFrame>
);

function shortText({ standing, shortSeason }: FenceSummary): string {
  if (standing === null) return '–';
  if (standing === 'short from new') return 'since new';
  return standing === 'short' ? 'now' : (shortSeason ?? 'not within 30');
}
