import type { MiddlewareHandler } from 'hono';
import type { AppParts } from '../../service/service.ts';
import type { PageEnv } from '../access/visitor.ts';
import { addAhead } from './ahead-api.ts';
import { addAnswers } from './answers-api.ts';
import { type Api, newApi } from './api.ts';
import { apiProblem } from './api-problem.ts';
import { addCalendars } from './calendars-api.ts';
import { addFenceHistory } from './fence-history-api.ts';
import { addFences } from './fences-api.ts';
import { addHeld } from './held-api.ts';
import { keyedWrites } from './keyed-writes.ts';
import { addLearned } from './learned-api.ts';
import { addOffice } from './office-api.ts';
import { addOutbox } from './outbox-api.ts';
import { addOwners } from './owners-api.ts';
import { addPhotos } from './photos-api.ts';
import { addPlanAccepting } from './plan-accept-api.ts';
import { addPlans } from './plans-api.ts';
import { addQuotes } from './quotes-api.ts';
import { addRecordWrites } from './record-writes-api.ts';
import { addRecords } from './records-api.ts';
import { addRegister } from './register-api.ts';
import { addRelease } from './release-api.ts';
import { addReports } from './reports-api.ts';
import { addSeason } from './season-api.ts';
import { addVisitChanges } from './visit-changes-api.ts';
import { addVisitDone } from './visit-done-api.ts';
import { addVisitWeeks } from './visit-weeks-api.ts';
import { addVisits } from './visits-api.ts';
import { addWithdrawals } from './withdrawals-api.ts';

const DESCRIPTION = `What the office's pages do with the register, for programs. Show a token as \`Authorization: Bearer TOKEN\`
(\`stormpale token new\`). Numbers are in SI units, named in every field; days are \`YYYY-MM-DD\`, moments ISO 8601 in UTC. Lists are
read page after page: send \`next\` of one as \`cursor\` of the following. A write may carry an \`Idempotency-Key\`. What went wrong is said as
\`application/problem+json\` (RFC 9457), with the way out. Capacities are planning estimates, no structural certification: show the
cautions that come with them.`;

/** What programs can do, concept by concept, in the order of the document. */
const OPERATIONS: readonly ((api: Api, parts: AppParts) => void)[] = [
  addFences,
  addFenceHistory,
  addAhead,
  addRecords,
  addRecordWrites,
  addWithdrawals,
  addVisits,
  addVisitChanges,
  addVisitDone,
  addVisitWeeks,
  addPhotos,
  addPlans,
  addPlanAccepting,
  addSeason,
  addCalendars,
  addQuotes,
  addOwners,
  addAnswers,
  addHeld,
  addRelease,
  addOffice,
  addOutbox,
  addReports,
  addLearned,
  addRegister,
];

/** Refuses a body that is not said to be JSON. */
const onlyJson: MiddlewareHandler<PageEnv> = async (context, next) => {
  const { method } = context.req;
  const isJson = /^application\/json\b/i.test(context.req.header('content-type') ?? '');
  const isEmpty = context.req.header('content-type') === undefined && (await context.req.text()) === '';
  if (method === 'GET' || method === 'HEAD' || isJson || isEmpty) return next();
  return apiProblem(context, {
    status: 415,
    title: 'JSON is wanted',
    what: 'the body is not said to be JSON; nothing was done',
    wayOut: 'send JSON with Content-Type: application/json',
  });
};

/** The routes for programs, under `/api/v1`, and the document that describes them. */
export function apiApp(parts: AppParts): Api {
  const api = newApi();
  api.use('/api/*', onlyJson);
  api.use('/api/*', keyedWrites(parts));
  for (const add of OPERATIONS) add(api, parts);
  api.openAPIRegistry.registerComponent('securitySchemes', 'token', { type: 'http', scheme: 'bearer' });
  api.doc31('/api/v1/openapi.json', {
    openapi: '3.1.0',
    info: { title: 'Stormpale', version: '1', description: DESCRIPTION },
    security: [{ token: [] }],
  });
  return api;
}
