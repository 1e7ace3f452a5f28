import { describe, expect, it } from 'vitest';
import { letterParts } from '../../../src/drawing/report/letter-parts.ts';
import { renderHtml } from '../../../src/notify/render-html.ts';

const PICTURE = { cid: 'years@example.org', svg: '<svg/>', alt: 'Fence "A" & its years', widthPx: 520 };

describe('the parts of a letter', () => {
  it('are those that it was written from, in their order, word for word', () => {
    const html = renderHtml(
      {
        language: 'es',
        title: 'Cerca <A> & B',
        blocks: [
          { kind: 'small', text: 'Oficina' },
          { kind: 'answer', title: 'Cerca A', lines: ['Aguanta 3 < 4.', 'No más.'] },
          { kind: 'heading', text: 'Qué cambió' },
          { kind: 'paragraph', text: 'Todo "cambió" & más.' },
          { kind: 'picture', picture: PICTURE },
          { kind: 'list', items: ['uno', 'dos'] },
          {
            kind: 'table',
            caption: 'Sus cercas',
            columns: ['Cerca', 'Estado'],
            rows: [
              ['A', 'con margen'],
              ['B', 'insuficiente'],
            ],
          },
        ],
      },
      () => 'data:image/png;base64,AAAA',
    );
    expect(letterParts(html)).toEqual({
      language: 'es',
      title: 'Cerca <A> & B',
      blocks: [
        { kind: 'paragraph', text: 'Oficina', look: 'small' },
        { kind: 'answer', lines: ['Aguanta 3 < 4.', 'No más.'], about: 'Cerca A' },
        { kind: 'heading', level: 2, text: 'Qué cambió' },
        { kind: 'paragraph', text: 'Todo "cambió" & más.' },
        { kind: 'picture', alt: 'Fence "A" & its years', source: 'data:image/png;base64,AAAA', widthPx: 520 },
        { kind: 'list', items: ['uno', 'dos'] },
        {
          kind: 'table',
          caption: 'Sus cercas',
          columns: [
            { heading: 'Cerca', weight: 1 },
            { heading: 'Estado', weight: 1 },
          ],
          rows: [
            ['A', 'con margen'],
            ['B', 'insuficiente'],
          ],
        },
      ],
    });
  });

  it('are refused of a page that is no letter', () => {
    expect(() => letterParts('<p>hello</p>')).toThrow(/not a page that this program wrote/);
    expect(() => letterParts('<html lang="en"><title>x</title><body><div><form></form></div></body>')).toThrow(
      /a part <form>/,
    );
  });
});
