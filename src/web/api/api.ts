import { OpenAPIHono } from '@hono/zod-openapi';
import type { PageEnv } from '../access/visitor.ts';
import { apiProblem } from './api-problem.ts';

/** The part of the service that programs talk to. */
export type Api = OpenAPIHono<PageEnv>;

/** An empty one: what does not fit its schema is answered field by field. */
export const newApi = (): Api =>
  new OpenAPIHono<PageEnv>({
    defaultHook: (result, context) => {
      if (result.success) return undefined;
      return apiProblem(context, {
        status: result.target === 'json' ? 422 : 400,
        title: 'That cannot be taken',
        what: `${result.target === 'json' ? 'the body' : `the ${result.target}`} does not fit; nothing was done`,
        wayOut: 'correct what the faults name; GET /api/v1/openapi.json says what each route takes',
        faults: result.error.issues.map(({ path, message }) => {
          const [row] = path.filter((part) => typeof part === 'number');
          const field = path.filter((part) => typeof part === 'string').join('.');
          return { ...(row === undefined ? {} : { row }), field, reason: message };
        }),
      });
    },
  });
