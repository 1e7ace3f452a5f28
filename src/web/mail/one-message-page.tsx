import type { Child, FC } from 'hono/jsx';
import type { OutboxDetail } from '../../register/outbox-page.ts';
import { FormAlert, TokenField } from '../frame/form-field.tsx';
import { Moment } from '../frame/moment.tsx';
import type { PageFrame } from '../frame/page-frame.ts';
import { PageShell } from '../frame/page-shell.tsx';
import { ScrollFrame } from '../frame/scroll-frame.tsx';
import { OUTBOX_STATES, stateWord } from './outbox-page.tsx';

/** What can be done with a message in its state. */
export type MessageAct = 'retry' | 'cancel' | 'posted';

const ACT_WORDS: Readonly<Record<MessageAct, string>> = {
  retry: 'Try again now',
  posted: 'The letter was posted',
  cancel: 'Take it out: do not send it',
};

/** What the office can do with a message now. */
function actsFor({ state, channel }: OutboxDetail): readonly MessageAct[] {
  if (state === 'to print') return ['posted', 'cancel'];
  if (state === 'parked' || state === 'queued') return channel === 'mail' ? ['retry', 'cancel'] : ['cancel'];
  return [];
}

/** What became of a message, in the order in which it happened. */
function historyOf(message: OutboxDetail, catchesMail: boolean): readonly (readonly [when: Child, what: string])[] {
  const { createdAt, firstFailedAt, attempts, lastReply, dueAt, sentAt, state } = message;
  const released = [...new Set(message.notices.map(({ releasedAt }) => releasedAt))].filter((at) => at !== null);
  const decided = message.notices.map(({ createdAt: at }) => at).toSorted()[0];
  return [
    ...(decided === undefined ? [] : [[<Moment at={decided} />, 'a sweep decided what it tells'] as const]),
    ...released.map((at) => [<Moment at={at} />, 'the office released it'] as const),
    [<Moment at={createdAt} />, 'it was written'],
    ...(firstFailedAt === null ? [] : [[<Moment at={firstFailedAt} />, 'the first try failed'] as const]),
    ...(lastReply === null
      ? []
      : [
          [
            sentAt === null ? 'last' : <Moment at={sentAt} />,
            `the server said after ${attempts === 1 ? '1 try' : `${attempts} tries`}: ${lastReply}`,
          ] as const,
        ]),
    ...(state === 'queued' && dueAt !== null ? [[<Moment at={dueAt} />, 'the next try'] as const] : []),
    ...(sentAt === null
      ? []
      : [
          [
            <Moment at={sentAt} />,
            message.channel === 'letter' ? 'it was posted' : `it was ${stateWord('sent', catchesMail)}`,
          ] as const,
        ]),
    ...(state === 'cancelled' ? [['then', 'the office took it out of the queue'] as const] : []),
  ];
}

/** The page of one message: where it stands, how it came there, what it says, what can be done. */
export const OneMessagePage: FC<{
  readonly frame: PageFrame;
  readonly formToken: string;
  readonly message: OutboxDetail;
  readonly problem: string | null;
}> = ({ frame, formToken, message, problem }) => {
  const meaning = OUTBOX_STATES.find(([name]) => name === message.state)?.[1] ?? '';
  const path = `/outbox/${message.id}`;
  const body = message.channel === 'letter' ? `${path}/letter` : `${path}/message`;
  const facts: readonly (readonly [string, string])[] = [
    ['To', message.envelopeTo ?? 'a letter'],
    ['State', `${stateWord(message.state, frame.catchesMail)}: ${meaning}`],
    ['Message-ID', message.messageId],
    ['SHA-256 of its bytes', message.sha256],
  ];
  return (
    <PageShell title={`Message ${message.id}`} section="outbox" frame={frame} cautions={true}>
      <p class="back">
        <a href="/outbox">Outbox</a>
      </p>
      <h1>{message.subject}</h1>
      {problem && <FormAlert>{problem}</FormAlert>}
      <p class="where">
        {`No. ${message.id}, to `}
        {message.ownerRef === null ? (
          message.ownerName
        ) : (
          <a href={`/owners/${encodeURIComponent(message.ownerRef)}`}>{message.ownerName}</a>
        )}
      </p>
      <dl class="facts">
        {facts.map(([name, value]) => (
          <div>
            <dt>{name}</dt>
            <dd class="hash">{value}</dd>
          </div>
        ))}
      </dl>
      <div class="two-ways">
        {actsFor(message).map((act) => (
          <form class="tall" method="post" action={path}>
            <TokenField token={formToken} />
            <button class={act === 'cancel' ? 'quiet' : undefined} type="submit" name="act" value={act}>
              {ACT_WORDS[act]}
            </button>
          </form>
        ))}
      </div>
      <h2>What became of it</h2>
      <ScrollFrame label="What became of it">
        <table>
          <caption class="visually-hidden">What became of it</caption>
          <thead>
            <tr>
              <th scope="col">When</th>
              <th scope="col">What</th>
            </tr>
          </thead>
          <tbody>
            {historyOf(message, frame.catchesMail).map(([when, what]) => (
              <tr>
                <th scope="row" class="when">
                  {when}
                </th>
                <td class="hash">{what}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </ScrollFrame>
      <h2>What it tells</h2>
      <ul class="plain">
        {message.notices.map(({ fenceRef, matter }) => (
          <li>
            <a href={`/fences/${encodeURIComponent(fenceRef)}`}>{`Fence ${fenceRef}`}</a>
            {`: ${matter}`}
          </li>
        ))}
      </ul>
      <h2>As its owner sees it</h2>
      <p>
        <a href={body}>{message.channel === 'letter' ? 'The letter alone, to print' : 'The message alone'}</a>
      </p>
      <iframe class="message" title="The message" src={body} sandbox="" />
    </PageShell>
  );
};
