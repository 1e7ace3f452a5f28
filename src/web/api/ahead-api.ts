import { createRoute, z } from '@hono/zod-openapi';
import { cautionsIn } from '../../drawing/cautions.ts';
import { CATALOGUE_KINDS } from '../../register/catalogue-record.ts';
import { cents } from '../../season/money/money.ts';
import { currencyAsked } from '../../service/currency-asked.ts';
import { compareAll } from '../../service/fence-ahead.ts';
import { fenceQuote } from '../../service/fence-quote.ts';
import { ownerMoney } from '../../service/owner-money.ts';
import { ownerMoneyJson } from '../../service/owner-money-rows.ts';
import type { AppParts } from '../../service/service.ts';
import { USUAL_TERMS } from '../../service/usual-terms.ts';
import { loadFenceDetail } from '../fences/fence-detail.ts';
import type { Api } from './api.ts';
import { apiProblem, notThere, problemAnswer } from './api-problem.ts';
import { deepSchema, jsonAnswer, jsonBody, refParam } from './api-schemas.ts';
import { notAFence } from './fences-api.ts';

const PER_CENT = 100;

/** What lies ahead: works side by side, a quote, and an owner's years of money. Nothing of it is stored. */
export function addAhead(api: Api, { register, clock }: AppParts): void {
  api.openapi(
    createRoute({
      method: 'get',
      path: '/api/v1/fences/{ref}/what-if',
      tags: ['Fences'],
      summary: 'Everything that could be done to a fence, side by side with doing nothing',
      request: { params: refParam },
      responses: { 200: jsonAnswer(deepSchema, 'works by works'), 404: problemAnswer('no such fence') },
    }),
    async (context) => {
      const { ref } = context.req.valid('param');
      const detail = await loadFenceDetail(register, ref);
      if (!detail) return apiProblem(context, notAFence(ref)) as never;
      const compared = await compareAll(register, detail, clock);
      return context.json({ ...compared, cautions: cautionsIn('en').all } as never, 200);
    },
  );

  api.openapi(
    createRoute({
      method: 'post',
      path: '/api/v1/fences/{ref}/quote',
      tags: ['Fences'],
      summary: 'Draws up a quote for works at a fence; it is not stored and offers nothing',
      request: {
        params: refParam,
        body: jsonBody(
          z.object({
            works: z
              .array(
                z.object({
                  kind: z.enum(CATALOGUE_KINDS),
                  posts: z.union([z.literal('all'), z.array(z.number().int().positive()).min(1)]).default('all'),
                }),
              )
              .min(1),
            taxPercent: z.number().min(0).max(100).default(0),
            validDays: z.number().int().min(1).max(365).default(30),
            currency: z.string().length(3).nullable().default(null).describe("the register's where left out"),
          }),
        ),
      },
      responses: {
        200: jsonAnswer(deepSchema, 'the quote; amounts in whole cents'),
        404: problemAnswer('no such fence'),
        409: problemAnswer('that cannot be done there'),
      },
    }),
    async (context) => {
      const { ref } = context.req.valid('param');
      const wanted = context.req.valid('json');
      const result = await fenceQuote(register, {
        fenceRef: ref,
        ...wanted,
        cautions: cautionsIn('en').all,
        now: clock,
      });
      if (result.kind === 'no such fence') return apiProblem(context, notAFence(ref)) as never;
      if (result.kind === 'quoted') return context.json({ ...result } as never, 200);
      return apiProblem(context, {
        status: 409,
        title: 'That cannot be done there',
        what: `fence ${ref}: ${result.reason}; nothing was quoted`,
        wayOut: 'GET /api/v1/fences/{ref}/what-if shows what can be done there',
      }) as never;
    },
  );

  api.openapi(
    createRoute({
      method: 'get',
      path: '/api/v1/owners/{ref}/money',
      tags: ['Register'],
      summary:
        'What an owner has to spend on fences year by year, and what to set aside; takes some tenths of a second a fence',
      request: {
        params: refParam,
        query: z.object({
          years: z.coerce.number().int().min(10).max(30).default(USUAL_TERMS.years),
          openingCents: z.coerce.number().int().default(0).describe('what the fund holds [cents]'),
          inflationPercent: z.coerce.number().min(-20).max(20).default(USUAL_TERMS.inflationPercent),
          interestPercent: z.coerce.number().min(0).max(20).default(USUAL_TERMS.interestPercent),
          currency: z.string().length(3).optional().describe("the register's where left out"),
        }),
      },
      responses: {
        200: jsonAnswer(deepSchema, 'years, fences, what to set aside; amounts in the currency'),
        404: problemAnswer('no such owner, or one without fences'),
      },
    }),
    async (context) => {
      const { ref } = context.req.valid('param');
      const { years, openingCents, inflationPercent, interestPercent, currency } = context.req.valid('query');
      const result = await ownerMoney(register, {
        ownerRef: ref,
        years,
        openingBalance: cents(openingCents),
        contribution: { kind: 'find', course: 'flat', cover: 'expected' },
        inflation: inflationPercent / PER_CENT,
        interest: interestPercent / PER_CENT,
        floor: cents(0),
        dependence: 'independent',
        rule: 'cheapest',
        longestServiceYears: USUAL_TERMS.longestServiceYears,
        inspectEveryYears: USUAL_TERMS.inspectEveryYears,
        sharedPart: USUAL_TERMS.sharedPercent / PER_CENT,
        now: clock,
        onProgress: () => undefined,
      });
      if (result.kind !== 'planned') {
        const problem = notThere(
          result.kind === 'no fences' ? `owner ${ref} has no fence` : `there is no owner ${JSON.stringify(ref)}`,
          'GET /api/v1/records/owners lists them',
        );
        return apiProblem(context, problem) as never;
      }
      return context.json(
        {
          ...ownerMoneyJson(result, await currencyAsked(register.db, currency)),
          cautions: cautionsIn('en').all,
        } as never,
        200,
      );
    },
  );
}
