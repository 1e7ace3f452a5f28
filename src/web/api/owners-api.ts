import { createRoute, z } from '@hono/zod-openapi';
import { MATTER_GROUPS } from '../../notify/matter-groups.ts';
import { readOwnerPreferences } from '../../register/owner-preference-store.ts';
import { readRecord } from '../../register/record-store.ts';
import { EVERYTHING } from '../../service/owner-preferences.ts';
import type { AppParts } from '../../service/service.ts';
import { answered } from './answered.ts';
import type { Api } from './api.ts';
import { type ApiProblem, apiProblem, notThere, problemAnswer } from './api-problem.ts';
import { dayGiven, jsonAnswer, refParam } from './api-schemas.ts';

/** That an owner is not there. */
export const noOwner = (ref: string): ApiProblem =>
  notThere(`there is no owner ${JSON.stringify(ref)}`, 'GET /api/v1/records/owners lists them');

const preferencesSchema = z
  .object({
    ownerRef: z.string(),
    language: z.enum(['en', 'es']),
    groups: z
      .array(z.object({ group: z.enum(MATTER_GROUPS), told: z.boolean() }))
      .describe('kinds of news, and whether the owner is written about them'),
    pausedUntil: dayGiven.nullable().describe('last day of a pause in which nothing but danger is told'),
    hasChosen: z.boolean().describe('false where the owner never said anything: then everything is told'),
  })
  .openapi('OwnerPreferences');

/** What owners want to be written about. They say so by their links; what they said is among the answers. */
export function addOwners(api: Api, { register }: Pick<AppParts, 'register'>): void {
  api.openapi(
    createRoute({
      method: 'get',
      path: '/api/v1/owners/{ref}/preferences',
      tags: ['Owners'],
      summary: 'What an owner wants to be written about, and in which language',
      request: { params: refParam },
      responses: { 200: jsonAnswer(preferencesSchema, 'as it is now'), 404: problemAnswer('no such owner') },
    }),
    async (context) => {
      const { ref } = context.req.valid('param');
      const owner = await readRecord(register.db, 'owners', ref);
      if (!owner) return apiProblem(context, noOwner(ref)) as never;
      const chosen = await readOwnerPreferences(register.db, ref);
      const { muted, pausedUntil } = chosen ?? EVERYTHING;
      return answered(context, preferencesSchema, {
        ownerRef: ref,
        language: owner.language,
        groups: MATTER_GROUPS.map((group) => ({ group, told: !muted.includes(group) })),
        pausedUntil,
        hasChosen: chosen !== null,
      });
    },
  );
}
