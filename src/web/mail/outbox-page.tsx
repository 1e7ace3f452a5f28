import type { FC } from 'hono/jsx';
import { OWNER_MATTERS } from '../../notify/matter-rules.ts';
import type { StoppedAddress } from '../../register/delivery-reports.ts';
import type { OutboxEntry } from '../../register/outbox.ts';
import type { OutboxPage as OutboxPageOf } from '../../register/outbox-page.ts';
import type { OutboxState } from '../../register/sweep-tables.ts';
import { TokenField } from '../frame/form-field.tsx';
import { Moment } from '../frame/moment.tsx';
import type { PageFrame } from '../frame/page-frame.ts';
import { PageShell } from '../frame/page-shell.tsx';
import { ScrollFrame } from '../frame/scroll-frame.tsx';
import { StoppedAddresses } from './stopped-addresses.tsx';

/** The states of a message in the order in which the page counts them, with what each means. */
export const OUTBOX_STATES: readonly (readonly [state: OutboxState, meaning: string])[] = [
  ['queued', 'waiting for its turn'],
  ['leased', 'under way to the mail server'],
  ['sent', 'taken by the mail server'],
  ['parked', 'refused for good; it waits for you'],
  ['to print', 'a letter to print and post'],
  ['cancelled', 'taken out of the queue'],
];

/** What the list of messages is narrowed to; empty texts narrow nothing. */
export interface OutboxAsked {
  readonly state: OutboxState | null;
  readonly matter: string;
  readonly owner: string;
}

/** Properties of the page of the outbox. */
export interface OutboxPageProps {
  readonly page: OutboxPageOf;
  readonly counts: Readonly<Record<OutboxState, number>>;
  readonly asked: OutboxAsked;
  /** False on later pages of the list. */
  readonly isFirst: boolean;
  /** How many notices wait for the office, and what was found for it. */
  readonly waiting: { readonly held: number; readonly office: number };
  /** Addresses to which a delivery failed for good. */
  readonly stopped: readonly StoppedAddress[];
  readonly frame: PageFrame;
  readonly formToken: string;
  readonly done: string | null;
}

/** The address of the list with some of it changed. */
function outboxPath({ state, matter, owner }: OutboxAsked, before: number | null = null): string {
  const search = new URLSearchParams({
    ...(state === null ? {} : { state }),
    ...(matter === '' ? {} : { matter }),
    ...(owner === '' ? {} : { owner }),
    ...(before === null ? {} : { before: String(before) }),
  }).toString();
  return search === '' ? '/outbox' : `/outbox?${search}`;
}

/** The page of messages on their way to owners. */
export const OutboxPage: FC<OutboxPageProps> = (props) => {
  const { page, counts, asked, isFirst, waiting, stopped, frame, done, formToken } = props;
  const narrowed = asked.state !== null || asked.matter !== '' || asked.owner !== '';
  return (
    <PageShell title="Outbox" section="outbox" frame={frame} cautions={true}>
      <h1>Outbox</h1>
      {done && <p class="done">{done}</p>}
      <p>
        Every message on its way to an owner, newest first. One that could not be delivered waits longer after each try;
        one that was refused for good is parked with the server’s own words.
      </p>
      <ul class="plain">
        {OUTBOX_STATES.filter(([name]) => counts[name] > 0).map(([name, meaning]) => (
          <li>
            <a href={outboxPath({ ...asked, state: name })} aria-current={asked.state === name ? 'true' : undefined}>
              {`${counts[name]} ${stateWord(name, frame.catchesMail)}`}
            </a>
            {`: ${name === 'sent' && frame.catchesMail ? 'kept here, no mail server is set' : meaning}`}
          </li>
        ))}
        {waiting.held > 0 && (
          <li>
            <a href="/notices">{`${waiting.held} held`}</a>: notices that wait for your release
          </li>
        )}
        {waiting.office > 0 && (
          <li>
            <a href="/notices#office">{`${waiting.office} for the office`}</a>: what the sweep found for you
          </li>
        )}
      </ul>
      {!narrowed && isFirst && <StoppedAddresses stopped={stopped} />}
      <Narrow {...props} />
      {asked.state === 'parked' && counts.parked > 0 && (
        <form method="post" action="/outbox/retry">
          <TokenField token={formToken} />
          <button type="submit">Try all parked ones again</button>
        </form>
      )}
      {page.entries.length === 0 ? (
        <p>
          {narrowed
            ? 'No message answers to that. '
            : 'No message here. Notices are written when a sweep finds that a standing or a mark changed. '}
          {narrowed && <a href="/outbox">Show all messages</a>}
        </p>
      ) : (
        <ScrollFrame label="Messages">
          <table class="stacked">
            <caption>
              {asked.state === null ? 'Messages' : `Messages that are ${stateWord(asked.state, frame.catchesMail)}`}
            </caption>
            <thead>
              <tr>
                <th scope="col" class="figure">
                  No.
                </th>
                <th scope="col">To</th>
                <th scope="col">Subject</th>
                <th scope="col">State</th>
                <th scope="col">Written</th>
              </tr>
            </thead>
            <tbody>
              {page.entries.map((entry) => (
                <Message entry={entry} catchesMail={frame.catchesMail} />
              ))}
            </tbody>
          </table>
        </ScrollFrame>
      )}
      {(!isFirst || page.next !== null) && (
        <nav class="pages" aria-label="Pages of the list">
          {!isFirst && <a href={outboxPath(asked)}>The newest</a>}
          {page.next !== null && (
            <a rel="next" href={outboxPath(asked, page.next)}>
              Older ones
            </a>
          )}
        </nav>
      )}
    </PageShell>
  );
};

const Narrow: FC<OutboxPageProps> = ({ asked, counts, frame }) => (
  <search aria-label="Messages">
    <form class="narrow" method="get" action="/outbox">
      <div class="field">
        <label for="state">State</label>
        <select id="state" name="state">
          <option value="">all</option>
          {OUTBOX_STATES.map(([name]) => (
            <option value={name} selected={name === asked.state}>
              {`${stateWord(name, frame.catchesMail)} (${counts[name]})`}
            </option>
          ))}
        </select>
      </div>
      <div class="field">
        <label for="matter">Matter</label>
        <select id="matter" name="matter">
          <option value="">all</option>
          {OWNER_MATTERS.map((matter) => (
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

/** Where no mail server is set, what counts as sent has only reached the service's own catcher. */
export const stateWord = (state: OutboxState, catchesMail: boolean): string =>
  state === 'sent' && catchesMail ? 'caught' : state;

const Message: FC<{ readonly entry: OutboxEntry; readonly catchesMail: boolean }> = ({ entry, catchesMail }) => (
  <tr>
    <td data-label="No." class="figure">
      {entry.id}
    </td>
    <td data-label="To">
      {entry.ownerRef === null ? (
        entry.ownerName
      ) : (
        <a href={`/owners/${encodeURIComponent(entry.ownerRef)}`}>{entry.ownerName}</a>
      )}
      <span class="small">{entry.envelopeTo ?? 'by letter'}</span>
    </td>
    <th scope="row">
      <a href={`/outbox/${entry.id}`}>{entry.subject}</a>
      {entry.channel === 'letter' && (
        <span class="small">
          <a href={`/outbox/${entry.id}/letter`} aria-label={`The letter, number ${entry.id}`}>
            the letter
          </a>
        </span>
      )}
    </th>
    <td data-label="State">
      {stateWord(entry.state, catchesMail)}
      {entry.sentAt !== null && (
        <>
          {' '}
          <Moment at={entry.sentAt} />
        </>
      )}
      {entry.postedOn !== null && (
        <span class="small">{`posted ${entry.postedOn}${entry.postedBy === '' ? '' : ` by ${entry.postedBy}`}`}</span>
      )}
      {entry.attempts > 1 && <span class="small">{`after ${entry.attempts} tries`}</span>}
      {entry.heldBy !== null && <span class="small">{`held by: ${entry.heldBy}`}</span>}
      {entry.state === 'queued' && entry.heldBy !== 'stopped address' && entry.dueAt !== null && (
        <span class="small">
          {'next try '}
          <Moment at={entry.dueAt} />
        </span>
      )}
      {entry.lastReply !== null && entry.state !== 'sent' && (
        <span class="small">{`The server said: ${entry.lastReply}`}</span>
      )}
    </td>
    <td data-label="Written">
      <Moment at={entry.createdAt} />
    </td>
  </tr>
);
