import { raw } from 'hono/html';
import type { FC } from 'hono/jsx';
import { drawFenceYears } from '../../drawing/fence-years.ts';
import { speedText } from '../../drawing/speed-text.ts';
import { type FenceForecast, judgedGroup, seasonOne } from '../../forecast/fence-forecast.ts';
import { dayInWords } from '../../notify/plain-words.ts';
import { wordsOf } from '../../notify/words-of.ts';
import type { FenceRecord } from '../../register/fence-record.ts';
import type { StoredForecast } from '../../register/forecast-store.ts';
import type { OwnerLink } from '../../register/owner-link-store.ts';
import type { OwnerRecord } from '../../register/owner-record.ts';
import type { SiteRecord } from '../../register/site-record.ts';
import { CHART_SIZES } from '../frame/chart-sizes.ts';
import type { PageFrame } from '../frame/page-frame.ts';
import { PageShell } from '../frame/page-shell.tsx';
import { ScrollFrame } from '../frame/scroll-frame.tsx';
import { OWNER_WORDS, type OwnerWords } from './owner-words.ts';

/** One of the owner's fences with its last forecast, where it has been swept. */
export interface OwnedFence {
  readonly fence: FenceRecord;
  readonly site: SiteRecord;
  readonly swept: { readonly stored: StoredForecast; readonly forecast: FenceForecast } | null;
}

interface OwnerPageProps {
  readonly owner: OwnerRecord;
  readonly link: OwnerLink;
  /** Where this owner's pages lie. */
  readonly home: string;
  readonly frame: PageFrame;
}

const holdsText = ({ site, swept }: OwnedFence): string =>
  swept ? speedText(judgedGroup(seasonOne(swept.forecast)).snapMps.p50, site.units) : '–';
const shouldHoldText = ({ site, swept }: OwnedFence): string =>
  swept ? speedText(swept.forecast.designGust.gustMps, site.units) : '–';

/** True where the fence is counted as not holding its design gust now. */
const isShort = ({ standing }: StoredForecast): boolean => standing === 'short' || standing === 'short from new';

function shortSeasonText({ swept }: OwnedFence, words: OwnerWords): string {
  if (!swept) return '–';
  return isShort(swept.stored) ? words.now : (swept.forecast.shortSeason ?? words.none);
}

/** The page of all fences of one owner. */
export const OwnerFencesPage: FC<OwnerPageProps & { readonly fences: readonly OwnedFence[] }> = (props) => {
  const { owner, fences, home, frame } = props;
  const words = OWNER_WORDS[owner.language];
  return (
    <PageShell
      title={words.yours}
      section={null}
      frame={frame}
      cautions={fences.length > 0}
      language={owner.language}
      home={home}
    >
      <h1>{words.yours}</h1>
      <p class="lead">{words.lead(owner.name, fences.length)}</p>
      {fences.length > 0 && (
        <ScrollFrame label={words.yours}>
          <table class="stacked">
            <thead>
              <tr>
                <th scope="col">{words.fence}</th>
                <th scope="col">{words.standing}</th>
                <th scope="col">{words.holds}</th>
                <th scope="col">{words.shouldHold}</th>
                <th scope="col">{words.shortSeason}</th>
                <th scope="col">{words.site}</th>
              </tr>
            </thead>
            <tbody>
              {fences.map((owned) => (
                <FenceLine owned={owned} words={words} {...props} />
              ))}
            </tbody>
          </table>
        </ScrollFrame>
      )}
      <LinkNote {...props} />
    </PageShell>
  );
};

const FenceLine: FC<OwnerPageProps & { readonly owned: OwnedFence; readonly words: OwnerWords }> = ({
  owned,
  words,
  owner,
  home,
}) => {
  const { fence, site, swept } = owned;
  return (
    <tr>
      <th scope="row">
        <a href={`${home}/fences/${encodeURIComponent(fence.ref)}`}>{fence.ref}</a>
      </th>
      <td data-label={words.standing}>{swept ? wordsOf(owner.language).standing[swept.stored.standing] : '–'}</td>
      <td data-label={words.holds}>{holdsText(owned)}</td>
      <td data-label={words.shouldHold}>{shouldHoldText(owned)}</td>
      <td data-label={words.shortSeason}>{shortSeasonText(owned, words)}</td>
      <td data-label={words.site}>{site.name}</td>
    </tr>
  );
};

/** The page of one fence of an owner. */
export const OwnerFencePage: FC<OwnerPageProps & { readonly owned: OwnedFence }> = (props) => {
  const { owner, owned, home, frame } = props;
  const { fence, site, swept } = owned;
  const words = OWNER_WORDS[owner.language];
  const title = words.fenceTitle(fence.ref);
  return (
    <PageShell title={title} section={null} frame={frame} cautions={true} language={owner.language} home={home}>
      <p class="back">
        <a href={home}>{words.back}</a>
      </p>
      <h1>{title}</h1>
      <p class="where">
        {site.name}, {site.place}
      </p>
      {swept ? <SweptFence {...props} swept={swept} words={words} /> : <p class="lead">{words.notSwept}</p>}
      <LinkNote {...props} />
    </PageShell>
  );
};

const SweptFence: FC<{
  readonly owner: OwnerRecord;
  readonly owned: OwnedFence;
  readonly swept: NonNullable<OwnedFence['swept']>;
  readonly words: OwnerWords;
}> = ({ owner, owned, swept, words }) => {
  const { forecast, stored } = swept;
  const { units } = owned.site;
  const { onceInYears } = judgedGroup(seasonOne(forecast));
  return (
    <>
      <p class="lead">{words.breaks(holdsText(owned), shouldHoldText(owned), onceInYears)}</p>
      <p>
        {`${words.standing}: ${wordsOf(owner.language).standing[stored.standing]}. `}
        {shortSentence(stored, forecast, words)}
      </p>
      <figure class="chart">
        {CHART_SIZES.map(({ name, widthPx, heightPx }) => (
          <div class={`chart-${name}`}>
            {raw(drawFenceYears(forecast, { units, language: owner.language, widthPx, heightPx, idPrefix: name }))}
          </div>
        ))}
        <figcaption>{words.chart}</figcaption>
      </figure>
    </>
  );
};

function shortSentence(stored: StoredForecast, { shortSeason }: FenceForecast, words: OwnerWords): string {
  if (isShort(stored)) return words.shortNow;
  return shortSeason === null ? words.notShort : words.shortIn(shortSeason);
}

const LinkNote: FC<{ readonly owner: OwnerRecord; readonly link: OwnerLink }> = ({ owner, link }) => (
  <p class="muted">{OWNER_WORDS[owner.language].linkNote(dayInWords(link.expiresAt.slice(0, 10), owner.language))}</p>
);
