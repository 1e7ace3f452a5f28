import type { FC } from 'hono/jsx';
import { MATTER_RULES, OWNER_MATTERS } from '../../notify/matter-rules.ts';
import type { HeldNotice, HeldOverview } from '../../register/held-notices.ts';
import type { OfficeNotice } from '../../register/office-notices.ts';
import { FormAlert, TickFields, TokenField } from '../frame/form-field.tsx';
import { Moment } from '../frame/moment.tsx';
import type { PageFrame } from '../frame/page-frame.ts';
import { PageShell } from '../frame/page-shell.tsx';
import { ScrollFrame } from '../frame/scroll-frame.tsx';
import { type HeldAsked, HeldList } from './held-list.tsx';
import { count } from './held-words.ts';

/** Rows of a short list shown at most. */
const MOST_SHOWN = 100;

/** Properties of the page on which the office releases notices. */
export interface NoticesPageProps {
  readonly frame: PageFrame;
  readonly formToken: string;
  /** What is held and is asked for, and how much is held in all. */
  readonly held: HeldOverview;
  readonly allHeld: Omit<HeldOverview, 'first'>;
  readonly asked: HeldAsked;
  /** Released, with no message yet. */
  readonly released: readonly HeldNotice[];
  readonly office: readonly OfficeNotice[];
  readonly heldMatters: readonly string[];
  /** What keeps messages from being written; null where nothing does. */
  readonly gap: string | null;
  readonly sentence: string;
  readonly problem: string | null;
  readonly done: string | null;
}

/** The page on which the office releases notices. */
export const NoticesPage: FC<NoticesPageProps> = (props) => {
  const { frame, held, allHeld, gap, problem, done } = props;
  return (
    <PageShell title="Notices" section="notices" frame={frame} cautions={true}>
      <h1>Notices</h1>
      {problem && <FormAlert>{problem}</FormAlert>}
      {done && <p class="done">{done}</p>}
      <p class="lead">
        {allHeld.notices === 0
          ? 'No notice waits for you.'
          : `${count(allHeld.notices, 'notice')} to ${count(allHeld.owners, 'owner')} ${allHeld.notices === 1 ? 'waits' : 'wait'} until you release ${allHeld.notices === 1 ? 'it' : 'them'}.`}
      </p>
      {allHeld.dangerous > 0 && (
        <p>
          <strong>{`${count(allHeld.dangerous, 'notice')} of danger among them: call these owners, or release these first.`}</strong>
        </p>
      )}
      {gap !== null && (
        <p class="alert">
          {'Messages that reach owners cannot be written yet: the office has not said who it is. '}
          <a href="/settings">Set its name and mail address</a>.
        </p>
      )}
      <p>
        What is released is written with the numbers of the newest sweep, one message an owner or a fence; what is no
        longer so by then is not sent. <a href="/outbox">The outbox</a> shows every message on its way.
      </p>
      {allHeld.notices > 0 && <Narrow {...props} />}
      {held.notices > 0 && <HeldList {...props} />}
      {allHeld.notices > 0 && held.notices === 0 && (
        <p>
          Nothing held answers to that. <a href="/notices">Show all</a>.
        </p>
      )}
      {props.released.length > 0 && <Released {...props} />}
      {props.office.length > 0 && <ForTheOffice {...props} />}
      <HoldMatters {...props} />
    </PageShell>
  );
};

const Narrow: FC<NoticesPageProps> = ({ asked }) => (
  <search aria-label="Held notices">
    <form class="narrow" method="get" action="/notices">
      <div class="field">
        <label for="matter">Matter</label>
        <select id="matter" name="matter">
          <option value="">all</option>
          {OWNER_MATTERS.filter((matter) => MATTER_RULES[matter].mayBeHeld || matter === 'dangerous').map((matter) => (
            <option value={matter} selected={matter === asked.matter}>
              {matter}
            </option>
          ))}
        </select>
      </div>
      <div class="field">
        <label for="owner">Ref of the owner</label>
        <input id="owner" name="owner" type="search" value={asked.owner} />
      </div>
      <button type="submit">Show</button>
    </form>
  </search>
);

const Released: FC<NoticesPageProps> = ({ released, formToken }) => (
  <>
    <h2 id="released">Released, not written yet</h2>
    <p>Their messages are written in a moment. Until then they can be held again.</p>
    <form method="post" action="/notices/hold-again">
      <TokenField token={formToken} />
      <ul class="plain">
        {released.slice(0, MOST_SHOWN).map((notice) => (
          <li>
            {`${notice.matter}, fence ${notice.fenceRef}, to ${notice.ownerName}`}
            <input type="hidden" name="id" value={String(notice.id)} />
          </li>
        ))}
      </ul>
      <button class="quiet" type="submit">
        {released.length > MOST_SHOWN ? `Hold these ${MOST_SHOWN} again` : 'Hold them again'}
      </button>
    </form>
  </>
);

const ForTheOffice: FC<NoticesPageProps> = ({ office, formToken }) => (
  <>
    <h2 id="office">For the office</h2>
    <p>What the sweep found for you. Note it as settled when it is dealt with.</p>
    <form method="post" action="/notices/settle">
      <TokenField token={formToken} />
      <ScrollFrame label="For the office">
        <table class="stacked">
          <caption>{count(office.length, 'thing')}</caption>
          <thead>
            <tr>
              <th scope="col">Fence</th>
              <th scope="col">What</th>
              <th scope="col">Since</th>
              <th scope="col">
                <span class="visually-hidden">Settle</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {office.slice(0, MOST_SHOWN).map((notice) => (
              <tr>
                <th scope="row">
                  <a href={`/fences/${encodeURIComponent(notice.fenceRef)}`}>{notice.fenceRef}</a>
                  <span class="small">{notice.siteName}</span>
                </th>
                <td data-label="What">
                  {notice.matter}
                  <span class="small">{notice.occasion.replace(/; told .*$/, '')}</span>
                </td>
                <td data-label="Since">
                  <Moment at={notice.createdAt} />
                </td>
                <td data-label="Settle">
                  <button
                    class="quiet"
                    type="submit"
                    name="id"
                    value={String(notice.id)}
                    aria-label={`Settled: ${notice.matter} at fence ${notice.fenceRef}`}
                  >
                    Settled
                  </button>
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </ScrollFrame>
    </form>
  </>
);

const HoldMatters: FC<NoticesPageProps> = ({ heldMatters, formToken }) => (
  <>
    <h2 id="hold">Held from now on</h2>
    <p>
      Notices of these matters wait for your release. What is held already stays so when a matter no longer is; what is
      dangerous is never held.
    </p>
    <details open={heldMatters.length > 0}>
      <summary>{heldMatters.length === 0 ? 'No matter is held' : `Held: ${heldMatters.join(', ')}`}</summary>
      <form class="tall" method="post" action="/notices/matters">
        <TokenField token={formToken} />
        <TickFields
          name="held"
          legend="Matters to hold"
          ticked={heldMatters}
          choices={OWNER_MATTERS.filter((matter) => MATTER_RULES[matter].mayBeHeld).map((matter) => [
            matter,
            `${matter}: ${MATTER_RULES[matter].tells}`,
          ])}
        />
        <button type="submit">Set</button>
      </form>
    </details>
  </>
);
