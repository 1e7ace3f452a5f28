import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type SampleApp, sampleApp } from '../sample-app.ts';
import { answerCheck, faultOfDocument, faultsOfSchemas, type OpenApiDocument } from './openapi-shape.ts';

describe('the OpenAPI document', () => {
  let sample: SampleApp;
  let document: OpenApiDocument;
  beforeAll(async () => {
    sample = await sampleApp({ swept: false });
    document = (await (await sample.pages.request('/api/v1/openapi.json')).json()) as OpenApiDocument;
  });
  afterAll(() => sample.close());

  it('is valid OpenAPI 3.1 by the published schema of that version', () => {
    expect(faultOfDocument(document)).toBeNull();
  });

  it('holds only schemas that are valid by JSON Schema 2020-12', () => {
    expect(faultsOfSchemas(document)).toEqual([]);
    const broken = { ...document, components: { schemas: { Broken: { type: 'spoon' } } } };
    expect(faultsOfSchemas(broken).join(' ')).toContain('components/schemas/Broken');
  });

  it('is what answers are held against: one that is not as declared is found', async () => {
    const { fault } = answerCheck(document);
    const answer = (body: unknown, status = 200, type = 'application/json') =>
      new Response(JSON.stringify(body), { status, headers: { 'content-type': type } });
    const fences = { method: 'GET', path: '/api/v1/fences?limit=1' };
    expect(await fault(fences, answer({ rows: [], next: null }))).toBeNull();
    expect(await fault(fences, answer({ rows: [{ ref: 1 }], next: null }))).toContain('ref must be string');
    expect(await fault(fences, answer({ rows: [], next: null }, 418))).toContain('418 is not declared');
    expect(await fault(fences, answer({}, 200, 'text/html'))).toContain('without text/html');
    expect(await fault(fences, answer({ title: 'x' }, 403, 'application/problem+json'))).toContain('wayOut');
    expect(await fault({ method: 'GET', path: '/elsewhere' }, answer({}))).toBeNull();
  });

  it('would be found wanting with a fault in it', () => {
    expect(faultOfDocument({ ...document, info: { title: 'x' } })).toContain('version');
    expect(faultOfDocument({ ...document, paths: { 'no-slash': {} } })).not.toBeNull();
  });
});
