import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import ts from 'typescript';

/** The sources of the program. */
export const SOURCE_ROOT = fileURLToPath(new URL('../../src', import.meta.url));
/** Rooms whose numbers make a forecast. */
export const NUMBER_ROOMS = ['decay', 'capacity', 'forecast'] as const;

/** A word that says nobody has read the number in a source. */
const WEAK = /\b(memory|judgement|Judgement)\b/;
/** Files that word the reasons of a forecast: they repeat tags, and hold no number of their own. */
const WORDS_ONLY = /(^|\/)reasons(-[a-z]+)?\.ts$/;
const NUMBER = /\b\d/;

const keysOf = (node: ts.Expression): readonly string[] => {
  if (ts.isAsExpression(node) || ts.isSatisfiesExpression(node)) return keysOf(node.expression);
  if (!ts.isObjectLiteralExpression(node)) return [];
  if (
    node.properties.some((property) => ts.isPropertyAssignment(property) && ts.isNumericLiteral(property.initializer))
  )
    return [];
  return node.properties.flatMap((property) =>
    ts.isPropertyAssignment(property) && !ts.isStringLiteral(property.initializer)
      ? [property.name.getText().replace(/'/g, '')]
      : [],
  );
};

/**
 * Names of what a source text calls memory or judgement: constants and functions whose docstring or text says so; of a
 * table of entries each entry by itself. Types hold no numbers, and a constant without a digit has none either.
 */
export function judgedNamesIn(text: string): readonly string[] {
  const file = ts.createSourceFile('a.ts', text, ts.ScriptTarget.Latest, true);
  return file.statements.flatMap((node): readonly string[] => {
    if (ts.isInterfaceDeclaration(node) || ts.isTypeAliasDeclaration(node) || ts.isImportDeclaration(node)) return [];
    const full = node.getFullText();
    if (!WEAK.test(full)) return [];
    if (ts.isFunctionDeclaration(node)) return [node.name?.text ?? ''];
    if (!ts.isVariableStatement(node)) return [];
    return node.declarationList.declarations.flatMap(({ name, initializer }) => {
      if (!initializer || !NUMBER.test(initializer.getText())) return [];
      const keys = keysOf(initializer);
      return keys.length > 1 ? keys.map((key) => `${name.getText()}.${key}`) : [name.getText()];
    });
  });
}

/** Every such name of the program, as `file#name`. */
export const judgedNames = (): readonly string[] =>
  NUMBER_ROOMS.flatMap((room) =>
    readdirSync(join(SOURCE_ROOT, room), { recursive: true, encoding: 'utf8' })
      .filter((name) => name.endsWith('.ts') && !WORDS_ONLY.test(name))
      .sort()
      .flatMap((name) =>
        judgedNamesIn(readFileSync(join(SOURCE_ROOT, room, name), 'utf8')).map((each) => `${room}/${name}#${each}`),
      ),
  );
