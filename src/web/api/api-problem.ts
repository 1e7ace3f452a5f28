import { z } from '@hono/zod-openapi';
import type { PageContext } from '../access/visitor.ts';

/** Media type of a problem, RFC 9457. */
const PROBLEM_TYPE = 'application/problem+json';

/** What went wrong with one field of what was sent. */
const fieldFaultSchema = z.object({
  /** Which of the rows that were sent, from 0. */
  row: z.number().int().optional().describe('which of the rows that were sent, counted from 0'),
  field: z.string().describe('name of the field; empty where it is about the whole'),
  value: z.unknown().optional().describe('what was sent'),
  reason: z.string().describe('why it cannot be taken, and the way out'),
});
type FieldFault = z.infer<typeof fieldFaultSchema>;

/** A problem as RFC 9457 has it, with what to do about it. */
const problemSchema = z
  .object({
    type: z.literal('about:blank').describe('the status says what kind of problem it is'),
    title: z.string(),
    status: z.number().int(),
    detail: z.string().describe('what went wrong'),
    wayOut: z.string().describe('what to do about it'),
    faults: z.array(fieldFaultSchema).optional().describe('field by field, where fields are at fault'),
  })
  .openapi('Problem');

/** A problem that is to be answered. */
export interface ApiProblem {
  readonly status: 400 | 401 | 403 | 404 | 405 | 409 | 413 | 415 | 422 | 429 | 500;
  readonly title: string;
  readonly what: string;
  readonly wayOut: string;
  readonly faults?: readonly FieldFault[];
}

/** Answers with a problem (RFC 9457). */
export function apiProblem(context: PageContext, problem: ApiProblem): Response {
  const { status, title, what, wayOut, faults } = problem;
  const body = {
    type: 'about:blank',
    title,
    status,
    detail: what,
    wayOut,
    ...(faults === undefined ? {} : { faults }),
  };
  return context.body(JSON.stringify(body), status, { 'Content-Type': PROBLEM_TYPE });
}

/** How an answer that is a problem is declared in the OpenAPI document. */
export const problemAnswer = (description: string) => ({
  description,
  content: { [PROBLEM_TYPE]: { schema: problemSchema } },
});

/** Something that is not in the register. */
export const notThere = (what: string, wayOut: string): ApiProblem => ({
  status: 404,
  title: 'Not there',
  what,
  wayOut,
});
