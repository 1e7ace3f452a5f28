import type { FC } from 'hono/jsx';
import type { SheetStop } from '../../season/visit/day-sheet.ts';
import type { VisitReminder } from '../../season/visit/visit-reminders.ts';
import type { CrewWords } from './crew-words.ts';

/** When a crew comes: `08:30`, `any time`, with `day 2 of 3`. */
function whenWords({ startsAt, dayOfVisit, daysOfVisit }: SheetStop, words: CrewWords): string {
  const time = dayOfVisit > 1 ? words.goesOn : (startsAt ?? words.anyTime);
  return daysOfVisit > 1 ? `${time}, ${words.dayOf(dayOfVisit, daysOfVisit)}` : time;
}

const coordinate = (degrees: number): string => degrees.toFixed(5);

/** Site, hour and way of a stop. */
export const SiteHead: FC<{
  readonly stop: SheetStop;
  readonly words: CrewWords;
  /** Where the site's name leads; null where that page is open already. */
  readonly href: string | null;
}> = ({ stop, words, href }) => {
  const { site } = stop;
  const place = site.where && `${coordinate(site.where.latitude)},${coordinate(site.where.longitude)}`;
  return (
    <>
      <p class="stop-when">
        <b>{whenWords(stop, words)}</b> <span>{words.state[stop.state]}</span>
      </p>
      {href !== null && (
        <h2>
          <a href={href}>{site.name}</a>
        </h2>
      )}
      <p class="where">{site.place}</p>
      {place ? (
        <p class="ways-there">
          <a class="big" href={`geo:${place}?q=${place}`}>
            {words.directions}
          </a>
          <span>
            {words.position} <span class="figures">{place.replace(',', ', ')}</span>
          </span>
        </p>
      ) : (
        <p class="hint">{words.noPlace}</p>
      )}
    </>
  );
};

/** What to have seen to first. */
export const Reminders: FC<{ readonly reminders: readonly VisitReminder[]; readonly words: CrewWords }> = ({
  reminders,
  words,
}) =>
  reminders.length === 0 ? null : (
    <div class="first-things">
      <p class="first-head">{words.firstThings}</p>
      <ul class="plain">
        {reminders.map((reminder) => (
          <li>{words.reminder(reminder)}</li>
        ))}
      </ul>
    </div>
  );

/** The fences of a visit, each a large link to where its posts are entered. */
export const FenceLinks: FC<{
  readonly fences: readonly {
    readonly ref: string;
    readonly href: string;
    readonly text: string;
    readonly accessNote: string;
    readonly small: string;
  }[];
  readonly words: CrewWords;
}> = ({ fences, words }) => (
  <ul class="fence-links">
    {fences.map(({ ref, href, text, accessNote, small }) => (
      <li>
        <a class="fence-link" href={href} data-keep="yes">
          <b>{words.fence(ref)}</b>
          <span class="what">{text}</span>
          <span class="small">{small}</span>
        </a>
        {accessNote !== '' && (
          <p class="access">
            <b>{words.gettingThere}:</b> {accessNote}
          </p>
        )}
      </li>
    ))}
  </ul>
);
