import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { packagePath } from '../../src/register/package-path.ts';
import { ROUTE_ACCESS, type RouteAccess } from '../../src/web/access/route-access.ts';
import { STYLESHEET_PATH } from '../../src/web/frame/stylesheet.ts';

const ROLES = ['office', 'crew', 'board'] as const;

/** A row of the page's table for a route: who is answered, by column. */
function rowOf({ method, path, who, scope, fromThisMachine }: RouteAccess): string {
  const plain = path === STYLESHEET_PATH ? '/style-….css' : path.replace(/\{[^}]*\}(?=\/|$)/g, '').replace(/\{.*$/, '');
  const open = who.includes('anybody');
  const mark = (yes: boolean): string => (yes ? 'yes' : '–');
  const cells = [
    `\`${method} ${plain}\``,
    open ? 'yes' : fromThisMachine ? 'on this machine' : '–',
    ...ROLES.map((role) => mark(open || who.includes(role))),
    mark(open || who.includes('owner link')),
    open ? 'yes' : (scope ?? '–'),
  ];
  return `| ${cells.join(' | ')} |`;
}

describe('docs/access.md', () => {
  it('has the table of every route and whom it answers, as the program keeps it', () => {
    const text = readFileSync(packagePath('docs', 'access.md'), 'utf8');
    const rows = text.split('\n').filter((line) => /^\| `(GET|POST|PUT|PATCH) /.test(line));
    expect(rows).toEqual(ROUTE_ACCESS.map(rowOf));
  });
});
