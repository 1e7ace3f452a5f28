import type { FC } from 'hono/jsx';
import type { SheetStop } from '../../season/visit/day-sheet.ts';
import type { MaterialNeed } from '../../season/visit/load-list.ts';
import type { CrewDay, VisitAhead } from '../../service/visit-sheet.ts';
import type { CalendarDay } from '../../units/calendar-day.ts';
import { CrewPage, type CrewVisitor } from './crew-frame.tsx';
import { fencePath, visitPath, worksWords } from './crew-marks.ts';
import type { CrewWords } from './crew-words.ts';
import { CREW_WORDS } from './crew-words-of.ts';
import { FenceLinks, Reminders, SiteHead } from './stop-parts.tsx';

/** Properties of the page of a crew's day. */
export interface TodayProps {
  readonly visitor: CrewVisitor;
  readonly today: CalendarDay;
  readonly days: readonly CrewDay[];
  /** What there is to choose from; empty where nothing is to be chosen. */
  readonly crews: readonly { readonly ref: string; readonly name: string }[];
  readonly chosen: string | null;
}

/** What a crew goes to today, what was left, and the next days. */
export const TodayPage: FC<TodayProps> = ({ visitor, today, days, crews, chosen }) => {
  const words = CREW_WORDS[visitor.account.language];
  const stops = days.flatMap(({ sheet }) => sheet?.stops ?? []);
  const left = days.flatMap((day) => day.left);
  const ahead = days.flatMap((day) => day.ahead).toSorted((a, b) => (a.visit.firstDay < b.visit.firstDay ? -1 : 1));
  const next = ahead[0]?.visit.firstDay;
  return (
    <CrewPage title={words.today} visitor={visitor}>
      <h1>{words.today}</h1>
      <p class="where">{words.day(today)}</p>
      <p class="lead">
        {stops.length > 0 ? words.visitsToday(stops.length) : words.nothingToday}
        {stops.length === 0 && next !== undefined && ` ${words.nextOn(words.shortDay(next))}`}
      </p>
      {crews.length > 1 && <CrewChoice crews={crews} chosen={chosen} words={words} />}
      {days.length === 0 && <p>{words.noCrews}</p>}
      {days.map(({ crew, sheet }) => (
        <>
          {days.length > 1 && sheet && <h2 class="crew-name">{crew.name}</h2>}
          {sheet && sheet.load.length > 0 && <LoadList load={sheet.load} words={words} />}
          {sheet?.stops.map((stop) => (
            <StopCard stop={stop} words={words} />
          ))}
        </>
      ))}
      {left.length > 0 && (
        <>
          <h2>{words.leftOver}</h2>
          <p>{words.leftOverWhy}</p>
          <VisitList visits={left} keep={true} words={words} />
        </>
      )}
      <h2>{words.nextDays}</h2>
      {ahead.length > 0 ? <VisitList visits={ahead} keep={false} words={words} /> : <p>{words.nothingAhead}</p>}
    </CrewPage>
  );
};

const CrewChoice: FC<Pick<TodayProps, 'crews' | 'chosen'> & { readonly words: CrewWords }> = ({
  crews,
  chosen,
  words,
}) => (
  <form class="narrow crew-choice" method="get" action="/today">
    <div class="field">
      <label for="crew">{words.chooseCrew}</label>
      <select id="crew" name="crew">
        <option value="">{words.allCrews}</option>
        {crews.map(({ ref, name }) => (
          <option value={ref} selected={ref === chosen}>
            {name}
          </option>
        ))}
      </select>
    </div>
    <button type="submit">{words.show}</button>
  </form>
);

/** What to take along. */
export const LoadList: FC<{ readonly load: readonly MaterialNeed[]; readonly words: CrewWords }> = ({
  load,
  words,
}) => (
  <section class="load">
    <h2>{words.materials}</h2>
    <ul class="plain">
      {load.map(({ name, unit, toTake }) => (
        <li>
          <b>{words.amount(toTake, unit)}</b> {words.material(name, unit)}
        </li>
      ))}
    </ul>
  </section>
);

const StopCard: FC<{ readonly stop: SheetStop; readonly words: CrewWords }> = ({ stop, words }) => (
  <section class="stop">
    <SiteHead stop={stop} words={words} href={visitPath(stop.uid)} />
    {stop.note !== '' && (
      <p class="said">
        <b>{words.officeSays}:</b> {stop.note}
      </p>
    )}
    <Reminders reminders={stop.reminders} words={words} />
    <FenceLinks
      fences={stop.fences.map(({ ref, works, accessNote, posts }) => ({
        ref,
        href: fencePath(stop.uid, ref),
        text: worksWords(works, words),
        accessNote,
        small: words.postCount(posts.length),
      }))}
      words={words}
    />
    <p class="big-link">
      <a href={visitPath(stop.uid)} data-keep="yes">
        {stop.state === 'done' ? words.openVisit : words.finish}
      </a>
    </p>
  </section>
);

const VisitList: FC<{
  readonly visits: readonly VisitAhead[];
  readonly keep: boolean;
  readonly words: CrewWords;
}> = ({ visits, keep, words }) => (
  <ul class="visit-links">
    {visits.map(({ visit, siteName }) => (
      <li>
        <a href={visitPath(visit.uid)} data-keep={keep ? 'yes' : undefined}>
          <span class="when">{words.shortDay(visit.firstDay)}</span>
          <b>{siteName}</b>
          <span class="what">
            {visit.items.map(({ fenceRef, works }) => `${fenceRef}: ${worksWords(works, words)}`).join('; ')}
          </span>
        </a>
      </li>
    ))}
  </ul>
);
