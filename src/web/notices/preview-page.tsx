import type { FC } from 'hono/jsx';
import type { HeldNotice } from '../../register/held-notices.ts';
import { LONGEST_SENTENCE, type PreviewedMessage } from '../../service/preview-release.ts';
import { FormAlert, TokenField } from '../frame/form-field.tsx';
import type { PageFrame } from '../frame/page-frame.ts';
import { PageShell } from '../frame/page-shell.tsx';
import { count } from './held-words.ts';
import { MessageShown } from './message-shown.tsx';

/** The page that shows what an owner would get. */
export const PreviewPage: FC<{
  readonly frame: PageFrame;
  readonly formToken: string;
  readonly ownerRef: string;
  readonly held: readonly HeldNotice[];
  readonly messages: readonly (PreviewedMessage & { readonly print: string })[];
  readonly sentence: string;
  readonly problem: string | null;
}> = ({ frame, formToken, ownerRef, held, messages, sentence, problem }) => {
  const name = held[0]?.ownerName ?? ownerRef;
  return (
    <PageShell title={`What ${name} would get`} section="notices" frame={frame} cautions={true}>
      <p class="back">
        <a href="/notices">All held notices</a>
      </p>
      <h1>{`What ${name} would get`}</h1>
      {problem && <FormAlert>{problem}</FormAlert>}
      <p class="lead">
        {messages.length === 0
          ? 'Nothing: what is held for this owner is no longer so, or the owner is not enrolled.'
          : `${count(messages.length, 'message')} for ${count(held.length, 'held notice')}: ${[...new Set(held.map(({ fenceRef, matter }) => `${fenceRef} (${matter})`))].slice(0, 8).join(', ')}${held.length > 8 ? ' and more' : ''}.`}
      </p>
      {held.length > 0 && (
        <>
          <form class="tall" method="get" action="/notices/preview">
            <input type="hidden" name="owner" value={ownerRef} />
            <div class="field">
              <label for="sentence">A sentence of your own after the greeting (may be empty)</label>
              <textarea id="sentence" name="sentence" rows={3} maxlength={LONGEST_SENTENCE}>
                {sentence}
              </textarea>
            </div>
            <button class="quiet" type="submit">
              Show it with this sentence
            </button>
          </form>
          <form class="tall" method="post" action="/notices/release">
            <TokenField token={formToken} />
            <input type="hidden" name="sentence" value={sentence} />
            {held.map(({ id }) => (
              <input type="hidden" name="id" value={String(id)} />
            ))}
            <button type="submit" name="act" value="ticked">
              {held.length === 1 ? 'Release this notice' : `Release these ${held.length} notices`}
            </button>
          </form>
        </>
      )}
      {messages.map((message, index) => (
        <MessageShown
          message={message}
          query={{ owner: ownerRef, sentence, message: String(index), print: message.print }}
          title={`${message.subject}, message ${index + 1}`}
        />
      ))}
    </PageShell>
  );
};
