import { raw } from 'hono/html';
import type { FC } from 'hono/jsx';
import type { ChartLanguage } from '../../drawing/chart-words.ts';
import { heldText } from '../../drawing/held-text.ts';
import { drawPostSections } from '../../drawing/post-section-drawing.ts';
import { momentLines } from '../../drawing/post-section-words.ts';
import { POSTS_WORDS } from '../../drawing/posts-words.ts';
import { lengthText } from '../../drawing/quantity-text.ts';
import { drawRun } from '../../drawing/run-drawing.ts';
import { marksOf, type RunView, runSummary, runWords } from '../../drawing/run-words.ts';
import { type DisplayUnits, speedText } from '../../drawing/speed-text.ts';
import type { PostOutlook } from '../../forecast/post-outlook.ts';
import { CHART_SIZES } from '../frame/chart-sizes.ts';
import { ScrollFrame } from '../frame/scroll-frame.tsx';
import { FENCE_PAGE_WORDS } from './fence-page-words.ts';

interface Drawn {
  readonly units: DisplayUnits;
  readonly language: ChartLanguage;
}

/** A fence drawn along its run, and the same as a table post by post. */
export const RunDrawn: FC<{ readonly view: RunView } & Drawn> = ({ view, units, language }) => {
  const words = { ...POSTS_WORDS[language], ...FENCE_PAGE_WORDS[language].posts };
  return (
    <>
      <h2 id="run">{words.runHeading}</h2>
      <p>{runSummary(view, { units, language })}</p>
      <figure class="chart">
        {CHART_SIZES.map(({ name, widthPx }) => (
          <div class={`chart-${name}`}>{raw(drawRun(view, { units, language, widthPx, idPrefix: `run-${name}` }))}</div>
        ))}
      </figure>
      <details>
        <summary>{words.runTable}</summary>
        <ScrollFrame label={words.runHeading}>
          <table class="seasons">
            <caption>{words.runCaption}</caption>
            <thead>
              <tr>
                <th scope="col">{words.post}</th>
                <th scope="col" class="figure">
                  {words.position}
                </th>
                <th scope="col">{words.kind}</th>
                <th scope="col" class="figure">
                  {words.snap}
                </th>
                <th scope="col" class="figure">
                  {words.lean}
                </th>
                <th scope="col" class="figure">
                  {words.strength}
                </th>
                <th scope="col">{words.found}</th>
              </tr>
            </thead>
            <tbody>
              {view.posts.map((post) => (
                <PostRow post={post} view={view} units={units} language={language} />
              ))}
            </tbody>
          </table>
        </ScrollFrame>
      </details>
    </>
  );
};

const PostRow: FC<{ readonly post: PostOutlook; readonly view: RunView } & Drawn> = ({
  post,
  view,
  units,
  language,
}) => {
  const words = { ...POSTS_WORDS[language], ...FENCE_PAGE_WORDS[language].posts };
  const moment = post.moments.find(({ season }) => season === 1);
  const marks = marksOf(post, view).map((mark) => runWords(language).marks[mark][0]);
  return (
    <tr>
      <th scope="row">{post.number}</th>
      <td class="figure">{lengthText(post.positionM, units)}</td>
      <td>{post.isLinePost ? words.linePost : words.endPost}</td>
      <td class="figure">{moment && !post.condition.broken ? heldText(moment.snapMps.p50, units, language) : '–'}</td>
      <td class="figure">{moment ? speedText(moment.leanMps.p50, units) : '–'}</td>
      <td class="figure">{moment ? `${Math.round(Math.min(1, moment.strengthLeft.p50) * 100)} %` : '–'}</td>
      <td>{marks.length === 0 ? '–' : marks.join(', ')}</td>
    </tr>
  );
};

/** A deciding post cut through at the ground, now and in the seasons to come, and the same as a table. */
export const SectionsDrawn: FC<{ readonly post: PostOutlook; readonly alike: number } & Drawn> = ({
  post,
  alike,
  units,
  language,
}) => {
  const words = { ...POSTS_WORDS[language], ...FENCE_PAGE_WORDS[language].posts };
  return (
    <>
      <h2 id="section">{words.sectionHeading}</h2>
      <p>{words.sectionLead(post.number, alike)}</p>
      <figure class="chart">
        {CHART_SIZES.map(({ name, widthPx }) => (
          <div class={`chart-${name}`}>
            {raw(drawPostSections(post, { units, language, widthPx, idPrefix: `section-${name}` }))}
          </div>
        ))}
        <figcaption>{words.sectionCaption}</figcaption>
      </figure>
      <details>
        <summary>{words.sectionTable}</summary>
        <ul class="plain">
          {post.moments.map((moment) => (
            <li>
              {moment.label}: {momentLines(post, moment, { units, language }).join('; ')}. {words.rot}{' '}
              {words.depths(moment.depthMm, units)}
              {moment.oneFaceMm > 0 && ` ${words.cut(moment.oneFaceMm, units)}`}
            </li>
          ))}
        </ul>
      </details>
    </>
  );
};
