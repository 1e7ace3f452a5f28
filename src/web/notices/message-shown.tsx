import type { FC } from 'hono/jsx';
import type { PreviewedMessage } from '../../service/preview-release.ts';

/** A message as its owner would see it, in a frame without rights; on its own page where the frame is too small. */
export const MessageShown: FC<{
  readonly message: PreviewedMessage;
  readonly query: Readonly<Record<'owner' | 'sentence' | 'message' | 'print', string>>;
  /** Name of the frame. */
  readonly title: string;
}> = ({ message, query, title }) => {
  const path = `/notices/message?${new URLSearchParams(query).toString()}`;
  return (
    <section>
      <h3>{message.subject}</h3>
      <p class="muted">
        {message.channel === 'mail' ? `By mail to ${message.to}. ` : 'A letter to print and post. '}
        <a href={path}>Whole, on a page of its own</a>
      </p>
      <iframe class="message" title={title} src={path} sandbox="" />
    </section>
  );
};
