import { type ApiScope, newApiToken } from '../../../src/service/api-tokens.ts';
import type { SampleApp } from '../sample-app.ts';
import { SAMPLE_NOW } from '../sample-register.ts';

/** A program that talks to the pages of a sample. */
export interface ApiClient {
  ask(method: string, path: string, body?: unknown, headers?: Readonly<Record<string, string>>): Promise<Response>;
  /** The body of an answer that must have that status. */
  json(method: string, path: string, body?: unknown, status?: number): Promise<Record<string, unknown>>;
}

/** Makes a program with a token of its own. */
export async function apiClient(sample: SampleApp, scopes: readonly ApiScope[], name = 'tests'): Promise<ApiClient> {
  const { text } = await newApiToken(sample.register.db, { name, scopes, days: 30 }, SAMPLE_NOW);
  const ask: ApiClient['ask'] = async (method, path, body, headers = {}) =>
    sample.pages.request(path, {
      method,
      headers: {
        authorization: `Bearer ${text}`,
        ...(body === undefined ? {} : { 'content-type': 'application/json' }),
        ...headers,
      },
      ...(body === undefined ? {} : { body: JSON.stringify(body) }),
    });
  return {
    ask,
    json: async (method, path, body, status = 200) => {
      const response = await ask(method, path, body);
      const text = await response.text();
      if (response.status !== status) throw new Error(`${method} ${path}: ${response.status} ${text}`);
      return JSON.parse(text) as Record<string, unknown>;
    },
  };
}
