import { describe, expect, it } from 'vitest';
import { askedDone, worksAsked } from '../../../src/web/visits/done-form.ts';
import { madeUpVisit } from '../../service/visiting-register.ts';

const item = (fenceRef: string) => ({ ...madeUpVisit({ uid: 'x' }).items[0]!, fenceRef });
const VISIT = madeUpVisit({ uid: 'V1-1', items: [item('A'), item('B')] });

describe('works as the office writes them', () => {
  it('are kinds with their posts, whole fences without', () => {
    expect(worksAsked('post-swap: 4, 5 + liner:7-9')).toEqual([
      { kind: 'post-swap', posts: [4, 5] },
      { kind: 'liner', posts: [7, 8, 9] },
    ]);
    expect(worksAsked('drainage')).toEqual([{ kind: 'drainage', posts: 'all' }]);
  });

  it('are refused in words that name what is wrong and the way out', () => {
    expect(worksAsked('painting')).toMatch(/no works called "painting"; write some of inspect/);
    expect(worksAsked('post-swap: four')).toMatch(/"four" are no numbers of posts; write them as 3, 4, 7-9/);
    expect(worksAsked('post-swap: 9-3')).toMatch(/no numbers of posts/);
    expect(worksAsked('post-swap: ')).toMatch(/no numbers of posts/);
  });
});

describe('the form of what was done', () => {
  it('says for each fence whether, in how many hours, and with which inspection', () => {
    const form = {
      day: '2027-01-11',
      done: 'A',
      'hours-A': '5,5',
      'did-A': 'liner: 2',
      'inspection-A': 'I-1',
      'hours-B': '3',
    };
    expect(askedDone(form, VISIT)).toEqual({
      day: '2027-01-11',
      only: null,
      except: ['B'],
      hours: { kind: 'fences', personHours: new Map([['A', 5.5]]) },
      changed: new Map([['A', [{ kind: 'liner', posts: [2] }]]]),
      inspections: new Map([['A', 'I-1']]),
      sure: false,
    });
  });

  it('names every field that cannot be read', () => {
    const form = { day: 'Monday', done: ['A', 'B'], 'hours-A': 'six', 'did-B': 'varnish' };
    const read = askedDone(form, VISIT);
    expect(read).toHaveProperty('faults');
    if (!('faults' in read)) return;
    expect(read.faults).toHaveLength(3);
    expect(read.faults.join(' ')).toMatch(
      /"Monday" is no day.*fence A: "six" is no number.*fence B: there are no works/,
    );
  });
});
