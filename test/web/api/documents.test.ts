import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { pdfReaderIsThere, readPdf } from '../../pdf-reader.ts';
import { enterSeen, inspectionOn, readingOf } from '../../service/report/reported-register.ts';
import { answeringSample } from '../owner/answering-sample.ts';
import type { SampleApp } from '../sample-app.ts';
import { type ApiClient, apiClient } from './api-client.ts';

describe('documents by the API', { timeout: 60_000 }, () => {
  let sample: SampleApp;
  let program: ApiClient;
  beforeAll(async () => {
    sample = await answeringSample();
    await enterSeen(
      sample.register,
      {
        inspections: [inspectionOn('PR-03', '2025-05-15'), inspectionOn('PR-03', '2026-09-15')],
        readings: [readingOf('I-PR-03-2025-05-15', 3, 4), readingOf('I-PR-03-2026-09-15', 3, 9)],
        outcomes: [],
        works: [],
      },
      '2026-11-24T12:00:00.000Z',
    );
    await sample.sendMail();
    program = await apiClient(sample, ['read-register']);
  });
  afterAll(() => sample.close());

  const pdf = async (response: Response): Promise<Buffer> => {
    expect(response.status).toBe(200);
    expect(response.headers.get('content-type')).toBe('application/pdf');
    return Buffer.from(await response.arrayBuffer());
  };

  it.each([
    ['fences/PR-03/report.pdf', 'fences/PR-03/report.pdf'],
    ['fences/PR-03/report.pdf?lang=es', 'fences/PR-03/report.pdf?lang=es'],
    ['fences/PR-03/evidence.pdf', 'fences/PR-03/evidence.pdf'],
    ['fences/PR-03/evidence.pdf?on=2026-01-31', 'fences/PR-03/evidence.pdf?on=2026-01-31'],
    ['sites/SKERRY/plan.pdf?years=30', 'sites/SKERRY/plan.pdf?years=30'],
    ['owners/QUINN/plan.pdf', 'owners/QUINN/plan.pdf'],
    ['crews/north/sheet.pdf?day=2027-01-11', 'sheets/north/2027-01-11.pdf'],
  ])('are those of the pages, byte by byte: %s', async (asked, page) => {
    const own = await pdf(await program.ask('GET', `/api/v1/${asked}`));
    expect(own.subarray(0, 5).toString()).toBe('%PDF-');
    expect(own.equals(await pdf(await sample.app.request(`/${page}`)))).toBe(true);
  });

  it('say of a past day only what was known by then', async () => {
    const past = await pdf(await program.ask('GET', '/api/v1/fences/PR-03/evidence.pdf?on=2026-01-31'));
    const now = await pdf(await program.ask('GET', '/api/v1/fences/PR-03/evidence.pdf'));
    expect(past.equals(now)).toBe(false);
    await program.json('GET', '/api/v1/fences/PR-03/evidence.pdf?on=2026-02-30', undefined, 400);
    await program.json('GET', '/api/v1/fences/PR-03/evidence.pdf?on=1990-01-01', undefined, 404);
  });

  it.runIf(pdfReaderIsThere())('draw up a quote for the works that are sent', async () => {
    const works = [{ kind: 'post-swap', posts: [2, 3] }];
    const drawn = await pdf(await program.ask('POST', '/api/v1/fences/PR-03/quote.pdf', { works, taxPercent: 8 }));
    expect(readPdf(drawn).text).toMatch(/8(\.0+)? ?%/);
    // it writes nothing, so a key neither keeps its bytes nor stands in the way of another
    for (const taxPercent of [8, 9]) {
      const key = { 'idempotency-key': 'a quote' };
      const again = await program.ask('POST', '/api/v1/fences/PR-03/quote.pdf', { works, taxPercent }, key);
      expect((await pdf(again)).subarray(0, 5).toString()).toBe('%PDF-');
    }
    await program.json('POST', '/api/v1/fences/PR-03/quote.pdf', { works: [{ kind: 'post-swap', posts: [99] }] }, 404);
    await program.json('POST', '/api/v1/fences/PR-03/quote.pdf', {}, 422);
  });

  it('print letters, and no mails', async () => {
    const rows = (await program.json('GET', '/api/v1/outbox')).rows as { id: number; channel: string }[];
    const letter = rows.find(({ channel }) => channel === 'letter');
    const mail = rows.find(({ channel }) => channel === 'mail');
    const printed = await pdf(await program.ask('GET', `/api/v1/outbox/${letter?.id}/letter.pdf`));
    expect(printed.equals(await pdf(await sample.app.request(`/outbox/${letter?.id}/letter.pdf`)))).toBe(true);
    const refused = await program.json('GET', `/api/v1/outbox/${mail?.id}/letter.pdf`, undefined, 404);
    expect(refused.detail).toContain('is a mail');
  });

  it('are not there for what is not there, and not for a token that may not read owners', async () => {
    const other = await apiClient(sample, ['read-fences', 'write-register'], 'other');
    for (const path of [
      'fences/NOPE/report.pdf',
      'fences/NOPE/evidence.pdf',
      'sites/NOPE/plan.pdf',
      'owners/NOPE/plan.pdf',
      'crews/NOPE/sheet.pdf?day=2027-01-11',
      'crews/north/sheet.pdf?day=2027-02-01',
      'outbox/9999/letter.pdf',
    ]) {
      await program.json('GET', `/api/v1/${path}`, undefined, 404);
      await other.json('GET', `/api/v1/${path}`, undefined, 403);
    }
    await program.json('GET', '/api/v1/crews/north/sheet.pdf', undefined, 400);
  });
});
