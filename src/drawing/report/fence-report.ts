import type { ChartLanguage } from '../chart-words.ts';
import { fenceFactList } from './fence-fact-list.ts';
import {
  cautionsBlock,
  checkerBlocks,
  holdsTable,
  inspectionBlocks,
  risksSentence,
  seasonsTable,
  stormBlocks,
  unknownBlocks,
  worksBlocks,
  yearsDrawing,
} from './fence-sections.ts';
import { fenceSentences } from './fence-sentences-in.ts';
import { fenceReportWords } from './fence-words-in.ts';
import { postsBlocks } from './posts-sections.ts';
import { paperFor, type Report, type ReportBlock } from './report.ts';
import { footParts } from './report-words.ts';
import type { ReportedFence } from './reported-fence.ts';
import { foundSentences } from './seen-texts.ts';

/** What every report needs beside its contents. */
export interface ReportMaking {
  readonly language: ChartLanguage;
  /** Name of the office that makes it. */
  readonly author: string;
  /** The moment, ISO 8601 in UTC, and the day it is at the site. */
  readonly madeAt: string;
  readonly madeOn: string;
  /** The moment as it is read there, `2027-05-31 09:05 CDT`, and the name of that zone, by which every day of the report goes. */
  readonly madeThere: string;
  readonly timeZone: string;
}

/** Owners in a line under the title; nothing where there are none. */
export const ownersLine = (owners: readonly string[], language: ChartLanguage): readonly string[] =>
  owners.length === 0 ? [] : [fenceReportWords(language).ownedBy(owners.join(language === 'es' ? ' y ' : ' and '))];

/** What was found at its posts and not mended, first of all. */
export function foundBlocks({ forecast }: ReportedFence, language: ChartLanguage): readonly ReportBlock[] {
  return foundSentences(forecast.found, language).map((text) => ({ kind: 'paragraph', text, look: 'strong' }));
}

/** The report of one fence: what it holds, until when, on what that rests. */
export function fenceReport(fence: ReportedFence, making: ReportMaking): Report {
  const { language } = making;
  const words = fenceReportWords(language);
  const { breaking, rest } = fenceSentences(fence, language);
  return {
    language,
    paper: paperFor(fence.units),
    title: words.fenceTitle(fence.ref),
    under: [`${fence.site.name}, ${fence.site.place}`, ...ownersLine(fence.owners, language)],
    subject: words.fenceSubject(fence.ref, fence.site.name),
    author: making.author,
    madeAt: making.madeAt,
    foot: footParts(
      { madeOn: making.madeOn, modelVersion: fence.forecast.modelVersion, asOf: making.madeOn },
      language,
    ),
    blocks: [
      ...foundBlocks(fence, language),
      { kind: 'paragraph', text: breaking, look: 'lead' },
      ...rest.map((text): ReportBlock => ({ kind: 'paragraph', text })),
      yearsDrawing(fence, language),
      ...postsBlocks(fence, language),
      { kind: 'heading', level: 2, text: words.holds },
      holdsTable(fence, language),
      { kind: 'paragraph', text: risksSentence(fence, language) },
      { kind: 'heading', level: 2, text: words.seasons },
      seasonsTable(fence, language),
      { kind: 'heading', level: 2, text: words.known },
      { kind: 'facts', facts: fenceFactList(fence, language) },
      ...unknownBlocks(fence, language),
      ...inspectionBlocks(fence, language),
      ...stormBlocks(fence, language),
      ...worksBlocks(fence, language),
      ...checkerBlocks(fence, language),
      { kind: 'heading', level: 2, text: words.computed },
      { kind: 'paragraph', text: words.computedBy(fence.forecast.modelVersion, fence.inputHash), look: 'small' },
      cautionsBlock(language),
    ],
  };
}
