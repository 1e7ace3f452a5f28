import { createRoute, z } from '@hono/zod-openapi';
import { readSettings, SETTING_NAMES, settingFromText, writeSettings } from '../../register/settings-store.ts';
import { isoUtc } from '../../service/clock.ts';
import type { AppParts } from '../../service/service.ts';
import type { Api } from './api.ts';
import { apiProblem, problemAnswer } from './api-problem.ts';
import { deepSchema, idempotencyHeader, jsonAnswer, jsonBody } from './api-schemas.ts';

const NAMES = SETTING_NAMES as readonly [string, ...string[]];
const settingsSchema = z.record(z.enum(NAMES), z.union([z.string(), z.number(), z.null()])).openapi('Settings');

const sweepSchema = z
  .object({
    progress: deepSchema.nullable().describe('of the one at work; null where none is'),
    lastFinished: z
      .looseObject({
        id: z.number().int(),
        modelVersion: z.string(),
        startedAt: z.string(),
        finishedAt: z.string().nullable(),
      })
      .nullable(),
    failures: z.array(deepSchema).describe('fences that the last one could not forecast, and why'),
    nextAt: z.string().describe('when the next is due'),
  })
  .openapi('SweepStatus');

/** What holds for the whole register: its settings and its last sweep. */
export function addRegister(api: Api, { register, clock, view }: Pick<AppParts, 'register' | 'clock' | 'view'>): void {
  api.openapi(
    createRoute({
      method: 'get',
      path: '/api/v1/settings',
      tags: ['Register'],
      summary: 'The settings of the register',
      responses: { 200: jsonAnswer(settingsSchema, 'every setting with its value') },
    }),
    async (context) => context.json({ ...(await readSettings(register.db)) } as never, 200),
  );

  api.openapi(
    createRoute({
      method: 'patch',
      path: '/api/v1/settings',
      tags: ['Register'],
      summary: 'Sets some settings and leaves the others',
      request: {
        headers: idempotencyHeader,
        body: jsonBody(z.partialRecord(z.enum(NAMES), z.union([z.string(), z.number()])).openapi('SettingChanges')),
      },
      responses: {
        200: jsonAnswer(settingsSchema, 'every setting with its value'),
        422: problemAnswer('a value is refused: nothing was set'),
      },
    }),
    async (context) => {
      const changes = context.req.valid('json');
      const checked = Object.entries(changes).map(([name, value]) => {
        const setting = SETTING_NAMES.find((each) => each === name)!;
        return { name, value, ...settingFromText(setting, String(value)) };
      });
      const faults = checked.flatMap((each) =>
        'reason' in each ? [{ field: each.name, value: each.value, reason: each.reason }] : [],
      );
      if (faults.length > 0) {
        return apiProblem(context, {
          status: 422,
          title: 'A setting is refused',
          what: 'nothing was set',
          wayOut: 'correct what the faults name',
          faults,
        }) as never;
      }
      const values = Object.fromEntries(checked.map(({ name, value }) => [name, value]));
      await writeSettings(register.db, values, isoUtc(clock()));
      return context.json({ ...(await readSettings(register.db)) } as never, 200);
    },
  );

  api.openapi(
    createRoute({
      method: 'get',
      path: '/api/v1/sweep',
      tags: ['Register'],
      summary: 'Where the sweep stands',
      responses: { 200: jsonAnswer(sweepSchema, 'the last one, the one at work, and when the next is due') },
    }),
    async (context) => context.json({ ...(await view.sweepStatus()) } as never, 200),
  );

  api.openapi(
    createRoute({
      method: 'post',
      path: '/api/v1/sweep',
      tags: ['Register'],
      summary: 'Begins a sweep, or joins the one at work; ask GET /api/v1/sweep how far it is',
      request: { headers: idempotencyHeader },
      responses: {
        202: jsonAnswer(z.object({ begun: z.literal(true) }), 'it is at work'),
        409: problemAnswer('nothing sweeps here'),
      },
    }),
    async (context) => {
      if (view.begin('sweep')) return context.json({ begun: true as const }, 202);
      return apiProblem(context, {
        status: 409,
        title: 'Nothing sweeps here',
        what: 'the service is closing; no sweep was begun',
        wayOut: 'ask again when it runs',
      }) as never;
    },
  );
}
