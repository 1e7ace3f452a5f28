import { createRoute, z } from '@hono/zod-openapi';
import { learnedHistory, learnedInForce } from '../../register/learned-store.ts';
import { isoUtc } from '../../service/clock.ts';
import {
  acceptLearning,
  learnFromRegister,
  planLearning,
  type RefusedAcceptance,
  revertLearning,
} from '../../service/learn-register.ts';
import { previewLearned } from '../../service/preview-learned.ts';
import type { AppParts } from '../../service/service.ts';
import type { PageContext } from '../access/visitor.ts';
import { answered } from './answered.ts';
import type { Api } from './api.ts';
import { apiProblem, problemAnswer } from './api-problem.ts';
import { idempotencyHeader, jsonAnswer, jsonBody, preview } from './api-schemas.ts';
import { acceptedSchema, learnedSchema, previewOf, revertedSchema, versionOf } from './learned-schemas.ts';
import { tokenName } from './token-name.ts';

const note = z.string().max(2000).default('').describe('kept beside it');

function refusalOf(refused: RefusedAcceptance): string {
  switch (refused.kind) {
    case 'not seen':
      return `the register has seen nothing of ${refused.keys.join(', ')}`;
    case 'too few':
      return refused.cells.length === 0
        ? 'nothing was seen yet'
        : `too little was seen of ${refused.cells.map(({ key }) => key).join(', ')}`;
    case 'in force already':
      return 'all of it is in force already';
  }
}

const refused = (context: PageContext, title: string, reason: string): never =>
  apiProblem(context, {
    status: 409,
    title,
    what: `${reason}; nothing was changed`,
    wayOut: 'GET /api/v1/learned says what was seen, how much is needed and what is in force',
  }) as never;

/** What the register has learned of rot paces and footings: looked at, accepted, taken back. Each walks the whole register, in chunks. */
export function addLearned(api: Api, { register, clock }: Pick<AppParts, 'register' | 'clock'>): void {
  const act = (context: PageContext, text: string) => ({
    at: isoUtc(clock()),
    by: tokenName(context),
    note: text.trim(),
  });

  api.openapi(
    createRoute({
      method: 'get',
      path: '/api/v1/learned',
      tags: ['Learning'],
      summary:
        'What the register has learned, set against the published values, and what is in force; walks every fence',
      responses: { 200: jsonAnswer(learnedSchema, 'by quantity') },
    }),
    async (context) => {
      const { cells, unread } = await learnFromRegister(register);
      const history = await learnedHistory(register.db);
      return answered(context, learnedSchema, {
        quantities: cells.map(({ held, ...cell }) => ({ ...cell, held: held && { ...held } })),
        unread,
        history: history.map((entry) =>
          entry.act === 'accepted' ? { ...entry, values: entry.values.map((value) => ({ ...value })) } : entry,
        ),
      });
    },
  );

  api.openapi(
    createRoute({
      method: 'post',
      path: '/api/v1/learned/accept',
      tags: ['Learning'],
      summary: 'Accepts what was learned as a new version: the next sweep forecasts with it; walks every fence',
      request: {
        headers: idempotencyHeader,
        body: jsonBody(
          z
            .object({
              only: z.array(z.string().min(1).max(200)).min(1).optional().describe('keys of quantities'),
              all: z.boolean().default(false).describe('true: every quantity of which enough was seen'),
              note,
              preview,
            })
            .refine(({ only, all }) => all !== (only !== undefined), 'say either `all: true`, or which by `only`')
            .openapi('LearningToAccept'),
        ),
      },
      responses: {
        200: jsonAnswer(acceptedSchema, 'the new version, and what it changes'),
        409: problemAnswer('nothing of it can be accepted'),
      },
    }),
    async (context) => {
      const { only = null, note: text, preview: onlyLook } = context.req.valid('json');
      if (onlyLook) {
        const { plan } = await planLearning(register, act(context, text), only);
        if (plan.kind !== 'planned') return refused(context, 'Not accepted', refusalOf(plan));
        const seen = await previewLearned(register, plan.version, clock);
        return answered(context, acceptedSchema, {
          applied: false,
          version: versionOf(plan.version),
          fences: seen.fences.length,
          preview: previewOf(seen),
        });
      }
      const { acceptance } = await acceptLearning(register, act(context, text), only);
      if (acceptance.kind !== 'accepted') return refused(context, 'Not accepted', refusalOf(acceptance));
      const { version, fences } = acceptance;
      return answered(context, acceptedSchema, { applied: true, version: versionOf(version), fences: fences.length });
    },
  );

  api.openapi(
    createRoute({
      method: 'post',
      path: '/api/v1/learned/revert',
      tags: ['Learning'],
      summary: 'Takes the version in force back: the one before holds again from the next sweep; walks every fence',
      request: {
        headers: idempotencyHeader,
        body: jsonBody(
          z
            .object({
              version: z
                .number()
                .int()
                .positive()
                .describe('number of the version that is in force, so that no other is taken back'),
              note,
              preview,
            })
            .openapi('LearningToRevert'),
        ),
      },
      responses: {
        200: jsonAnswer(revertedSchema, 'what was taken back, and what holds then'),
        409: problemAnswer('that version is not in force'),
      },
    }),
    async (context) => {
      const { version, note: text, preview: onlyLook } = context.req.valid('json');
      const now = await learnedInForce(register.db);
      if (now?.number !== version) {
        return refused(
          context,
          'Not taken back',
          now ? `version ${now.number} is in force, not ${version}` : 'no version is in force',
        );
      }
      if (onlyLook) {
        const inForce = await learnedInForce(register.db, version);
        const seen = await previewLearned(register, inForce, clock);
        return answered(context, revertedSchema, {
          applied: false,
          reverted: version,
          inForce: inForce && versionOf(inForce),
          fences: seen.fences.length,
          preview: previewOf(seen),
        });
      }
      const done = await revertLearning(register, act(context, text));
      if (!done) return refused(context, 'Not taken back', 'no version is in force');
      return answered(context, revertedSchema, {
        applied: true,
        reverted: done.reverted.number,
        inForce: done.inForce && versionOf(done.inForce),
        fences: done.fences.length,
      });
    },
  );
}
