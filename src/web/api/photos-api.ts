import { createRoute, z } from '@hono/zod-openapi';
import { readRecord } from '../../register/record-store.ts';
import { photosAfter, readVisitPhoto } from '../../register/visit-photo-store.ts';
import { readVisit } from '../../register/visit-store.ts';
import type { AppParts } from '../../service/service.ts';
import type { PageContext } from '../access/visitor.ts';
import { answered } from './answered.ts';
import type { Api } from './api.ts';
import { apiProblem, notThere, problemAnswer } from './api-problem.ts';
import { idParam, jsonAnswer, pageOf, pageQuery, refParam } from './api-schemas.ts';
import { BAD_CURSOR, nextAfter, readOn } from './cursor.ts';
import { notAFence } from './fences-api.ts';
import { noVisit, uidParam } from './visit-answers.ts';

const MEDIA_TYPES = ['image/jpeg', 'image/png', 'image/webp'] as const;

const photosSchema = pageOf(
  z
    .object({
      id: z.number().int(),
      uid: z.string().describe('of the visit'),
      fenceRef: z.string(),
      post: z.number().int().nullable().describe('null: of the fence as a whole'),
      takenAt: z.string().describe("by the phone's clock"),
      storedAt: z.string(),
      takenBy: z.string(),
      mediaType: z.enum(MEDIA_TYPES),
      sha256: z.string().describe('of its bytes, in hexadecimal digits'),
    })
    .openapi('Photo'),
);
const photosAnswers = {
  200: jsonAnswer(photosSchema, 'a page of pictures, without their bytes'),
  400: problemAnswer('the question makes no sense'),
};

/** The pictures that crews took on visits: listed, and fetched one by one. */
export function addPhotos(api: Api, { register }: Pick<AppParts, 'register'>): void {
  const { db } = register;
  const list = async (
    context: PageContext,
    of: { readonly fenceRef?: string; readonly uid?: string },
    { limit, cursor }: { readonly limit: number; readonly cursor?: string | undefined },
  ): Promise<never> => {
    const place = readOn(cursor, 1);
    if (place.kind === 'no cursor') return apiProblem(context, BAD_CURSOR) as never;
    const rows = await photosAfter(db, of, { after: Number(place.after?.[0] ?? 0), limit });
    return answered(context, photosSchema, { rows, next: nextAfter(rows, limit, ({ id }) => [id]) });
  };

  api.openapi(
    createRoute({
      method: 'get',
      path: '/api/v1/visits/{uid}/photos',
      tags: ['Visits'],
      summary: 'The pictures that were taken on a visit, in the order in which they came',
      request: { params: uidParam, query: z.object(pageQuery) },
      responses: { ...photosAnswers, 404: problemAnswer('no such visit') },
    }),
    async (context) => {
      const { uid } = context.req.valid('param');
      if (!(await readVisit(db, uid))) return apiProblem(context, noVisit(uid)) as never;
      return list(context, { uid }, context.req.valid('query'));
    },
  );

  api.openapi(
    createRoute({
      method: 'get',
      path: '/api/v1/fences/{ref}/photos',
      tags: ['Fences'],
      summary: 'The pictures that were taken of a fence, in the order in which they came',
      request: { params: refParam, query: z.object(pageQuery) },
      responses: { ...photosAnswers, 404: problemAnswer('no such fence') },
    }),
    async (context) => {
      const { ref } = context.req.valid('param');
      if (!(await readRecord(db, 'fences', ref))) return apiProblem(context, notAFence(ref)) as never;
      return list(context, { fenceRef: ref }, context.req.valid('query'));
    },
  );

  const bytes = { schema: { type: 'string' as const, contentEncoding: 'binary' } };
  api.openapi(
    createRoute({
      method: 'get',
      path: '/api/v1/photos/{id}',
      tags: ['Visits'],
      summary: 'The bytes of a picture',
      request: { params: idParam },
      responses: {
        200: { description: 'as it was taken', content: Object.fromEntries(MEDIA_TYPES.map((type) => [type, bytes])) },
        404: problemAnswer('no such picture'),
      },
    }),
    async (context) => {
      const { id } = context.req.valid('param');
      const found = await readVisitPhoto(db, id);
      if (!found) {
        const problem = notThere(`there is no picture ${id}`, 'GET /api/v1/visits/{uid}/photos lists those of a visit');
        return apiProblem(context, problem);
      }
      return context.body(new Uint8Array(found.bytes), 200, { 'Content-Type': found.photo.mediaType });
    },
  );
}
