import { accountLanguage, type PageContext } from '../access/visitor.ts';
import { apiProblem } from '../api/api-problem.ts';
import { frameFor } from './page-frame.ts';
import { languageAsked, type PageLanguage } from './page-language.ts';
import { ProblemPage } from './problem-page.tsx';

/** What a problem says. */
export interface ProblemWords {
  readonly title: string;
  readonly what: string;
  readonly wayOut: string;
}

/** Something that went wrong, with the way out. */
export interface Problem extends ProblemWords {
  readonly status: 400 | 401 | 403 | 404 | 405 | 413 | 429 | 500;
  /** The same in Spanish, where a crew, a board or an owner can meet it; left out where only the office does, or it is in both. */
  readonly es?: ProblemWords;
}

const isForApi = (context: PageContext): boolean => context.req.path.startsWith('/api/');

/** True where a program asks: it shows a token, asks for JSON by name, or asks where only programs do. */
export const isForProgram = (context: PageContext): boolean =>
  context.req.header('authorization') !== undefined || context.req.path.endsWith('.json') || isForApi(context);

/** Says what went wrong and the way out: to people as a page, to programs as JSON. */
export function sayProblem(context: PageContext, problem: Problem): Response | Promise<Response> {
  const { status, title, what, wayOut } = problem;
  if (isForApi(context)) return apiProblem(context, { status, title, what, wayOut });
  if (isForProgram(context)) return context.json({ error: what, wayOut }, status);
  const spanish = readerLanguage(context) === 'es' ? problem.es : undefined;
  const language = spanish ? 'es' : 'en';
  return context.html(<ProblemPage words={spanish ?? problem} language={language} frame={frameFor(context)} />, status);
}

/** The language of whoever is signed in, else the one that their browser names. */
const readerLanguage = (context: PageContext): PageLanguage =>
  context.get('visitor').kind === 'account' ? accountLanguage(context.var) : languageAsked(context);
