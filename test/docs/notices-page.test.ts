import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { MATTER_RULES, MATTERS, MATTERS_TO_COME, OFFICE_MATTERS } from '../../src/notify/matter-rules.ts';
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
  it('are told or to come as the lists say, each matter in one', () => {
    const told = new Set<string>([...MATTERS, ...OFFICE_MATTERS]);
    for (const [matter, rule] of Object.entries(MATTER_RULES)) {
      expect(told.has(matter), matter).toBe(rule.told);
      expect((MATTERS_TO_COME as readonly string[]).includes(matter), matter).toBe(!rule.told);
    }
  });

  it('send to the office what its list says, and to owners all others', () => {
    for (const [matter, rule] of Object.entries(MATTER_RULES)) {
      expect((OFFICE_MATTERS as readonly string[]).includes(matter), matter).toBe(rule.to !== 'owner');
      expect((MATTERS as readonly string[]).includes(matter), matter).toBe(rule.told && rule.to !== 'office');
    }
  });
});
