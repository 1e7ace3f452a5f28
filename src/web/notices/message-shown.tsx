import type { FC } from 'hono/jsx';
import type { PreviewedMessage } from '../../service/preview-release.ts';

/** Heights of a frame in which a whole message stands [rem]; the stylesheet has a rule for each. */
const HEIGHTS_REM = [60, 90, 130, 180, 240, 320] as const;

/** How high a frame must be for the message, as far as that can be told from its text [rem]: rather too high than cut; judgement. */
function heightRem(html: string): number {
  const body = html.slice(html.indexOf('<body'));
  const pictures = body.split('<img').length - 1;
  const characters = body.replaceAll(/<[^>]*>/g, '').length;
  const needed = characters / 28 + pictures * 24 + 20;
  return HEIGHTS_REM.find((height) => height >= needed) ?? HEIGHTS_REM.at(-1) ?? 0;
}

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
      <h2>{message.subject}</h2>
      <p class="muted">
        {message.channel === 'mail' ? `By mail to ${message.to}. ` : 'A letter to print and post. '}
        <a href={path}>Whole, on a page of its own</a>
      </p>
      <iframe class={`message whole whole-${heightRem(message.html)}`} title={title} src={path} sandbox="" />
    </section>
  );
};
