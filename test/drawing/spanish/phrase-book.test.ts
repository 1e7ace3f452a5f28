import { describe, expect, it } from 'vitest';
import { phraseBook } from '../../../src/drawing/spanish/phrase-book.ts';

const names = phraseBook([['gravel', 'grava']]);
const book = phraseBook(
  [
    ['no post is chosen', 'no se eligió ningún poste'],
    ['post {} of fence {}', 'cerca {2}, poste {1}'],
    ['in {}, {} deep', 'en {}, a {}'],
    ['a (half) of {}?', 'la (mitad) de {}'],
  ],
  names,
);

describe('a book of phrases', () => {
  it('says a whole phrase, and null for a text that it does not hold', () => {
    expect(book('no post is chosen')).toBe('no se eligió ningún poste');
    expect(book('no post is chosen.')).toBeNull();
    expect(book('')).toBeNull();
  });

  it('puts the parts that differ where the Spanish wants them', () => {
    expect(book('post 3 of fence CT-01')).toBe('cerca CT-01, poste 3');
  });

  it('says a part in Spanish where it knows it, by another book too, and leaves it where not', () => {
    expect(book('in gravel, 24 in deep')).toBe('en grava, a 24 in');
    expect(book('in mud, 24 in deep')).toBe('en mud, a 24 in');
  });

  it('takes signs of a pattern as they stand', () => {
    expect(book('a (half) of 7?')).toBe('la (mitad) de 7');
    expect(book('a half of 7?')).toBeNull();
  });
});
