import type { z } from '@hono/zod-openapi';
import type { PageContext } from '../access/visitor.ts';

/** A value that nobody changes, however deep: what the register gives is so. */
type Untouched<T> = T extends readonly (infer Each)[]
  ? readonly Untouched<Each>[]
  : T extends object
    ? { readonly [Key in keyof T]: Untouched<T[Key]> }
    : T;

/**
 * Answers with what a schema declares. The compiler holds the body against the schema; the router wants it mutable, which what
 * the register gives is not, hence its type here.
 */
export const answered = <S extends z.ZodType>(
  context: PageContext,
  _schema: S,
  body: Untouched<z.infer<S>>,
  status: 200 | 202 = 200,
): never => context.body(JSON.stringify(body), status, { 'Content-Type': 'application/json' }) as never;
