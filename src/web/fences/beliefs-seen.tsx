import type { FC } from 'hono/jsx';
import type { ChartLanguage } from '../../drawing/chart-words.ts';
import { EVIDENCE_SENTENCES } from '../../drawing/evidence-sentences-es.ts';
import { type BeliefFigures, type BeliefRow, beliefRows, readPostRows } from '../../drawing/evidence-table.ts';
import type { DisplayUnits } from '../../drawing/speed-text.ts';
import type { EvidenceSummary } from '../../forecast/evidence/evidence-summary.ts';
import { ScrollFrame } from '../frame/scroll-frame.tsx';
import { REASONS_WORDS } from './reasons-words.ts';

interface Seen {
  readonly evidence: EvidenceSummary;
  readonly units: DisplayUnits;
  readonly language: ChartLanguage;
}

/** What was seen of a fence: what is believed of each unknown before and after, and the posts that were read. */
export const BeliefsSeen: FC<{
  readonly evidence: EvidenceSummary | null;
  readonly learnedVersion: number | null;
  readonly units: DisplayUnits;
  readonly language: ChartLanguage;
}> = ({ evidence, learnedVersion, units, language }) => {
  const sentences = EVIDENCE_SENTENCES[language];
  return (
    <>
      <h2 id="seen">{REASONS_WORDS[language].seen.heading}</h2>
      {evidence === null ? (
        <p>{sentences.nothingSeen(learnedVersion)}</p>
      ) : (
        <>
          <p>{[sentences.count(evidence), ...sentences.changes(evidence, learnedVersion, units)].join(' ')}</p>
          {sentences.surprise(evidence).map((sentence) => (
            <p>{sentence}</p>
          ))}
          <Beliefs evidence={evidence} units={units} language={language} />
          {evidence.readPosts.length > 0 && <ReadPosts evidence={evidence} units={units} language={language} />}
        </>
      )}
    </>
  );
};

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

const Beliefs: FC<Seen> = ({ evidence, units, language }) => {
  const words = REASONS_WORDS[language].seen;
  const [unknownHeading, ...others] = words.beliefColumns;
  return (
    <ScrollFrame label={words.beliefs}>
      <table class="stacked spaced">
        <caption>{words.beliefsCaption}</caption>
        <thead>
          <tr>
            <th scope="col">{unknownHeading}</th>
            {others.map((heading, index) => (
              <th scope="col" class={index < 3 ? 'figure' : undefined}>
                {heading}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {beliefRows(evidence, units, language).map(
            ({ unknown, unit, before, afterReadings, afterStorms, movedBy }) => (
              <tr>
                <th scope="row">{unknown}</th>
                {[before, afterReadings, afterStorms].map((figures, index) => (
                  <td data-label={others[index]} class="figure">
                    {figuresText(figures, unit)}
                  </td>
                ))}
                <td data-label={others[3]}>{movedBy}</td>
              </tr>
            ),
          )}
        </tbody>
      </table>
    </ScrollFrame>
  );
};

const ReadPosts: FC<Seen> = ({ evidence, units, language }) => {
  const words = REASONS_WORDS[language].seen;
  const [postHeading, dayHeading, seenHeading, rateHeading, believedHeading, howHeading] = words.postColumns;
  return (
    <ScrollFrame label={words.posts}>
      <table class="stacked spaced">
        <caption>{words.postsCaption}</caption>
        <thead>
          <tr>
            {words.postColumns.map((heading, index) => (
              <th scope="col" class={index >= 2 && index <= 4 ? 'figure' : undefined}>
                {heading}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {readPostRows(evidence, units, language).map(({ post, day, seen, rate, believed, how }) => (
            <tr>
              <th scope="row">
                <span class="stacked-name">{postHeading} </span>
                {post}
              </th>
              <td data-label={dayHeading} class="when">
                {day}
              </td>
              <td data-label={seenHeading} class="figure">
                {seen}
              </td>
              <td data-label={rateHeading} class="figure">
                {rate}
              </td>
              <td data-label={believedHeading} class="figure">
                {believed}
              </td>
              <td data-label={howHeading}>{how}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </ScrollFrame>
  );
};
