import { createRoute, z } from '@hono/zod-openapi';
import { OWNER_MATTERS } from '../../notify/matter-rules.ts';
import { countHeld, type HeldFilter, releaseHeldNotices } from '../../register/held-notices.ts';
import { readRecord } from '../../register/record-store.ts';
import { isoUtc } from '../../service/clock.ts';
import { coveringSentence, LONGEST_SENTENCE, previewRelease } from '../../service/preview-release.ts';
import type { AppParts } from '../../service/service.ts';
import { writeMessages } from '../../service/sweep-register.ts';
import { answered } from './answered.ts';
import type { Api } from './api.ts';
import { apiProblem, notThere, problemAnswer } from './api-problem.ts';
import { idempotencyHeader, jsonAnswer, jsonBody, preview } from './api-schemas.ts';
import { noOwner } from './owners-api.ts';

const sentence = z
  .string()
  .max(LONGEST_SENTENCE)
  .describe('words of the office, put between the greeting and the facts');

const releaseSchema = z
  .object({
    all: z.boolean().default(false).describe('true: everything that is held'),
    matter: z.enum(OWNER_MATTERS).optional(),
    owner: z.string().optional().describe('ref of an owner'),
    ids: z.array(z.number().int().positive()).min(1).max(10_000).optional(),
    upTo: z
      .number()
      .int()
      .positive()
      .optional()
      .describe('the highest id that was looked at: what came after it stays held'),
    sentence: sentence.optional(),
    preview,
  })
  .refine(
    ({ all, matter, owner, ids }) => all !== (matter !== undefined || owner !== undefined || ids !== undefined),
    'say either `all`, or which: by matter, owner or ids',
  )
  .openapi('Release');

const count = z.number().int();
const releasedSchema = z
  .object({
    applied: z.boolean().describe('false for a preview'),
    notices: count,
    owners: count,
    mails: count.optional().describe('that were written'),
    letters: count.optional().describe('that were written'),
    failures: z
      .array(z.object({ ownerRef: z.string(), message: z.string() }))
      .optional()
      .describe('messages that could not be written yet and are tried again'),
  })
  .openapi('Released');

const previewedSchema = z
  .object({
    rows: z.array(
      z.object({
        subject: z.string(),
        channel: z.enum(['mail', 'letter']),
        to: z.string().nullable().describe('address of a mail'),
        notices: count,
        html: z.string(),
      }),
    ),
  })
  .openapi('PreviewedMessages');

/** The releasing of held notices, and how their messages would read. */
export function addRelease(
  api: Api,
  { register, clock, config }: Pick<AppParts, 'register' | 'clock' | 'config'>,
): void {
  api.openapi(
    createRoute({
      method: 'get',
      path: '/api/v1/notices/preview',
      tags: ['Notices'],
      summary: 'The messages that an owner would get if what is held were released now, as they would read',
      request: {
        query: z.object({ owner: z.string().min(1).describe('ref of an owner'), sentence: sentence.default('') }),
      },
      responses: {
        200: jsonAnswer(previewedSchema, 'none where nothing of it is so any more'),
        404: problemAnswer('no such owner'),
      },
    }),
    async (context) => {
      const { owner, sentence: text } = context.req.valid('query');
      if (!(await readRecord(register.db, 'owners', owner))) return apiProblem(context, noOwner(owner)) as never;
      const covering = coveringSentence(text);
      const rows = await previewRelease(
        register,
        { ownerRef: owner, ids: null, covering: 'value' in covering ? covering.value : null },
        { now: clock, sender: config },
      );
      return answered(context, previewedSchema, { rows });
    },
  );

  api.openapi(
    createRoute({
      method: 'post',
      path: '/api/v1/notices/release',
      tags: ['Notices'],
      summary: 'Releases held notices; their messages are written at once, what is no longer so is made void',
      request: { headers: idempotencyHeader, body: jsonBody(releaseSchema) },
      responses: {
        200: jsonAnswer(releasedSchema, 'how many notices, owners, mails and letters'),
        404: problemAnswer('none of these is held'),
      },
    }),
    async (context) => {
      const { matter, owner, ids, upTo, sentence: text = '', preview: onlyLook } = context.req.valid('json');
      const filter: HeldFilter = {
        ...(matter === undefined ? {} : { matter }),
        ...(owner === undefined ? {} : { ownerRef: owner }),
        ...(ids === undefined ? {} : { ids }),
        ...(upTo === undefined ? {} : { upTo }),
      };
      const covering = coveringSentence(text);
      const release = { at: isoUtc(clock()), covering: 'value' in covering ? covering.value : null };
      const { notices, owners } = onlyLook
        ? await countHeld(register, filter)
        : await releaseHeldNotices(register, filter, release);
      if (notices === 0) {
        const problem = notThere('none of these is held', 'GET /api/v1/notices/held lists what is');
        return apiProblem(context, problem) as never;
      }
      if (onlyLook) return answered(context, releasedSchema, { applied: false, notices, owners });
      const written = await writeMessages(register, { now: clock, sender: config });
      return answered(context, releasedSchema, { applied: true, notices, owners, ...written });
    },
  );
}
