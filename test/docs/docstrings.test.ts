import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import ts from 'typescript';
import { describe, expect, it } from 'vitest';

const SOURCE = join(import.meta.dirname, '..', '..', 'src');

interface PublicFunction {
  readonly name: string;
  readonly comment: string;
}

/** The exported functions of a source text (declared, or arrow functions bound to a name), each with its docstring. */
function publicFunctions(text: string): readonly PublicFunction[] {
  const file = ts.createSourceFile('a.ts', text, ts.ScriptTarget.Latest, true);
  const found: PublicFunction[] = [];
  const exported = (node: ts.HasModifiers): boolean =>
    ts.getModifiers(node)?.some((modifier) => modifier.kind === ts.SyntaxKind.ExportKeyword) ?? false;
  const commentOf = (node: ts.Node): string => {
    const ranges = ts.getLeadingCommentRanges(text, node.getFullStart()) ?? [];
    const last = ranges.at(-1);
    const comment = last ? text.slice(last.pos, last.end) : '';
    return comment.startsWith('/**') ? comment : '';
  };
  for (const node of file.statements) {
    if (ts.isFunctionDeclaration(node) && exported(node)) {
      found.push({ name: node.name?.text ?? '', comment: commentOf(node) });
    }
    if (ts.isVariableStatement(node) && exported(node)) {
      for (const { name, initializer } of node.declarationList.declarations) {
        if (initializer && ts.isArrowFunction(initializer))
          found.push({ name: name.getText(), comment: commentOf(node) });
      }
    }
  }
  return found;
}

/** What a docstring lacks: none at all, and for physics a unit in brackets or a source. */
function lacks({ comment }: PublicFunction, physics: boolean): readonly string[] {
  if (comment === '') return ['a docstring'];
  if (!physics) return [];
  return [
    ...(/\[[^\]]+\]/.test(comment) ? [] : ['a unit in brackets']),
    ...(/Source/.test(comment) ? [] : ['a source']),
  ];
}

const filesOf = (room: string): readonly string[] =>
  readdirSync(join(SOURCE, room), { recursive: true, encoding: 'utf8' }).filter((name) => /\.tsx?$/.test(name));

describe('docstrings of public functions', () => {
  for (const room of ['decay', 'capacity']) {
    it(`give unit and source in ${room}/`, () => {
      const found = filesOf(room).flatMap((name) =>
        publicFunctions(readFileSync(join(SOURCE, room, name), 'utf8')).flatMap((each) =>
          lacks(each, true).map((what) => `${room}/${name}: ${each.name} lacks ${what}`),
        ),
      );
      expect(found).toEqual([]);
    });
  }
  for (const room of ['units', 'forecast', 'drawing', 'notify', 'register', 'service']) {
    it(`exist in ${room}/`, () => {
      const all = filesOf(room).flatMap((name) =>
        publicFunctions(readFileSync(join(SOURCE, room, name), 'utf8')).map((each) => ({ each, name })),
      );
      expect(all.length).toBeGreaterThan(5);
      const found = all.flatMap(({ each, name }) =>
        lacks(each, false).map((what) => `${room}/${name}: ${each.name} lacks ${what}`),
      );
      expect(found).toEqual([]);
    });
  }

  it('are missed where they are missing', () => {
    const [bare, plain, full] = publicFunctions(
      [
        'export function bare(x: number): number { return x; }',
        '/** Twice the load. */\nexport const plain = (x: number): number => 2 * x;',
        '/** Twice the load [N]. Source: algebra. */\nexport const full = (x: number): number => 2 * x;',
      ].join('\n'),
    );
    expect(lacks(bare!, true)).toEqual(['a docstring']);
    expect(lacks(plain!, true)).toEqual(['a unit in brackets', 'a source']);
    expect(lacks(full!, true)).toEqual([]);
  });
});
