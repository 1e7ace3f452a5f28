import { raw } from 'hono/html';
import type { FC } from 'hono/jsx';
import { drawFenceYears } from '../../drawing/fence-years.ts';
import { isNextToNothing } from '../../drawing/held-text.ts';
import { type FenceForecast, judgedGroup, seasonOne } from '../../forecast/fence-forecast.ts';
import { isShort } from '../../notify/matters.ts';
import { wordsOf } from '../../notify/words-of.ts';
import type { WorksOffer } from '../../notify/works-offer.ts';
import type { StoredForecast } from '../../register/forecast-store.ts';
import { CHART_SIZES } from '../frame/chart-sizes.ts';
import type { PageLanguage } from '../frame/page-language.ts';
import { ScrollFrame } from '../frame/scroll-frame.tsx';
import {
  type FenceSaid,
  fenceSaid,
  holdsText,
  type OwnedFence,
  type SweptFence,
  shouldHoldText,
} from './owned-fence.ts';
import { OneButton, OwnerShell, Said } from './owner-shell.tsx';
import type { OwnerView } from './owner-view.ts';
import { OWNER_WORDS, type OwnerWords } from './owner-words.ts';

/** Most fences told in a sentence each; more are in the table alone. */
const MOST_SENTENCES = 5;

function shortSeasonText({ swept }: OwnedFence, words: OwnerWords): string {
  if (!swept) return '–';
  return isShort(swept.stored.standing) ? words.now : (swept.forecast.shortSeason ?? words.none);
}

const breaksText = (owned: OwnedFence, swept: SweptFence, words: OwnerWords, language: PageLanguage): string => {
  const group = judgedGroup(seasonOne(swept.forecast));
  const holds = isNextToNothing(group.snapMps.p50, owned.site.units) ? null : holdsText(owned, language);
  return words.breaks(holds, shouldHoldText(owned), group.onceInYears);
};

/** The page of all fences of one owner. */
export const OwnerFencesPage: FC<{
  readonly view: OwnerView;
  readonly fences: readonly OwnedFence[];
  /** When the owner said that they read how all of them stand; null where not of all. */
  readonly readAt: string | null;
}> = ({ view, fences, readAt }) => {
  const { owner } = view;
  const words = OWNER_WORDS[owner.language];
  const swept = fences.filter((owned): owned is OwnedFence & { readonly swept: SweptFence } => owned.swept !== null);
  const short = swept.filter((owned) => isShort(owned.swept.stored.standing)).length;
  const closing = swept.filter((owned) => owned.swept.stored.standing === 'closing').length;
  return (
    <OwnerShell view={view} title={words.yours} place="fences" cautions={fences.length > 0}>
      <h1>{words.yours}</h1>
      <p class="lead">
        {words.lead(owner.name, fences.length)}
        {swept.length > 0 && ` ${words.counts(swept.length, short, closing)}`}
      </p>
      {swept.length <= MOST_SENTENCES &&
        swept.map((owned) => (
          <p>
            {words.oneOf(
              owned.fence.ref,
              owned.site.name,
              `${breaksText(owned, owned.swept, words, owner.language)} ${shortSentence(owned.swept.stored, owned.swept.forecast, words)}`,
            )}
          </p>
        ))}
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
                <FenceLine view={view} owned={owned} words={words} />
              ))}
            </tbody>
          </table>
        </ScrollFrame>
      )}
      {swept.length > 0 && <ReadThis view={view} fenceRef={null} readAt={readAt} fences={swept.length} />}
    </OwnerShell>
  );
};

const FenceLine: FC<{ readonly view: OwnerView; readonly owned: OwnedFence; readonly words: OwnerWords }> = ({
  view,
  owned,
  words,
}) => {
  const { fence, site, swept } = owned;
  return (
    <tr>
      <th scope="row">
        <a href={`${view.home}/fences/${encodeURIComponent(fence.ref)}`}>{fence.ref}</a>
      </th>
      <td data-label={words.standing}>{swept ? wordsOf(view.owner.language).standing[swept.stored.standing] : '–'}</td>
      <td data-label={words.holds}>{holdsText(owned, view.owner.language)}</td>
      <td data-label={words.shouldHold}>{shouldHoldText(owned)}</td>
      <td data-label={words.shortSeason}>{shortSeasonText(owned, words)}</td>
      <td data-label={words.site}>{site.name}</td>
    </tr>
  );
};

/** Asks whether this was read, or says when it was. */
const ReadThis: FC<{
  readonly view: OwnerView;
  readonly fenceRef: string | null;
  readonly readAt: string | null;
  readonly fences: number;
}> = ({ view, fenceRef, readAt, fences }) => {
  if (!view.link.scopes.includes('acknowledge')) return null;
  const words = OWNER_WORDS[view.owner.language].read;
  return (
    <section class="answer-box" id="read" aria-labelledby="read-heading">
      <h2 id="read-heading">{words.heading}</h2>
      {view.said && <Said>{words[view.said]}</Said>}
      {readAt === null ? (
        <OneButton
          view={view}
          action={`${view.home}/read`}
          button={words.button}
          hidden={fenceRef === null ? {} : { fence: fenceRef }}
        >
          <p>{fenceRef === null ? words.all(fences) : words.one}</p>
        </OneButton>
      ) : (
        <p>{words.since(view.dayOf(readAt))}</p>
      )}
    </section>
  );
};

/** The page of one fence of an owner. */
export const OwnerFencePage: FC<{
  readonly view: OwnerView;
  readonly owned: OwnedFence;
  /** The calendar day at its site. */
  readonly today: string;
  readonly readAt: string | null;
  /** What the works that it calls for would cost; null where it was not swept. */
  readonly offer: WorksOffer | null;
}> = ({ view, owned, today, readAt, offer }) => {
  const { fence, site, swept } = owned;
  const { language } = view.owner;
  const words = OWNER_WORDS[language];
  const title = words.fenceTitle(fence.ref);
  return (
    <OwnerShell view={view} title={title} place={null} cautions={true}>
      <p class="back">
        <a href={view.home}>{words.back}</a>
      </p>
      <h1>{title}</h1>
      <p class="where">
        {site.name}, {site.place}
      </p>
      {swept ? (
        <>
          <SweptFencePart
            view={view}
            owned={owned}
            swept={swept}
            words={words}
            said={fenceSaid(owned, swept, { language, today, offer })}
          />
          <ReadThis view={view} fenceRef={fence.ref} readAt={readAt} fences={1} />
        </>
      ) : (
        <p class="lead">{words.notSwept}</p>
      )}
    </OwnerShell>
  );
};

const SweptFencePart: FC<{
  readonly view: OwnerView;
  readonly owned: OwnedFence;
  readonly swept: SweptFence;
  readonly words: OwnerWords;
  readonly said: FenceSaid;
}> = ({ view, owned, swept, words, said }) => {
  const { forecast, stored } = swept;
  const { units } = owned.site;
  const { language } = view.owner;
  return (
    <>
      {said.danger && (
        <p class="alert" role="note">
          {said.danger}
        </p>
      )}
      <p class="lead">{breaksText(owned, swept, words, language)}</p>
      <p>
        {`${words.standing}: ${wordsOf(language).standing[stored.standing]}. `}
        {shortSentence(stored, forecast, words)}
        {said.ends && ` ${said.ends}`}
      </p>
      <figure class="chart">
        {CHART_SIZES.map(({ name, widthPx, heightPx }) => (
          <div class={`chart-${name}`}>
            {raw(drawFenceYears(forecast, { units, language, widthPx, heightPx, idPrefix: name }))}
          </div>
        ))}
        <figcaption>{words.chart}</figcaption>
      </figure>
      <Paragraphs heading={words.suggestion} texts={said.suggestions} />
      <Paragraphs heading={words.nothingDone} texts={said.nothingDone} />
      <Paragraphs heading={words.sureness} texts={said.sureness} />
      <Paragraphs heading={words.basis} texts={said.basis} />
    </>
  );
};

const Paragraphs: FC<{ readonly heading: string; readonly texts: readonly string[] }> = ({ heading, texts }) =>
  texts.length === 0 ? null : (
    <>
      <h2>{heading}</h2>
      {texts.map((text) => (
        <p>{text}</p>
      ))}
    </>
  );

function shortSentence({ standing }: StoredForecast, { shortSeason }: FenceForecast, words: OwnerWords): string {
  if (isShort(standing)) return words.shortNow;
  return shortSeason === null ? words.notShort : words.shortIn(shortSeason);
}
