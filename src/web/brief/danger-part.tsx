import type { FC } from 'hono/jsx';
import { countWords, listWords, sentenceCase } from '../../drawing/day-words.ts';
import { postNumbersText } from '../../drawing/what-if-words.ts';
import type { DangerFinding, DangerousFences } from '../../register/dangerous-fences.ts';

const KINDS = ['closed off', 'broken', 'leaning'] as const;

/** What was found, kind by kind: `post 3 closed off and posts 4–6 broken`. */
const findingsWords = (findings: readonly DangerFinding[]): string =>
  listWords(
    KINDS.flatMap((kind) => {
      const posts = findings.filter(({ found }) => found === kind).map(({ post }) => post);
      return posts.length === 0 ? [] : [`${posts.length === 1 ? 'post' : 'posts'} ${postNumbersText(posts)} ${kind}`];
    }),
  );

/** The fences that are recorded dangerous, before anything else is said; nothing where there are none. */
export const DangerPart: FC<{ readonly danger: DangerousFences; readonly isSwept: boolean }> = ({
  danger,
  isSwept,
}) => {
  const { named, total } = danger;
  if (total === 0) return null;
  return (
    <section aria-label="Dangerous fences">
      <p class="lead">
        <b>{`${sentenceCase(countWords(total, 'fence is', 'fences are'))} recorded dangerous.`}</b>
      </p>
      <ul class="plain">
        {named.map(({ fenceRef, siteName, findings, sinceSweep }) => (
          <li>
            <a href={`/fences/${encodeURIComponent(fenceRef)}`}>{fenceRef}</a>
            {` at ${siteName}: ${findingsWords(findings)}${sinceSweep ? (isSwept ? ', since the last sweep' : ', not swept yet') : ''}.`}
          </li>
        ))}
      </ul>
      <p>
        {total > named.length && `And ${countWords(total - named.length, 'more', 'more')}. `}
        <a href="/fences?standing=dangerous">The list of fences</a> has those that a sweep has seen, before all others.
        What the sweep found stays under <a href="/notices#office">the office’s own notices</a> until you say that it is
        dealt with.
      </p>
    </section>
  );
};
