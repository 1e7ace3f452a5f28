import { createRoute, z } from '@hono/zod-openapi';
import { withdrawInspection } from '../../register/evidence-withdrawal.ts';
import { readSettings, SETTING_NAMES, settingFromText, writeSettings } from '../../register/settings-store.ts';
import { isoUtc } from '../../service/clock.ts';
import type { AppParts } from '../../service/service.ts';
import type { Api } from './api.ts';
import { apiProblem, notThere, problemAnswer } from './api-problem.ts';
import { deepSchema, idempotencyHeader, jsonAnswer, jsonBody } from './api-schemas.ts';
import { tokenName } from './token-name.ts';

const NAMES = SETTING_NAMES as readonly [string, ...string[]];

/** What holds for the whole register: its settings, its last sweep, and the taking back of an inspection. */
export function addRegister(api: Api, { register, clock, view }: AppParts): void {
  api.openapi(
    createRoute({
      method: 'get',
      path: '/api/v1/settings',
      tags: ['Register'],
      summary: 'The settings of the register',
      responses: { 200: jsonAnswer(deepSchema, 'every setting with its value') },
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
        200: jsonAnswer(deepSchema, 'every setting with its value'),
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
      responses: { 200: jsonAnswer(deepSchema, 'the last one, the one at work, and when the next is due') },
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

  api.openapi(
    createRoute({
      method: 'post',
      path: '/api/v1/inspections/withdraw',
      tags: ['Register'],
      summary: 'Takes an inspection back with its readings; what it said is kept with the reason',
      request: {
        headers: idempotencyHeader,
        body: jsonBody(z.object({ ref: z.string().min(1), because: z.string().trim().min(1).max(2000) })),
      },
      responses: {
        200: jsonAnswer(deepSchema, 'what was withdrawn'),
        404: problemAnswer('no such inspection'),
      },
    }),
    async (context) => {
      const { ref, because } = context.req.valid('json');
      const act = { because, by: tokenName(context), at: isoUtc(clock()) };
      const withdrawal = await withdrawInspection(register, ref, act);
      if (withdrawal) return context.json({ ...withdrawal } as never, 200);
      const problem = notThere(
        `there is no inspection ${JSON.stringify(ref)}`,
        'GET /api/v1/records/inspections lists them; nothing was withdrawn',
      );
      return apiProblem(context, problem) as never;
    },
  );
}
