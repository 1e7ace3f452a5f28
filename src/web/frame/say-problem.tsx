import type { PageContext } from '../access/visitor.ts';
import { apiProblem } from '../api/api-problem.ts';
import { frameFor } from './page-frame.ts';
import { ProblemPage } from './problem-page.tsx';

/** Something that went wrong, with the way out. */
export interface Problem {
  readonly status: 400 | 401 | 403 | 404 | 405 | 413 | 429 | 500;
  readonly title: string;
  readonly what: string;
  readonly wayOut: string;
}

const isForApi = (context: PageContext): boolean => context.req.path.startsWith('/api/');

/** True where a program asks: it shows a token, asks for JSON by name, or asks where only programs do. */
export const isForProgram = (context: PageContext): boolean =>
  context.req.header('authorization') !== undefined || context.req.path.endsWith('.json') || isForApi(context);

/** Says what went wrong and the way out: to people as a page, to programs as JSON. */
export function sayProblem(
  context: PageContext,
  { status, title, what, wayOut }: Problem,
): Response | Promise<Response> {
  if (isForApi(context)) return apiProblem(context, { status, title, what, wayOut });
  if (isForProgram(context)) return context.json({ error: what, wayOut }, status);
  const page = <ProblemPage title={title} what={what} wayOut={wayOut} frame={frameFor(context)} />;
  return context.html(page, status);
}
