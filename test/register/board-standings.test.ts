import { describe, expect, it } from 'vitest';
import { standingsOfSites } from '../../src/register/board-standings.ts';
import { listFences } from '../../src/register/fence-list.ts';
import { EVERY_FENCE } from '../../src/register/fence-query.ts';
import { sampleApp } from '../web/sample-app.ts';

describe('how the fences of a site stand', () => {
  it('counts a fence that is short at its ends alone as short, as lists do, and looks ahead at line and ends', async () => {
    const { register, close } = await sampleApp();
    try {
      const { db } = register;
      await db
        .updateTable('forecasts')
        .set({ standing: 'clear', ends_standing: null, short_season: null, ends_short_season: null })
        .execute();
      const of = async () => (await standingsOfSites(register, ['PELICAN'])).get('PELICAN')!;
      expect((await of()).counts).toEqual({ clear: 6, closing: 0, short: 0, 'short from new': 0 });
      expect((await of()).next).toBeNull();
      const set = (ref: string, values: Record<string, string>) =>
        db.updateTable('forecasts').set(values).where('fence_ref', '=', ref).execute();
      await set('PR-01', { ends_standing: 'short', ends_short_season: '2027' });
      await set('PR-02', { short_season: '2035' });
      await set('PR-03', { ends_standing: 'closing', ends_short_season: '2029', short_season: '2040' });
      const { counts, next } = await of();
      expect(counts).toEqual({ clear: 4, closing: 1, short: 1, 'short from new': 0 });
      expect(counts.short).toBe((await listFences(register, EVERY_FENCE, ['PELICAN'])).anywhere.short);
      // the fence that is short at its ends already is not the next to go short
      expect(next).toEqual({ season: '2029', refs: ['PR-03'] });
    } finally {
      await close();
    }
  });
});
