import { describe, expect, it } from 'vitest';
import { foldedName, isAccountName, passwordFault, spokenCode } from '../../src/service/account-rules.ts';

describe('the rules of accounts', () => {
  it.each([
    ['elevenchars', 'short'],
    ['twelve chars', null],
    ['no capitals no digits no signs', null],
    ['aaaaaaaaaaaaaaaa', 'one letter'],
    [`${'x'.repeat(199)}yz`, 'long'],
    ['my name is ANN-TERN now', 'holds name'],
    ['here is Ann Tern again', 'holds name'],
    // twelve signs of two code units each
    ['🌲'.repeat(11), 'short'],
    ['🌲🪵'.repeat(6), null],
  ])('find in the password %j: %s', (password, fault) => {
    expect(passwordFault(password, ['ann-tern', 'Ann Tern'])).toBe(fault);
  });

  it('do not hold a name of one or two letters against a password', () => {
    expect(passwordFault('the bo of the boat', ['bo', 'Bo'])).toBeNull();
  });

  it('take names that people can type, in any capitals', () => {
    expect(foldedName('  Ann@Example.ORG ')).toBe('ann@example.org');
    for (const name of ['ann', 'ann@example.org', 'josé', 'a-1']) expect(isAccountName(name), name).toBe(true);
    for (const name of ['a', '', 'a b', '-ann', 'a<b', 'x'.repeat(81)]) expect(isAccountName(name), name).toBe(false);
  });

  it('make codes of signs that are not taken for each other, never twice the same', () => {
    const codes = Array.from({ length: 200 }, () => spokenCode(4));
    for (const code of codes) expect(code).toMatch(/^[2-9abcdefghjkmnp-z]{4}(-[2-9abcdefghjkmnp-z]{4}){3}$/);
    expect(new Set(codes).size).toBe(200);
    expect(codes.join('')).not.toMatch(/[01ilo]/);
  });
});
