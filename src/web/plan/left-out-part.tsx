import type { FC } from 'hono/jsx';
import { countWords, sentenceCase } from '../../drawing/day-words.ts';
import { type LeftOutNames, leftOutClause } from '../../drawing/left-out-words.ts';
import { leftOutText, WHY_SERVED } from '../../drawing/plan-words.ts';
import type { StoredLeftOut, StoredPlan } from '../../register/plan-store.ts';

/** What a plan leaves out: fences that must be served one by one, the others folded by reason, every one named. */
export const LeftOutPart: FC<LeftOutNames & { readonly plan: StoredPlan }> = ({ plan, ...names }) => {
  const { unservedMusts, unservedOthers = [] } = plan.content;
  return (
    <section>
      <h2 id="left-out">What it leaves out</h2>
      {unservedMusts.length > 0 ? (
        <>
          <p>{`${sentenceCase(countWords(unservedMusts.length, 'fence'))} must be served and found no place:`}</p>
          <ul class="plain">
            {unservedMusts.map((fence) => (
              <li>
                <FenceLink {...fence} />
                {` (${WHY_SERVED[fence.mustRank]}): ${leftOutClause(fence, names)}.`}
              </li>
            ))}
          </ul>
        </>
      ) : (
        <p>Every fence that must be served has its place.</p>
      )}
      {unservedOthers.length > 0 && (
        <>
          <p>
            Fences that need not be served, and are not; open a line to see which. They come back in the next plan by
            themselves.
          </p>
          {unservedOthers.map((group) => (
            <Group {...group} names={names} />
          ))}
        </>
      )}
    </section>
  );
};

const FenceLink: FC<Pick<StoredLeftOut, 'jobRef'>> = ({ jobRef }) => (
  <a href={`/fences/${encodeURIComponent(jobRef)}`}>{jobRef}</a>
);

const Group: FC<NonNullable<StoredPlan['content']['unservedOthers']>[number] & { readonly names: LeftOutNames }> = ({
  reason,
  fences,
  named,
  names,
}) => {
  const head = `${sentenceCase(countWords(fences, 'fence'))}: ${leftOutText(reason)}`;
  if (!named) return <p>{`${head}.`}</p>;
  const withNumbers = named.some(({ nearest }) => nearest);
  return (
    <details class="folded">
      <summary>{head}</summary>
      {withNumbers ? (
        <ul class="plain">
          {named.map((fence) => (
            <li>
              <FenceLink {...fence} />
              {`: ${leftOutClause(fence, names)}.`}
            </li>
          ))}
        </ul>
      ) : (
        <p>
          {named.map((fence, index) => (
            <>
              {index > 0 && ', '}
              <FenceLink {...fence} />
            </>
          ))}
        </p>
      )}
    </details>
  );
};
