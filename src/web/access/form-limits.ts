import type { MiddlewareHandler } from 'hono';
import { bodyLimit } from 'hono/body-limit';
import { LARGEST_PHOTO } from '../../service/enter-visit-photo.ts';
import { type Problem, type ProblemWords, sayProblem } from '../frame/say-problem.tsx';
import type { PageContext, PageEnv } from './visitor.ts';

const KIB = 1024;
const MIB = 1024 * KIB;

/** Largest form that is read where nothing else is said [bytes]. */
const LARGEST_FORM = 64 * KIB;
/** Largest form with files for an import [bytes]. */
const LARGEST_IMPORT = 16 * MIB;
/** Largest set of rows that a program may write at once [bytes]. */
const LARGEST_ROWS = 4 * MIB;
/** Where a picture is sent; the fields beside it are small. */
const PHOTO_PATH = /^\/today\/visits\/[^/]+\/fences\/[^/]+\/photos$/;

const tooLarge = (what: string, wayOut: string, es?: Pick<ProblemWords, 'what' | 'wayOut'>): Problem => ({
  status: 413,
  title: 'Too much at once',
  what: `${what} Nothing was changed.`,
  wayOut,
  ...(es ? { es: { title: 'Demasiado de una vez', what: `${es.what} No se cambió nada.`, wayOut: es.wayOut } } : {}),
});

const limit = (maxSize: number, problem: Problem) =>
  bodyLimit({ maxSize, onError: (context: PageContext) => sayProblem(context, problem) });

/** Bounds what is read of a form: little, but for the routes that take files, pictures or a program's rows. */
export function formLimits(): MiddlewareHandler<PageEnv> {
  const usual = limit(
    LARGEST_FORM,
    tooLarge(`A form may hold ${LARGEST_FORM / KIB} KiB.`, 'Shorten it, or use the command line.', {
      what: `Un formulario puede llevar ${LARGEST_FORM / KIB} KiB.`,
      wayOut: 'Acórtelo.',
    }),
  );
  const files = limit(
    LARGEST_IMPORT,
    tooLarge(
      `The files of one import may hold ${LARGEST_IMPORT / MIB} MiB together.`,
      'Bring fewer files at once, or cut one in two, each with the line of column names. “stormpale import” takes files of any size.',
    ),
  );
  const photos = limit(
    LARGEST_PHOTO + LARGEST_FORM,
    tooLarge(`A picture may hold ${LARGEST_PHOTO / MIB} MiB.`, 'Take it smaller.', {
      what: `Una foto puede llevar ${LARGEST_PHOTO / MIB} MiB.`,
      wayOut: 'Tómela más pequeña.',
    }),
  );
  const rows = limit(
    LARGEST_ROWS,
    tooLarge(`One request may hold ${LARGEST_ROWS / MIB} MiB.`, 'Send fewer rows at once.'),
  );
  const limitOf = (path: string): MiddlewareHandler => {
    if (path === '/import') return files;
    if (path.startsWith('/api/v1/records/')) return rows;
    return PHOTO_PATH.test(path) ? photos : usual;
  };
  return (context, next) => limitOf(context.req.path)(context, next);
}
