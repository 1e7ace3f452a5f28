import { describe, expect, it } from 'vitest';
import { isOwnReturnAddress, returnAddressOf, returnPatternReason } from '../../src/service/return-address.ts';

const PATTERN = 'bounces+*@fences.example.org';

describe('returnAddressOf', () => {
  it('is one address a mail, short enough, and known again in any case', () => {
    const one = returnAddressOf('<mail-1@example.org>', PATTERN, 'secret');
    expect(one).toMatch(/^bounces\+[0-9a-f]{12}-[0-9a-f]{16}@fences\.example\.org$/);
    expect(returnAddressOf('<mail-1@example.org>', PATTERN, 'secret')).toBe(one);
    expect(returnAddressOf('<mail-2@example.org>', PATTERN, 'secret')).not.toBe(one);
    expect(isOwnReturnAddress(one, 'secret')).toBe(true);
    expect(isOwnReturnAddress(one.toUpperCase(), 'secret')).toBe(true);
  });

  it('is nobody else’s: another secret, another mark and another signature are not ours', () => {
    const one = returnAddressOf('<mail-1@example.org>', PATTERN, 'secret');
    const two = returnAddressOf('<mail-2@example.org>', PATTERN, 'secret');
    expect(isOwnReturnAddress(one, 'another')).toBe(false);
    // the signature of one mail under the mark of another
    expect(isOwnReturnAddress(one.slice(0, 20) + two.slice(20), 'secret')).toBe(false);
    expect(
      isOwnReturnAddress(
        one.replace(/.@/, (end) => (end === '0@' ? '1@' : '0@')),
        'secret',
      ),
    ).toBe(false);
    expect(isOwnReturnAddress('bounces@fences.example.org', 'secret')).toBe(false);
  });
});

describe('returnPatternReason', () => {
  it.each([PATTERN, '*@example.org', 'b-*-x@example.org'])('takes %s', (text) => {
    expect(returnPatternReason(text)).toBeNull();
  });

  it.each([
    ['bounces@example.org', 'takes the place of the star'],
    ['bounces+**@example.org', 'takes the place of the star'],
    ['bounces+*@*.example.org', 'takes the place of the star'],
    ['bounces *@example.org', 'takes the place of the star'],
    [`${'b'.repeat(36)}*@example.org`, 'at most 35 characters'],
  ])('refuses %s', (text, reason) => {
    expect(returnPatternReason(text)).toContain(reason);
  });
});
