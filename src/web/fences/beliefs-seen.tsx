import type { FC } from 'hono/jsx';
import {
  changeSentences,
  evidenceCountSentence,
  nothingSeenSentence,
  surpriseSentences,
} from '../../drawing/evidence-sentences.ts';
import { type BeliefFigures, type BeliefRow, beliefRows, readPostRows } from '../../drawing/evidence-table.ts';
import type { DisplayUnits } from '../../drawing/speed-text.ts';
import type { EvidenceSummary } from '../../forecast/evidence/evidence-summary.ts';
import { ScrollFrame } from '../frame/scroll-frame.tsx';

interface Seen {
  readonly evidence: EvidenceSummary;
  readonly units: DisplayUnits;
}

/** What was seen of a fence: what is believed of each unknown before and after, and the posts that were read. */
export const BeliefsSeen: FC<{
  readonly evidence: EvidenceSummary | null;
  readonly learnedVersion: number | null;
  readonly units: DisplayUnits;
}> = ({ evidence, learnedVersion, units }) => (
  <>
    <h2 id="seen">What was seen</h2>
    {evidence === null ? (
      <p>{nothingSeenSentence(learnedVersion)}</p>
    ) : (
      <>
        <p>{[evidenceCountSentence(evidence), ...changeSentences(evidence, learnedVersion, units)].join(' ')}</p>
        {surpriseSentences(evidence).map((sentence) => (
          <p>{sentence}</p>
        ))}
        <Beliefs evidence={evidence} units={units} />
        {evidence.readPosts.length > 0 && <ReadPosts evidence={evidence} units={units} />}
      </>
    )}
  </>
);

const figuresText = ({ p10, p50, p90 }: BeliefFigures, unit: BeliefRow['unit']) => {
  const [before, after] = unit === '×' ? ['× ', ''] : ['', ` ${unit}`];
  return (
    <>
      {`${before}${p50}${after}`}
      <span class="small">
        {p10}–{p90}
      </span>
    </>
  );
};

const Beliefs: FC<Seen> = ({ evidence, units }) => (
  <ScrollFrame label="What is believed before and after">
    <table class="stacked spaced">
      <caption>
        What is believed before anything was seen, after the readings, and after the storms too: the middle, and below
        it the range that holds in 8 cases of 10. With × a factor on what the tables give.
      </caption>
      <thead>
        <tr>
          <th scope="col">Not known</th>
          <th scope="col" class="figure">
            Before
          </th>
          <th scope="col" class="figure">
            After readings
          </th>
          <th scope="col" class="figure">
            After storms
          </th>
          <th scope="col">Moved by</th>
        </tr>
      </thead>
      <tbody>
        {beliefRows(evidence, units).map(({ unknown, unit, before, afterReadings, afterStorms, movedBy }) => (
          <tr>
            <th scope="row">{unknown}</th>
            <td data-label="Before" class="figure">
              {figuresText(before, unit)}
            </td>
            <td data-label="After readings" class="figure">
              {figuresText(afterReadings, unit)}
            </td>
            <td data-label="After storms" class="figure">
              {figuresText(afterStorms, unit)}
            </td>
            <td data-label="Moved by">{movedBy}</td>
          </tr>
        ))}
      </tbody>
    </table>
  </ScrollFrame>
);

const ReadPosts: FC<Seen> = ({ evidence, units }) => (
  <ScrollFrame label="Posts that were read">
    <table class="stacked spaced">
      <caption>
        Rot in each face at the posts that were read, last reading each. What is believed of that day counts all
        readings of the fence; in brackets the range that holds in 8 cases of 10.
      </caption>
      <thead>
        <tr>
          <th scope="col">Post</th>
          <th scope="col">Day</th>
          <th scope="col" class="figure">
            Seen
          </th>
          <th scope="col" class="figure">
            Rate it implies
          </th>
          <th scope="col" class="figure">
            Depth believed
          </th>
          <th scope="col">How</th>
        </tr>
      </thead>
      <tbody>
        {readPostRows(evidence, units).map(({ post, day, seen, rate, believed, how }) => (
          <tr>
            <th scope="row">
              <span class="stacked-name">Post </span>
              {post}
            </th>
            <td data-label="Day" class="when">
              {day}
            </td>
            <td data-label="Seen" class="figure">
              {seen}
            </td>
            <td data-label="Rate it implies" class="figure">
              {rate}
            </td>
            <td data-label="Depth believed" class="figure">
              {believed}
            </td>
            <td data-label="How">{how}</td>
          </tr>
        ))}
      </tbody>
    </table>
  </ScrollFrame>
);
