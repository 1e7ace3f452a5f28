import { type ApiScope, newApiToken } from '../../../src/service/api-tokens.ts';
import type { SampleApp } from '../sample-app.ts';
import { SAMPLE_NOW } from '../sample-register.ts';
import { type AnswerCheck, answerCheck, type OpenApiDocument } from './openapi-shape.ts';

/** A program that talks to the pages of a sample. */
export interface ApiClient {
  ask(method: string, path: string, body?: unknown, headers?: Readonly<Record<string, string>>): Promise<Response>;
  /** The body of an answer that must have that status. */
  json(method: string, path: string, body?: unknown, status?: number): Promise<Record<string, unknown>>;
  /** Every row of a list, read page after page of so many. */
  walk<Row>(path: string, limit: number): Promise<readonly Row[]>;
}

const checks = new WeakMap<SampleApp, Promise<AnswerCheck>>();

/** The check of the answers of a sample, made once. */
function checkOf(sample: SampleApp): Promise<AnswerCheck> {
  const known = checks.get(sample);
  if (known) return known;
  const made = (async () =>
    answerCheck((await (await sample.pages.request('/api/v1/openapi.json')).json()) as OpenApiDocument))();
  checks.set(sample, made);
  return made;
}

/** Makes a program with a token of its own. Every answer is held against the OpenAPI document: one that is not as declared throws. */
export async function apiClient(sample: SampleApp, scopes: readonly ApiScope[], name = 'tests'): Promise<ApiClient> {
  const { text } = await newApiToken(sample.register.db, { name, scopes, days: 30 }, SAMPLE_NOW);
  const check = await checkOf(sample);
  const ask: ApiClient['ask'] = async (method, path, body, headers = {}) => {
    const answer = await sample.pages.request(path, {
      method,
      headers: {
        authorization: `Bearer ${text}`,
        ...(body === undefined ? {} : { 'content-type': 'application/json' }),
        ...headers,
      },
      ...(body === undefined ? {} : { body: JSON.stringify(body) }),
    });
    const fault = await check.fault({ method, path }, answer);
    if (fault !== null) throw new Error(`not as the OpenAPI document declares it: ${fault}`);
    return answer;
  };
  const json: ApiClient['json'] = async (method, path, body, status = 200) => {
    const response = await ask(method, path, body);
    const text = await response.text();
    if (response.status !== status) throw new Error(`${method} ${path}: ${response.status} ${text}`);
    return JSON.parse(text) as Record<string, unknown>;
  };
  const walk = async <Row>(path: string, limit: number): Promise<readonly Row[]> => {
    const rows: Row[] = [];
    const start = `${path}${path.includes('?') ? '&' : '?'}limit=${limit}`;
    for (let next: string | null = ''; next !== null; ) {
      const page = await json('GET', next === '' ? start : `${start}&cursor=${next}`);
      const found = page.rows as Row[];
      if (found.length > limit) throw new Error(`${start}: ${found.length} rows`);
      rows.push(...found);
      next = page.next as string | null;
    }
    return rows;
  };
  return { ask, json, walk };
}
