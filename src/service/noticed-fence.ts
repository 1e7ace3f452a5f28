import { renewalOf } from '../notify/generation.ts';
import type { NoticedFence } from '../notify/message-facts.ts';
import { type Clock, dayInZone } from './clock.ts';
import type { CurrentFence } from './sift-notices.ts';

/** What a message about a fence knows beside how it stands. */
type Told = Pick<NoticedFence, 'matters' | 'first' | 'remindedSeason' | 'gain' | 'offer'>;

/** A fence as a message tells of it, from how it stands by its stored forecast. */
export function noticedFence(fence: CurrentFence, told: Told, now: Clock): NoticedFence {
  const { forecast, standing, endsStanding, place, generation } = fence;
  return {
    forecast,
    standing,
    endsStanding,
    siteName: place.site.name,
    place: place.site.place,
    units: place.site.units,
    today: dayInZone(now(), place.site.timeZone),
    seasonCloses: place.site.seasonCloses,
    renewal: renewalOf(generation),
    ...told,
  };
}
