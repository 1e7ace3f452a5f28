import type { FC } from 'hono/jsx';
import type { HeldOverview } from '../../register/held-notices.ts';
import type { OfficeNotice } from '../../register/office-notices.ts';
import type { OutboxEntry } from '../../register/outbox.ts';
import type { OutboxState } from '../../register/sweep-tables.ts';
import { momentText } from '../frame/moment-text.ts';
import type { PageFrame } from '../frame/page-frame.ts';
import { PageShell } from '../frame/page-shell.tsx';
import { ScrollFrame } from '../frame/scroll-frame.tsx';
import { HeldNotices, OfficeNotices } from './held-notices.tsx';

/** The states of a message in the order in which the page counts them, with what each means. */
export const OUTBOX_STATES: readonly (readonly [state: OutboxState, meaning: string])[] = [
  ['queued', 'waiting for its turn'],
  ['leased', 'under way to the mail server'],
  ['sent', 'taken by the mail server'],
  ['parked', 'refused for good; it waits for you'],
  ['to print', 'a letter to print and post'],
  ['cancelled', 'taken out of the queue'],
];

/** Properties of the page of the outbox. */
export interface OutboxPageProps {
  readonly entries: readonly OutboxEntry[];
  readonly counts: Readonly<Record<OutboxState, number>>;
  readonly state: OutboxState | null;
  readonly limit: number;
  /** What waits until the office releases it, and what the office is told itself. */
  readonly held: HeldOverview;
  readonly office: readonly OfficeNotice[];
  readonly frame: PageFrame;
}

/** The page of messages on their way to owners. */
export const OutboxPage: FC<OutboxPageProps> = ({ entries, counts, state, limit, held, office, frame }) => (
  <PageShell title="Outbox" section="outbox" frame={frame} cautions={true}>
    <h1>Outbox</h1>
    <p>
      Every notice on its way to an owner, newest first. A message that could not be delivered waits longer after each
      try; one that was refused for good is parked with the server’s own words. <code>stormpale mail retry</code> sends
      parked ones again.
    </p>
    <ul class="plain">
      {OUTBOX_STATES.filter(([name]) => counts[name] > 0).map(([name, meaning]) => (
        <li>
          <a href={`/outbox?state=${encodeURIComponent(name)}`} aria-current={state === name ? 'true' : undefined}>
            {`${counts[name]} ${stateWord(name, frame.catchesMail)}`}
          </a>
          {`: ${name === 'sent' && frame.catchesMail ? 'kept here, no mail server is set' : meaning}`}
        </li>
      ))}
    </ul>
    {state === null && <OfficeNotices notices={office} />}
    {state === null && <HeldNotices held={held} />}
    {state !== null && (
      <p>
        <a href="/outbox">Show messages in every state</a>
      </p>
    )}
    {held.notices + office.length > 0 && state === null && <h2 id="messages">Messages</h2>}
    {entries.length === 0 ? (
      <p>No message here. Notices are written when a sweep finds that a standing or a mark changed.</p>
    ) : (
      <ScrollFrame label="Messages">
        <table class="stacked">
          <caption>
            {state === null ? 'Messages' : `Messages that are ${stateWord(state, frame.catchesMail)}`}
            {entries.length === limit && `, the newest ${limit}`}
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
            {entries.map((entry) => (
              <Message entry={entry} catchesMail={frame.catchesMail} />
            ))}
          </tbody>
        </table>
      </ScrollFrame>
    )}
  </PageShell>
);

/** Where no mail server is set, what counts as sent has only reached the service's own catcher. */
const stateWord = (state: OutboxState, catchesMail: boolean): string =>
  state === 'sent' && catchesMail ? 'caught' : state;

const Message: FC<{ readonly entry: OutboxEntry; readonly catchesMail: boolean }> = ({ entry, catchesMail }) => (
  <tr>
    <td data-label="No." class="figure">
      {entry.id}
    </td>
    <td data-label="To">
      {entry.ownerName}
      <span class="small">{entry.envelopeTo ?? 'by letter'}</span>
    </td>
    <th scope="row">
      {entry.channel === 'letter' ? <a href={`/outbox/${entry.id}/letter`}>{entry.subject}</a> : entry.subject}
    </th>
    <td data-label="State">
      {stateWord(entry.state, catchesMail)}
      {entry.sentAt !== null && ` ${momentText(entry.sentAt)}`}
      {entry.attempts > 1 && <span class="small">{`after ${entry.attempts} tries`}</span>}
      {entry.state === 'queued' && entry.dueAt !== null && (
        <span class="small">{`next try ${momentText(entry.dueAt)}`}</span>
      )}
      {entry.lastReply !== null && entry.state !== 'sent' && (
        <span class="small">{`The server said: ${entry.lastReply}`}</span>
      )}
    </td>
    <td data-label="Written">{momentText(entry.createdAt)}</td>
  </tr>
);
