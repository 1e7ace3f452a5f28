import type { FC } from 'hono/jsx';
import { listWords } from '../../drawing/day-words.ts';
import type { PreviewedMessage, ReleaseLook } from '../../service/preview-release.ts';
import { FormAlert, TokenField } from '../frame/form-field.tsx';
import type { PageFrame } from '../frame/page-frame.ts';
import { PageShell } from '../frame/page-shell.tsx';
import type { HeldAsked } from './held-list.tsx';
import { count } from './held-words.ts';
import { MessageShown } from './message-shown.tsx';

/** What somebody is about to release. */
export interface ReleaseAsked extends HeldAsked {
  /** The highest number that was seen. */
  readonly newest: number;
  readonly sentence: string;
}

/** Owners named at most. */
const MOST_NAMED = 8;

const toOwners = ({ messages, owners }: ReleaseLook['mails'], what: string): readonly string[] =>
  owners === 0 ? [] : [`${count(messages, what)} to ${count(owners, 'owner')}`];

/** What becomes of it, in a sentence. */
function comesTo({ exact, mails, letters, notEnrolled }: ReleaseLook): string {
  const parts = [...toOwners(mails, 'mail'), ...toOwners(letters, 'letter')];
  const nobody =
    notEnrolled === 0
      ? ''
      : ` ${count(notEnrolled, 'owner')} of them ${notEnrolled === 1 ? 'is' : 'are'} not enrolled and ${notEnrolled === 1 ? 'is' : 'are'} not written to.`;
  return parts.length === 0
    ? `Nothing is written.${nobody}`
    : `That is ${exact ? '' : 'at most '}${parts.join(' and ')}.${nobody}`;
}

const narrowed = ({ matter, owner }: HeldAsked): string =>
  [matter === '' ? '' : `of the matter “${matter}”`, owner === '' ? '' : `to owner ${owner}`]
    .filter(Boolean)
    .join(', ');

/** The page that asks before a whole list of held notices is released. */
export const ReleasePage: FC<{
  readonly frame: PageFrame;
  readonly formToken: string;
  readonly asked: ReleaseAsked;
  readonly look: ReleaseLook;
  readonly sample: (PreviewedMessage & { readonly print: string }) | null;
  /** What keeps messages from being written; null where nothing does. */
  readonly gap: string | null;
  readonly problem: string | null;
}> = ({ frame, formToken, asked, look, sample, gap, problem }) => {
  const list = `/notices?${new URLSearchParams({ matter: asked.matter, owner: asked.owner }).toString()}`;
  const only = narrowed(asked);
  return (
    <PageShell title="Release all of these" section="notices" frame={frame} cautions={true}>
      <p class="back">
        <a href={list}>Back to the list, release nothing</a>
      </p>
      <h1>{`Release ${count(look.notices, 'notice')} to ${count(look.owners, 'owner')}?`}</h1>
      {problem && <FormAlert>{problem}</FormAlert>}
      <p class="lead">{comesTo(look)}</p>
      {asked.sentence !== '' && look.spanishReaders.length > 0 && (
        <p>
          {`Your sentence goes to everybody as you wrote it, into Spanish messages too: ${listWords(look.spanishReaders.slice(0, MOST_NAMED))}${look.spanishReaders.length > MOST_NAMED ? ` and ${look.spanishReaders.length - MOST_NAMED} more` : ''} ${look.spanishReaders.length === 1 ? 'reads' : 'read'} Spanish. Write it in both languages, or go back, leave it empty and they get the usual sentence in theirs; an owner’s notices can be released alone, with a sentence of their own.`}
        </p>
      )}
      {only !== '' && <p>{`Only notices ${only}.`}</p>}
      <p>
        {'What is no longer so by the newest sweep is not sent, so that it may be fewer. '}
        {look.mails.owners > 0 &&
          (frame.catchesMail
            ? 'Mails are kept here and reach nobody. '
            : 'Mails leave by themselves once they are written. ')}
        {look.letters.owners > 0 && 'Letters wait in the outbox until you print and post them.'}
      </p>
      <p>
        {gap === null || frame.catchesMail
          ? 'They can be taken back until they are written, which begins at once: on the page of notices under “Released, not written yet”. After that a message can be cancelled in the outbox as long as it has not left.'
          : 'Nothing can be written until the office has said who it is; until then they can be held again on the page of notices.'}
      </p>
      <form class="tall" method="post" action="/notices/release">
        <TokenField token={formToken} />
        <input type="hidden" name="matter" value={asked.matter} />
        <input type="hidden" name="owner" value={asked.owner} />
        <input type="hidden" name="newest" value={String(asked.newest)} />
        <input type="hidden" name="sentence" value={asked.sentence} />
        <input type="hidden" name="sure" value="yes" />
        <button type="submit" name="act" value="all">
          {`Release ${count(look.notices, 'notice')}`}
        </button>
      </form>
      {sample && look.sample && (
        <>
          <p>
            {`One of them, to ${look.sample.ownerName}. `}
            <a
              href={`/notices/preview?${new URLSearchParams({ owner: look.sample.ownerRef, sentence: asked.sentence }).toString()}`}
            >
              All messages to this owner
            </a>
          </p>
          <MessageShown
            message={sample}
            query={{ owner: look.sample.ownerRef, sentence: asked.sentence, message: '0', print: sample.print }}
            title="One of the messages"
          />
        </>
      )}
    </PageShell>
  );
};
