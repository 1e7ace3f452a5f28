import { judgedGroup, seasonOne } from '../../forecast/fence-forecast.ts';
import { type PostOutlook, postOutlook } from '../../forecast/post-outlook.ts';
import type { ChartLanguage } from '../chart-words.ts';
import { drawPostSections } from '../post-section-drawing.ts';
import { momentLines } from '../post-section-words.ts';
import { POSTS_WORDS } from '../posts-words.ts';
import { drawRun } from '../run-drawing.ts';
import { runSummary } from '../run-words.ts';
import type { ReportBlock } from './report.ts';
import type { ReportedFence } from './reported-fence.ts';

/** Seasons in which the deciding post is cut through: now, and in five and ten. */
const CUT_SEASONS = [1, 6, 11];

/** Posts as they stand; none where the records and what was found do not fit together. */
function outlookOf({ facts, forecast }: ReportedFence): readonly PostOutlook[] {
  try {
    return postOutlook(facts, Number(seasonOne(forecast).label.slice(0, 4)), CUT_SEASONS);
  } catch (error) {
    if (error instanceof RangeError) return [];
    throw error;
  }
}

/** The run with its posts, and the deciding one cut through now and in the seasons to come; nothing where there are none. */
export function postsBlocks(fence: ReportedFence, language: ChartLanguage): readonly ReportBlock[] {
  const { ref, units, facts, forecast } = fence;
  const posts = outlookOf(fence);
  const { decidingPosts } = judgedGroup(seasonOne(forecast));
  const deciding = posts.filter(({ number }) => decidingPosts.includes(number));
  const cut = deciding.find(({ condition }) => !condition.broken) ?? deciding[0];
  if (posts.length === 0) return [];
  const words = POSTS_WORDS[language];
  const view = {
    fenceRef: ref,
    runLengthM: facts.run.runLengthM,
    designGustMps: forecast.designGust.gustMps,
    posts,
    decidingPosts,
  };
  const shown = { units, language };
  return [
    { kind: 'heading', level: 2, text: words.runHeading },
    { kind: 'paragraph', text: runSummary(view, shown) },
    {
      kind: 'drawing',
      alt: runSummary(view, shown),
      svg: (widthPx, idPrefix) => drawRun(view, { ...shown, widthPx, idPrefix: `run-${idPrefix}` }),
    },
    ...(cut === undefined
      ? []
      : ([
          { kind: 'heading', level: 2, text: words.sectionHeading },
          { kind: 'paragraph', text: words.sectionLead(cut.number, deciding.length) },
          {
            kind: 'drawing',
            alt: cut.moments
              .map((moment) => `${moment.label}: ${momentLines(cut, moment, shown).join('; ')}.`)
              .join(' '),
            svg: (widthPx: number, idPrefix: string) =>
              drawPostSections(cut, { ...shown, widthPx, idPrefix: `section-${idPrefix}` }),
            caption: words.sectionCaption,
          },
        ] as const)),
  ];
}
