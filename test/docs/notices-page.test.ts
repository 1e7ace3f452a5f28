import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { MATTER_RULES, OFFICE_MAIL_MATTERS, OFFICE_MATTERS, OWNER_MATTERS } from '../../src/notify/matter-rules.ts';
import { NOTICES_FILE, noticesPage } from './notices-page.ts';

describe('docs/notices.md', () => {
  it('is what the rules say today', () => {
    const isCurrent = readFileSync(NOTICES_FILE, 'utf8') === noticesPage();
    expect(isCurrent, 'docs/notices.md is out of date: run npm run notices').toBe(true);
  });

  it('has a row of every matter', () => {
    const page = noticesPage();
    for (const matter of Object.keys(MATTER_RULES)) expect(page).toContain(`| ${matter} | `);
  });
});

describe('the rules', () => {
  it('are of matters that one list or another names', () => {
    const named = new Set<string>([...OWNER_MATTERS, ...OFFICE_MATTERS, ...OFFICE_MAIL_MATTERS]);
    expect(new Set(Object.keys(MATTER_RULES))).toEqual(named);
  });

  it('send to the office what its lists say, and to owners all others', () => {
    const ofOffice = new Set<string>([...OFFICE_MATTERS, ...OFFICE_MAIL_MATTERS]);
    for (const [matter, rule] of Object.entries(MATTER_RULES)) {
      expect(ofOffice.has(matter), matter).toBe(rule.to === 'office' || rule.to === 'owner and office');
      expect((OWNER_MATTERS as readonly string[]).includes(matter), matter).toBe(rule.to !== 'office');
    }
  });
});
