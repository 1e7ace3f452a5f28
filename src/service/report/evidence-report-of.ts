import { DateTime } from 'luxon';
import type { ChartLanguage } from '../../drawing/chart-words.ts';
import { type EvidenceParts, evidenceReport, type ReportedNotice } from '../../drawing/report/evidence-report.ts';
import { listWithdrawals } from '../../register/evidence-withdrawal.ts';
import { listFenceAnswers, listToldNotices, type ToldNotice } from '../../register/told-notices.ts';
import { moneyFromAmount } from '../../season/money/money.ts';
import { plannedWorks } from '../../season/planned-works.ts';
import { SHIPPED_CATALOGUE } from '../../season/works-catalogue.ts';
import { worksCost } from '../../season/works-cost.ts';
import type { CalendarDay } from '../../units/calendar-day.ts';
import { dayInZone } from '../clock.ts';
import { currencyAsked } from '../currency-asked.ts';
import { loadCatalogue } from '../season-register.ts';
import { type LoadedFence, loadReportedFence } from './load-reported-fence.ts';
import { makingOf, type ReportParts, type ReportResult } from './report-result.ts';

/** What an evidence file is asked for. */
export interface EvidenceRequest {
  readonly ref: string;
  /** The day as of which it is believed; today where null. */
  readonly on: CalendarDay | null;
  /** The first owner's language where null. */
  readonly language: ChartLanguage | null;
  /** The register's where null. */
  readonly currency: string | null;
}

/** How a notice had been told by a moment. */
function toldBy({ channel, state, sentAt }: ToldNotice, until: string, timeZone: string): ReportedNotice['told'] {
  if (channel === null || state === null) return 'unwritten';
  if (sentAt !== null && sentAt <= until) return { channel, day: dayInZone(DateTime.fromISO(sentAt), timeZone) };
  if (state === 'parked' || state === 'cancelled') return state;
  return channel === 'letter' ? 'to print' : 'under way';
}

async function rebuildOf(
  { register }: ReportParts,
  { fence, on }: LoadedFence,
  currency: string,
): Promise<EvidenceParts['rebuild']> {
  const catalogue = await loadCatalogue(register.db);
  const { build, source } = catalogue.rebuild;
  const wish = plannedWorks({ kind: 'rebuild', facts: fence.facts, day: on, posts: 'all', build, ref: '~ahead 1' });
  if (wish.kind === 'no sense') return null;
  const { price } = worksCost([{ kind: 'rebuild', postCount: wish.postCount }], catalogue);
  return {
    price: moneyFromAmount(price),
    currency,
    posts: wish.postCount,
    isShipped: source === SHIPPED_CATALOGUE.rebuild.source,
  };
}

/** The evidence file of a fence as believed on a day. */
export async function evidenceReportOf(parts: ReportParts, request: EvidenceRequest): Promise<ReportResult> {
  const loaded = await loadReportedFence(parts, request.ref, request.on);
  if (loaded.kind !== 'fence') return loaded;
  const { register } = parts;
  const { fence, on, until, today, parties } = loaded;
  const { timeZone } = parties.site;
  const withdrawn = [
    ...(await listWithdrawals(register.db, request.ref, 'inspection')),
    ...(await listWithdrawals(register.db, request.ref, 'outcome')),
  ];
  const notices = (await listToldNotices(register, request.ref)).filter(({ decidedAt }) => decidedAt <= until);
  const answers = (await listFenceAnswers(register, request.ref)).filter(({ at }) => at <= until);
  const records = [...fence.inspections, ...fence.storms, ...fence.works];
  const making = await makingOf(parts, { language: request.language ?? parties.owners[0]?.language ?? 'en', timeZone });
  return {
    kind: 'report',
    report: evidenceReport(
      {
        fence,
        on,
        isPast: on < today,
        enteredLater: records.filter(({ enteredOn }) => enteredOn !== null && enteredOn > on).length,
        withdrawnSince: withdrawn.filter(({ record }) => String(record.day) <= on).length,
        notices: notices.map((notice) => ({
          decidedOn: dayInZone(DateTime.fromISO(notice.decidedAt), timeZone),
          matter: notice.matter,
          owner: notice.ownerName,
          told: toldBy(notice, until, timeZone),
        })),
        answers: answers.map(({ at, kind, ownerName }) => ({
          on: dayInZone(DateTime.fromISO(at), timeZone),
          kind,
          owner: ownerName,
        })),
        rebuild: await rebuildOf(parts, loaded, await currencyAsked(register.db, request.currency)),
      },
      making,
    ),
  };
}
