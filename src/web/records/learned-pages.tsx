import type { FC } from 'hono/jsx';
import type { LearnedEntry, LearnedVersion } from '../../register/learned-store.ts';
import type { LearnedCell, RegisterLearning } from '../../service/learn-register.ts';
import {
  count,
  factor,
  interval,
  lackingText,
  ownersOf,
  quantityName,
  valueText,
} from '../../service/learned-words.ts';
import type { LearnedPreview } from '../../service/preview-learned.ts';
import { FormAlert, FormField, TokenField } from '../frame/form-field.tsx';
import { Moment } from '../frame/moment.tsx';
import type { PageFrame } from '../frame/page-frame.ts';
import { PageShell } from '../frame/page-shell.tsx';
import { ScrollFrame } from '../frame/scroll-frame.tsx';

/** Lines of a list shown at most. */
const MOST_SHOWN = 100;

/** The page of what the register has learned. */
export const LearnedPage: FC<{
  readonly frame: PageFrame;
  readonly learning: RegisterLearning;
  readonly history: readonly LearnedEntry[];
  readonly done: string | null;
  readonly problem: string | null;
}> = ({ frame, learning, history, done, problem }) => {
  const { cells, inForce, unread } = learning;
  return (
    <PageShell title="Learned" section="records" frame={frame} cautions={true}>
      <p class="back">
        <a href="/records">Records</a>
      </p>
      <h1>Learned</h1>
      {done && <p class="done">{done}</p>}
      {problem && <FormAlert>{problem}</FormAlert>}
      <p class="lead">
        {cells.length === 0
          ? 'Nothing has been learned yet: the register holds no groundline readings and no storm outcomes.'
          : inForce
            ? `Version ${inForce.number} is in force: accepted by ${inForce.by} on ${inForce.at.slice(0, 10)}.`
            : 'Nothing of this is in force: forecasts use the published values.'}
      </p>
      <p>
        What readings and storms of this register say beside the published values. Forecasts use it only once you accept
        it, and you can take it back.
      </p>
      {unread.length > 0 && (
        <p>
          <strong>{`${count(unread.length, 'fence')} could not be read, and what was seen of them does not count: ${unread
            .slice(0, 10)
            .map(({ ref }) => ref)
            .join(', ')}.`}</strong>
        </p>
      )}
      {cells.length > 0 && <Cells cells={cells} />}
      {inForce && (
        <p>
          <a href="/learned/preview?revert=yes">{`See what taking version ${inForce.number} back would change`}</a>
        </p>
      )}
      {history.length > 0 && <History history={history} />}
    </PageShell>
  );
};

const Cells: FC<{ readonly cells: readonly LearnedCell[] }> = ({ cells }) => (
  <form method="get" action="/learned/preview">
    <ScrollFrame label="What was learned">
      <table class="stacked spaced">
        <caption>Times the published value, in brackets the range that holds in 9 cases of 10</caption>
        <thead>
          <tr>
            <th scope="col">Accept</th>
            <th scope="col">What</th>
            <th scope="col">Published</th>
            <th scope="col">This register</th>
            <th scope="col">In force</th>
            <th scope="col">State</th>
          </tr>
        </thead>
        <tbody>
          {cells.map((cell) => (
            <tr>
              <td data-label="Accept">
                {cell.state === 'can be accepted' ? (
                  <input type="checkbox" name="only" value={cell.key} aria-label={`Accept ${quantityName(cell)}`} />
                ) : (
                  '–'
                )}
              </td>
              <th scope="row">{quantityName(cell)}</th>
              <td data-label="Published">{`1.00 (${interval(cell.published.low, cell.published.high)})`}</td>
              <td data-label="This register">{`${factor(cell.logShift)} (${interval(cell.low, cell.high)})`}</td>
              <td data-label="In force">
                {cell.held ? `${factor(cell.held.logShift)} (version ${cell.held.since})` : 'published'}
              </td>
              <td data-label="State">
                {cell.state}
                {cell.state === 'too few' && <span class="small">{lackingText(cell)}</span>}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </ScrollFrame>
    {cells.some(({ state }) => state === 'can be accepted') && (
      <button type="submit">See what accepting would change</button>
    )}
  </form>
);

const History: FC<{ readonly history: readonly LearnedEntry[] }> = ({ history }) => (
  <>
    <h2>Accepted and taken back</h2>
    <ul class="plain">
      {history.toReversed().map((entry) => (
        <li>
          <Moment at={entry.at} />
          {`, ${entry.by} `}
          {entry.act === 'reverted'
            ? `took version ${entry.reverted} back`
            : `accepted version ${entry.number}${entry.inForce ? ' (in force)' : ''}`}
          {entry.note !== '' && `: ${entry.note}`}
        </li>
      ))}
    </ul>
  </>
);

/** The page of what accepting or taking back would change. */
export const LearnedPreviewPage: FC<{
  readonly frame: PageFrame;
  readonly formToken: string;
  /** The version that would be in force; null for the published values. */
  readonly after: LearnedVersion | null;
  /** Number of the version that would be taken back; null where one is accepted. */
  readonly reverts: number | null;
  readonly only: readonly string[];
  readonly preview: LearnedPreview;
}> = ({ frame, formToken, after, reverts, only, preview }) => {
  const { fences, standings } = preview;
  const owners = ownersOf(preview);
  const title = reverts === null ? 'What accepting would change' : `What taking version ${reverts} back would change`;
  const changed = new Set(standings.map(({ ref }) => ref)).size;
  return (
    <PageShell title={title} section="records" frame={frame} cautions={true}>
      <p class="back">
        <a href="/learned">Learned</a>
      </p>
      <h1>{title}</h1>
      <p class="lead">
        {`The next sweep would forecast ${count(fences.length, 'fence')} anew; the standing of ${changed === 0 ? 'none' : changed} of them would change, and ${owners.length === 0 ? 'no owner' : count(owners.length, 'owner')} would get a notice because of it.`}
      </p>
      <p>Nothing has been changed yet.</p>
      {after && reverts === null && (
        <ul class="plain">
          {after.values.map((value) => (
            <li>{valueText(value, after.number)}</li>
          ))}
        </ul>
      )}
      {standings.length > 0 && (
        <>
          <h2>Standings</h2>
          <ul class="plain">
            {standings.slice(0, MOST_SHOWN).map(({ ref, of, from, to }) => (
              <li>
                <a href={`/fences/${encodeURIComponent(ref)}`}>{ref}</a>
                {`${of === 'ends' ? ', its ends' : ''}: ${from ?? 'not forecast yet'} → ${to ?? 'none'}`}
              </li>
            ))}
          </ul>
        </>
      )}
      {owners.length > 0 && (
        <>
          <h2>Owners who would get a notice</h2>
          <ul class="plain">
            {owners.slice(0, MOST_SHOWN).map(({ ref, fences: about }) => (
              <li>
                <a href={`/owners/${encodeURIComponent(ref)}`}>{ref}</a>
                {`, about ${about.slice(0, 20).join(', ')}`}
              </li>
            ))}
          </ul>
        </>
      )}
      <form class="tall" method="post" action="/learned">
        <TokenField token={formToken} />
        {only.map((key) => (
          <input type="hidden" name="only" value={key} />
        ))}
        {reverts !== null && <input type="hidden" name="reverts" value={String(reverts)} />}
        <FormField name="note" label="A note on why (may be empty)" value="" required={false} />
        <button type="submit" name="act" value={reverts === null ? 'accept' : 'revert'}>
          {reverts === null ? 'Accept' : `Take version ${reverts} back`}
        </button>
      </form>
    </PageShell>
  );
};
