import type { FC } from 'hono/jsx';
import { dayInWords } from '../../notify/plain-words.ts';
import type { OwnerVisit } from '../../service/owner-visits.ts';
import type { OfferedDay } from '../../service/visit-days.ts';
import { TokenField } from '../frame/form-field.tsx';
import type { PageLanguage } from '../frame/page-language.ts';
import { OwnerShell, Said } from './owner-shell.tsx';
import type { OwnerView } from './owner-view.ts';
import { VISITS_WORDS } from './visits-words.ts';
import { worksTextIn } from './works-words.ts';

/** A calendar day with its day of the week: `Monday, January 11, 2027`. */
function longDay(day: string, language: PageLanguage): string {
  const name = VISITS_WORDS[language].weekday[new Date(`${day}T00:00:00Z`).getUTCDay()] ?? '';
  return `${name}, ${dayInWords(day, language)}`;
}

/** The days that a visit would take from one that is offered. */
function offeredSpan({ firstDay, lastDay }: OfferedDay, language: PageLanguage): string {
  const last = lastDay === firstDay ? null : longDay(lastDay, language);
  return VISITS_WORDS[language].span(longDay(firstDay, language), last);
}

const isLong = ({ offered }: OwnerVisit): boolean => offered.some(({ firstDay, lastDay }) => firstDay !== lastDay);

/** The page on which an owner sees the visits to their fences and chooses their days. */
export const OwnerVisitsPage: FC<{
  readonly view: OwnerView;
  readonly visits: readonly OwnerVisit[];
  /** True where days were just marked. */
  readonly isMarked: boolean;
}> = ({ view, visits, isMarked }) => {
  const words = VISITS_WORDS[view.owner.language];
  return (
    <OwnerShell view={view} title={words.title} place="visits" cautions={false}>
      <h1>{words.title}</h1>
      {view.said && <Said>{words[view.said]}</Said>}
      {isMarked && <Said>{words.marked}</Said>}
      <p class="lead">{visits.length === 0 ? words.none : words.lead(visits.length)}</p>
      {visits.map((each) => (
        <VisitPart view={view} each={each} />
      ))}
    </OwnerShell>
  );
};

const VisitPart: FC<{ readonly view: OwnerView; readonly each: OwnerVisit }> = ({ view, each }) => {
  const { visit, site, items } = each;
  const { language } = view.owner;
  const words = VISITS_WORDS[language];
  const last = visit.lastDay === visit.firstDay ? null : longDay(visit.lastDay, language);
  const first = longDay(visit.firstDay, language);
  return (
    <div class="answer-box" id={`visit-${visit.uid}`}>
      <h2>{words.at(site.name)}</h2>
      <ul class="plain">
        {items.map(({ fenceRef, works }) => (
          <li>{words.fence(fenceRef, works.map((one) => worksTextIn(one, language)).join(' + '))}</li>
        ))}
      </ul>
      {visit.state === 'confirmed' ? (
        <p>
          {`${words.confirmed(first, last, visit.startsAt)} `}
          <a href={`${view.home}/call`}>{words.change}</a>
        </p>
      ) : (
        <>
          <p>{each.withOthers ? words.proposedToAll(first, last) : words.proposed(first, last)}</p>
          {each.withOthers ? <MarkForm view={view} each={each} /> : <DayForm view={view} each={each} />}
        </>
      )}
    </div>
  );
};

const DayForm: FC<{ readonly view: OwnerView; readonly each: OwnerVisit }> = ({ view, each }) => {
  const { visit, offered } = each;
  const { language } = view.owner;
  const words = VISITS_WORDS[language];
  if (offered.length === 0) return <p>{words.nothingLeft}</p>;
  return (
    <form method="post" action={`${view.home}/visits/${encodeURIComponent(visit.uid)}`}>
      <TokenField token={view.formToken} />
      <fieldset class="days" aria-describedby={`hint-${visit.uid}`}>
        <legend>{isLong(each) ? words.chooseBeginning : words.choose}</legend>
        <p class="hint" id={`hint-${visit.uid}`}>
          {isLong(each) && `${words.longVisit} `}
          {words.chooseHint}
        </p>
        {offered.map((one) => (
          <div class="tick">
            <input
              id={`${visit.uid}-${one.firstDay}`}
              type="radio"
              name="day"
              value={one.firstDay}
              checked={one.firstDay === visit.firstDay}
              required
            />
            <label for={`${visit.uid}-${one.firstDay}`}>{offeredSpan(one, language)}</label>
          </div>
        ))}
      </fieldset>
      <p>
        <button type="submit">{words.button}</button>
      </p>
    </form>
  );
};

/** The days of a visit to the fences of several owners, each to be marked as suiting or not. */
const MarkForm: FC<{ readonly view: OwnerView; readonly each: OwnerVisit }> = ({ view, each }) => {
  const { visit, offered, marked } = each;
  const { language } = view.owner;
  const words = VISITS_WORDS[language];
  if (offered.length === 0) return <p>{words.nothingLeft}</p>;
  const suiting = offered.filter(({ firstDay }) => marked?.includes(firstDay));
  const named = suiting.map((one) => offeredSpan(one, language));
  return (
    <>
      <p>{words.withOthers}</p>
      {marked !== null && <p>{marked.length === 0 ? words.youSaidNone : words.youSaid(named.join('; '))}</p>}
      <form method="post" action={`${view.home}/visits/${encodeURIComponent(visit.uid)}`}>
        <TokenField token={view.formToken} />
        <input type="hidden" name="rule" value="mark" />
        <fieldset class="days" aria-describedby={`hint-${visit.uid}`}>
          <legend>{isLong(each) ? words.markBeginnings : words.mark}</legend>
          <p class="hint" id={`hint-${visit.uid}`}>
            {isLong(each) && `${words.longVisit} `}
            {words.markHint}
          </p>
          {offered.map((one) => (
            <div class="tick">
              <input
                id={`${visit.uid}-${one.firstDay}`}
                type="checkbox"
                name="day"
                value={one.firstDay}
                checked={suiting.includes(one)}
              />
              <label for={`${visit.uid}-${one.firstDay}`}>{offeredSpan(one, language)}</label>
            </div>
          ))}
        </fieldset>
        <p class="act">
          <button type="submit">{words.markButton}</button>
          <button type="submit" name="none" value="yes" class="quiet">
            {words.noneButton}
          </button>
        </p>
      </form>
    </>
  );
};
