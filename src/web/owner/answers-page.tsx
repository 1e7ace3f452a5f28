import type { FC } from 'hono/jsx';
import type { AnswerKind } from '../../register/answer-tables.ts';
import type { NamedDayWish } from '../../register/day-wish-store.ts';
import type { MessageLink } from '../../register/message-link-store.ts';
import type { NamedAnswer } from '../../register/owner-answer-store.ts';
import { answerSentence, markSentence } from '../../service/answer-sentence.ts';
import { TokenField } from '../frame/form-field.tsx';
import { Moment } from '../frame/moment.tsx';
import type { PageFrame } from '../frame/page-frame.ts';
import { PageShell } from '../frame/page-shell.tsx';
import { ScrollFrame } from '../frame/scroll-frame.tsx';

/** The kinds of answers in the order in which the page shows them, with what each list is called. */
const LISTS: readonly (readonly [heading: string, kinds: readonly AnswerKind[]])[] = [
  ['Quotes accepted', ['quote accepted']],
  ['Days chosen', ['day chosen']],
  ['Have read how their fences stand', ['read']],
  ['What they want to be written about', ['preferences', 'unsubscribed']],
];

const count = (number: number, one: string, many: string): string => `${number} ${number === 1 ? one : many}`;

/** The page on which the office sees what owners answered. */
export const AnswersPage: FC<{
  readonly answers: readonly NamedAnswer[];
  /** How many wait for the office, here or not. */
  readonly waiting: number;
  readonly links: readonly MessageLink[];
  /** What owners marked of the days of shared visits, the newest first. */
  readonly marks: readonly NamedDayWish[];
  /** True for the newest answers, with which the calls that are still to be made are shown. */
  readonly isFirst: boolean;
  /** Number of the answer before which the next page begins; null where there is none. */
  readonly next: number | null;
  readonly frame: PageFrame;
}> = ({ answers, waiting, links, marks, isFirst, next, frame }) => {
  const calls = answers.filter(({ kind }) => kind === 'call wanted');
  const open = calls.filter(({ settledAt }) => settledAt === null).sort((a, b) => a.id - b.id);
  const of = (kinds: readonly AnswerKind[]): readonly NamedAnswer[] =>
    answers.filter(({ kind }) => kinds.includes(kind));
  return (
    <PageShell title="Answers" section="answers" frame={frame} cautions={false}>
      <h1>Answers</h1>
      <p class="lead">
        {isFirst && answers.length + marks.length === 0
          ? 'No owner has answered yet. Mails carry links with which they can, without an account.'
          : `${isFirst ? (waiting === 0 ? 'Nobody waits for a call. ' : `${count(waiting, 'owner waits', 'owners wait')} for a call. `) : ''}${count(of(['quote accepted']).length, 'quote was', 'quotes were')} accepted, ${count(of(['day chosen']).length, 'day', 'days')} chosen.${marks.length > 0 ? ` Days of shared visits were marked ${count(marks.length, 'time', 'times')}.` : ''}`}
      </p>
      {(next !== null || !isFirst) && (
        <p>{`${isFirst ? 'The newest' : 'Older'} answers, ${answers.length} of them on this page.`}</p>
      )}
      {calls.length > 0 && (
        <>
          <h2>Calls</h2>
          {waiting > open.length && (
            <p>{`Shown are ${open.length}: those who have waited longest, and whoever asked last. The others follow as calls are made.`}</p>
          )}
          {open.map((answer) => (
            <CallToMake answer={answer} frame={frame} />
          ))}
          <AnswerTable heading="Calls made" answers={calls.filter(({ settledAt }) => settledAt !== null)} />
        </>
      )}
      {LISTS.map(([heading, kinds]) => {
        const listed = of(kinds);
        return (
          listed.length > 0 && (
            <>
              <h2>{heading}</h2>
              <AnswerTable heading={heading} answers={listed} />
            </>
          )
        );
      })}
      <DaysMarked marks={marks} />
      {(next !== null || !isFirst) && (
        <nav class="pages" aria-label="Pages of answers">
          {!isFirst && <a href="/answers">The newest</a>}
          {next !== null && (
            <a rel="next" href={`/answers?before=${next}`}>
              Older answers
            </a>
          )}
        </nav>
      )}
      <LinksOpened links={links} />
    </PageShell>
  );
};

const CallToMake: FC<{ readonly answer: NamedAnswer; readonly frame: PageFrame }> = ({ answer, frame }) => (
  <section class="answer-box wide-text">
    <p>
      <strong>{answer.ownerName ?? answer.ownerRef}</strong>
      {` ${answerSentence(answer)}. Asked `}
      <Moment at={answer.at} />.
    </p>
    <form method="post" action={`/answers/${answer.id}/called`} class="one-button">
      {frame.account && <TokenField token={frame.account.formToken} />}
      <button type="submit">{`Called ${answer.ownerName ?? answer.ownerRef}`}</button>
    </form>
  </section>
);

const AnswerTable: FC<{ readonly heading: string; readonly answers: readonly NamedAnswer[] }> = ({
  heading,
  answers,
}) =>
  answers.length === 0 ? null : (
    <ScrollFrame label={heading}>
      <table class="stacked">
        <caption>{heading}</caption>
        <thead>
          <tr>
            <th scope="col">Owner</th>
            <th scope="col">Answer</th>
            <th scope="col">When</th>
            <th scope="col" class="figure">
              Link
            </th>
          </tr>
        </thead>
        <tbody>
          {answers.map((answer) => (
            <tr>
              <th scope="row">{answer.ownerName ?? answer.ownerRef}</th>
              <td data-label="Answer" class="wide-text">
                {answerSentence(answer)}
                {answer.kind === 'call wanted' && answer.settledAt !== null && (
                  <span class="small">
                    {'called '}
                    <Moment at={answer.settledAt} />
                    {answer.settledBy ? ` by ${answer.settledBy}` : ''}
                  </span>
                )}
              </td>
              <td data-label="When">
                <Moment at={answer.at} />
              </td>
              <td data-label="Link" class="figure">
                {answer.linkId}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </ScrollFrame>
  );

const DaysMarked: FC<{ readonly marks: readonly NamedDayWish[] }> = ({ marks }) =>
  marks.length === 0 ? null : (
    <>
      <h2 id="days-marked">Days marked for shared visits</h2>
      <p>What each owner said last of each visit. You confirm one day for all, on the page of the visit.</p>
      <ScrollFrame label="Days marked for shared visits">
        <table class="stacked">
          <caption>Days marked for shared visits</caption>
          <thead>
            <tr>
              <th scope="col">Owner</th>
              <th scope="col">Answer</th>
              <th scope="col">When</th>
              <th scope="col" class="figure">
                Link
              </th>
            </tr>
          </thead>
          <tbody>
            {marks.map((mark) => (
              <tr>
                <th scope="row">{mark.ownerName ?? mark.ownerRef}</th>
                <td data-label="Answer" class="wide-text">
                  <a href={`/visits/${encodeURIComponent(mark.visitUid)}#days`}>{markSentence(mark)}</a>
                </td>
                <td data-label="When">
                  <Moment at={mark.at} />
                </td>
                <td data-label="Link" class="figure">
                  {mark.linkId}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </ScrollFrame>
    </>
  );

const LinksOpened: FC<{ readonly links: readonly MessageLink[] }> = ({ links }) => {
  const opened = links.filter(({ opened: gets, looked, sent }) => gets + looked + sent > 0);
  if (opened.length === 0) return null;
  return (
    <>
      <h2>Links opened</h2>
      <p>
        Which link each message carried, and how often pages were asked for by it. Mail scanners open links too, so that
        an opened link proves nothing of a person; what was sent by a button does.
      </p>
      <ScrollFrame label="Links opened">
        <table class="stacked">
          <caption>Links of messages</caption>
          <thead>
            <tr>
              <th scope="col">Owner</th>
              <th scope="col">Message</th>
              <th scope="col">First opened</th>
              <th scope="col" class="figure">
                Opened
              </th>
              <th scope="col" class="figure">
                Scanned
              </th>
              <th scope="col" class="figure">
                Sent
              </th>
              <th scope="col" class="figure">
                Link
              </th>
            </tr>
          </thead>
          <tbody>
            {opened.map((link) => (
              <tr>
                <th scope="row">{link.ownerName}</th>
                <td data-label="Message" class="wide-text">
                  {link.subject}
                  <span class="small">
                    {`${link.noticeIds.length === 1 ? 'notice' : 'notices'} ${link.noticeIds.join(', ')}${link.purpose === 'unsubscribe' ? '; the link in its header' : ''}`}
                  </span>
                </td>
                <td data-label="First opened">
                  {link.firstOpenedAt === null ? '–' : <Moment at={link.firstOpenedAt} />}
                </td>
                <td data-label="Opened" class="figure">
                  {link.opened}
                </td>
                <td data-label="Scanned" class="figure">
                  {link.looked}
                </td>
                <td data-label="Sent" class="figure">
                  {link.sent}
                </td>
                <td data-label="Link" class="figure">
                  {link.linkId}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </ScrollFrame>
    </>
  );
};
