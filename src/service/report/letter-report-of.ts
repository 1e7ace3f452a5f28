import { letterParts } from '../../drawing/report/letter-parts.ts';
import type { Report } from '../../drawing/report/report.ts';
import { paperFor } from '../../drawing/report/report.ts';
import { footParts } from '../../drawing/report/report-words.ts';
import { loadOutboxBytes } from '../../register/outbox.ts';
import { siteOfMessage } from '../../register/site-of-message.ts';
import { makingOf, type ReportParts, type ReportResult } from './report-result.ts';

/** A letter of the outbox as a report, word for word as it was written. */
export async function letterReportOf(parts: ReportParts, id: number): Promise<ReportResult> {
  const message = await loadOutboxBytes(parts.register, id);
  if (!message) return { kind: 'not found', what: `message ${id}`, nearest: null };
  if (message.channel !== 'letter')
    return { kind: 'refused', reason: `message ${id} is a mail; only letters are printed` };
  const site = await siteOfMessage(parts.register, id);
  const { language, title, blocks } = letterParts(new TextDecoder().decode(message.raw));
  const making = await makingOf(parts, { language, timeZone: site?.timeZone ?? 'UTC' });
  const writtenOn = site?.writtenAt.slice(0, 10) ?? making.madeOn;
  const report: Report = {
    language,
    paper: paperFor(site?.units ?? 'us'),
    title,
    under: [],
    subject: title,
    author: making.author,
    madeAt: site?.writtenAt ?? making.madeAt,
    foot: footParts({ madeOn: writtenOn, modelVersion: null, asOf: writtenOn }, language),
    blocks,
  };
  return { kind: 'report', report };
}
