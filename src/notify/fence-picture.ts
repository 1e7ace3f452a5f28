import { drawFenceYears } from '../drawing/fence-years.ts';
import type { FenceNews } from './fence-news.ts';
import type { MessageLanguage, MessagePicture, NoticedFence } from './message-facts.ts';
import { wordsOf } from './words-of.ts';

const WIDTH_PX = 560;
const HEIGHT_PX = 360;

/** The picture of a fence's years for a message; `index` keeps content ids apart within it. */
export function fencePicture(
  fence: NoticedFence,
  news: FenceNews,
  language: MessageLanguage,
  index: number,
): MessagePicture {
  return {
    cid: `fence-years-${index}@stormpale`,
    svg: drawFenceYears(fence.forecast, {
      units: fence.units,
      language,
      widthPx: WIDTH_PX,
      heightPx: HEIGHT_PX,
      idPrefix: `fence-years-${index}`,
    }),
    alt: wordsOf(language).pictureAlt(news),
    widthPx: WIDTH_PX,
  };
}
