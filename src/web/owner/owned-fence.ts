import { heldText } from '../../drawing/held-text.ts';
import { speedText } from '../../drawing/speed-text.ts';
import { type FenceForecast, judgedGroup, seasonOne } from '../../forecast/fence-forecast.ts';
import { advisedMatters } from '../../notify/fence-message.ts';
import { type FenceNews, fenceNews } from '../../notify/fence-news.ts';
import { renewalOf } from '../../notify/generation.ts';
import type { Matter } from '../../notify/matter-rules.ts';
import { dangerousFindings, isShort } from '../../notify/matters.ts';
import { wordsOf } from '../../notify/words-of.ts';
import type { WorksOffer } from '../../notify/works-offer.ts';
import type { Register } from '../../register/database.ts';
import type { FenceRecord } from '../../register/fence-record.ts';
import { forecastOf, loadStoredForecasts, type StoredForecast } from '../../register/forecast-store.ts';
import { recordsWhereIn } from '../../register/record-store.ts';
import type { SiteRecord } from '../../register/site-record.ts';
import type { PageLanguage } from '../frame/page-language.ts';

/** A fence that has been swept. */
export interface SweptFence {
  readonly stored: StoredForecast;
  readonly forecast: FenceForecast;
}

/** One of the owner's fences with its last forecast, where it has been swept. */
export interface OwnedFence {
  readonly fence: FenceRecord;
  readonly site: SiteRecord;
  readonly swept: SweptFence | null;
}

/** The fences of an owner with their sites and forecasts. Throws where the register lacks a site. */
export async function withForecasts(
  register: Register,
  fences: readonly FenceRecord[],
): Promise<readonly OwnedFence[]> {
  const refs = fences.map(({ ref }) => ref);
  const [sites, stored] = await Promise.all([
    recordsWhereIn(register.db, 'sites', 'ref', [...new Set(fences.map(({ siteRef }) => siteRef))]),
    loadStoredForecasts(register, refs),
  ]);
  const siteOf = new Map(sites.map((site) => [site.ref, site]));
  return fences.map((fence) => {
    const site = siteOf.get(fence.siteRef);
    if (!site) throw new Error(`the register lacks the site of fence ${fence.ref}`);
    const last = stored.get(fence.ref);
    return { fence, site, swept: last ? { stored: last, forecast: forecastOf(last) } : null };
  });
}

/** The gust that a fence holds in season 1 as text; a dash before its first sweep. */
export const holdsText = ({ site, swept }: OwnedFence, language: PageLanguage): string =>
  swept ? heldText(judgedGroup(seasonOne(swept.forecast)).snapMps.p50, site.units, language) : '–';

/** The gust that it should hold. */
export const shouldHoldText = ({ site, swept }: OwnedFence): string =>
  swept ? speedText(swept.forecast.designGust.gustMps, site.units) : '–';

/** What there is to say of a fence as it stands, as a mail would say it: the weightiest first. */
function mattersNow({ stored, forecast }: SweptFence): readonly Matter[] {
  const matters: readonly Matter[] = [
    ...(dangerousFindings(forecast).length > 0 ? (['dangerous'] as const) : []),
    ...(stored.standing === 'clear' ? [] : [stored.standing]),
    ...(isShort(stored.endsStanding) ? (['ends short'] as const) : []),
  ];
  return matters.length > 0 ? matters : ['better'];
}

/** What the page of a fence says, in the words of the mails. */
export interface FenceSaid {
  readonly danger: string | null;
  readonly ends: string | null;
  readonly suggestions: readonly string[];
  readonly nothingDone: readonly string[];
  readonly sureness: readonly string[];
  readonly basis: readonly string[];
}

/** What an owner is told of a fence that has been swept. @param today the calendar day at its site, offer what works would cost (null: not said) */
export function fenceSaid(
  { site }: OwnedFence,
  swept: SweptFence,
  {
    language,
    today,
    offer,
  }: { readonly language: PageLanguage; readonly today: string; readonly offer: WorksOffer | null },
): FenceSaid {
  const { stored, forecast } = swept;
  const words = wordsOf(language);
  const news: FenceNews = fenceNews(
    {
      forecast,
      standing: stored.standing,
      endsStanding: stored.endsStanding,
      siteName: site.name,
      place: site.place,
      units: site.units,
      matters: mattersNow(swept),
      first: false,
      today,
      seasonCloses: site.seasonCloses,
      renewal: renewalOf(stored.generation),
      remindedSeason: null,
      gain: null,
      offer,
    },
    language,
  );
  const advised = advisedMatters(news);
  const dated = advised.findIndex((matter) => matter !== 'dangerous');
  return {
    danger: words.danger(news),
    ends: words.ends(news),
    suggestions:
      advised.length === 0
        ? [words.matter.suggestion.better('', false)]
        : advised.map((matter, index) =>
            words.matter.suggestion[matter](index === dated ? words.by(news) : words.sameTime, news.strengthFell),
          ),
    nothingDone: advised.length === 0 ? [] : words.nothingDone(news),
    sureness: words.sureness(news),
    basis: [words.basis, words.designGust(news)],
  };
}
