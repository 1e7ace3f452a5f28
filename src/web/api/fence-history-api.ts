import { createRoute, z } from '@hono/zod-openapi';
import { listWithdrawals } from '../../register/evidence-withdrawal.ts';
import { listToldNotices } from '../../register/fence-history.ts';
import { recordsWhereIn } from '../../register/record-store.ts';
import type { AppParts } from '../../service/service.ts';
import { loadFenceDetail } from '../fences/fence-detail.ts';
import { answered } from './answered.ts';
import type { Api } from './api.ts';
import { apiProblem, problemAnswer } from './api-problem.ts';
import { deepSchema, jsonAnswer, refParam } from './api-schemas.ts';
import { notAFence } from './fences-api.ts';

const KINDS = ['inspection', 'storm', 'works', 'standing', 'notice', 'visit', 'withdrawal'] as const;

const eventSchema = z
  .object({
    day: z.string().describe('the day at the fence; of what the register noted, the day in UTC'),
    kind: z.enum(KINDS),
    what: deepSchema.describe(
      'an inspection with its `readings`, a storm outcome, works: the record; a turn of the standing, a notice with what became of it, a visit, evidence that was taken back: as the register noted it',
    ),
  })
  .openapi('FenceEvent');
const historySchema = z.object({ rows: z.array(eventSchema) }).openapi('FenceHistory');

type Event = z.infer<typeof eventSchema>;

/** What happened to a fence, and what is booked. */
export function addFenceHistory(api: Api, { register }: Pick<AppParts, 'register'>): void {
  api.openapi(
    createRoute({
      method: 'get',
      path: '/api/v1/fences/{ref}/history',
      tags: ['Fences'],
      summary: 'What was seen of a fence, done to it, found and told of it, and what is booked, the newest first',
      request: { params: refParam },
      responses: {
        200: jsonAnswer(historySchema, 'everything of that one fence'),
        404: problemAnswer('no such fence'),
      },
    }),
    async (context) => {
      const { ref } = context.req.valid('param');
      const detail = await loadFenceDetail(register, ref);
      if (!detail) return apiProblem(context, notAFence(ref)) as never;
      const [works, notices, ...withdrawals] = await Promise.all([
        recordsWhereIn(register.db, 'works', 'fence_ref', [ref]),
        listToldNotices(register, ref),
        listWithdrawals(register.db, ref, 'inspection'),
        listWithdrawals(register.db, ref, 'outcome'),
      ]);
      const { evidence, standings, visits } = detail;
      const event = (kind: Event['kind'], day: string, what: object): Event => ({
        day: day.slice(0, 10),
        kind,
        what: { ...what },
      });
      const events = [
        ...evidence.inspections.map(({ record, readings }) => event('inspection', record.day, { ...record, readings })),
        ...evidence.outcomes.map((outcome) => event('storm', outcome.day, outcome)),
        ...works.map((done) => event('works', done.day, done)),
        ...standings.map((turn) => event('standing', turn.at, turn)),
        ...notices.map((notice) => event('notice', notice.decidedAt, notice)),
        ...visits.map((visit) => event('visit', visit.firstDay, visit)),
        ...withdrawals.flat().map((withdrawal) => event('withdrawal', withdrawal.at, withdrawal)),
      ];
      const rows = events
        .map((each, index) => ({ each, index }))
        .sort((a, b) => (a.each.day < b.each.day ? 1 : a.each.day > b.each.day ? -1 : b.index - a.index))
        .map(({ each }) => each);
      return answered(context, historySchema, { rows });
    },
  );
}
