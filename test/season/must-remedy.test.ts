import { describe, expect, it } from 'vitest';
import { mustRemedy } from '../../src/season/must-remedy.ts';
import { inspectOf, plannedFence, worksOf } from './made-up-planned-fence.ts';

const short = { standing: 'short', endsStanding: null } as const;

describe('what a rebuild would leave of a fence that nothing serves', () => {
  it('is nothing where some works serve it: then something else stands in their way', () => {
    const serves = plannedFence({ candidates: { ...short, candidates: [worksOf(['rebuild'])] } });
    expect(mustRemedy(serves)).toBeNull();
  });

  it('names the rebuild that leaves it best off, its price, and what stays', () => {
    const candidates = [
      inspectOf(),
      worksOf(['steel-sleeve'], { standing: 'closing', endsStanding: 'short' }),
      worksOf(['rebuild'], { standing: 'short from new', endsStanding: 'short' }),
      worksOf(['rebuild', 'footing-reset'], {
        standing: 'clear',
        endsStanding: 'short from new',
        cost: { personHours: 9, price: 1234, materialCost: 400 },
      }),
    ];
    expect(mustRemedy(plannedFence({ candidates: { ...short, candidates } }))).toEqual({
      rebuild: {
        key: 'rebuild + footing-reset',
        price: 1234,
        standing: 'clear',
        endsStanding: 'short from new',
        dangerPosts: [],
      },
    });
  });

  it('names posts that would stay dangerous, and of equals the cheaper', () => {
    const candidates = [
      worksOf(['rebuild', 'liner'], { mends: [4], cost: { personHours: 9, price: 900, materialCost: 400 } }),
      worksOf(['rebuild'], { mends: [4] }),
    ];
    const fence = plannedFence({ dangerPosts: [4, 7], candidates: { ...short, candidates } });
    expect(mustRemedy(fence)?.rebuild).toMatchObject({ key: 'rebuild', price: 300, dangerPosts: [7] });
  });

  it('has no rebuild where none makes sense', () => {
    const candidates = [worksOf(['steel-sleeve'], { standing: 'short' })];
    expect(mustRemedy(plannedFence({ candidates: { ...short, candidates } }))).toEqual({ rebuild: null });
  });
});
