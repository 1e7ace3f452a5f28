import { InvalidArgumentError } from 'commander';
import { nearestName } from '../register/csv/nearest-name.ts';
import type { CatalogueKind } from '../season/catalogue-entry.ts';
import { SHIPPED_CATALOGUE } from '../season/works-catalogue.ts';
import { type WantedWorks, WHOLE_FENCE } from '../service/fence-quote.ts';
import { CliError } from './cli-error.ts';
import { EXIT } from './exit-codes.ts';
import { postsArgument } from './money-argument.ts';

/** Everything that a crew can be sent to do. */
const KINDS = Object.keys(SHIPPED_CATALOGUE) as readonly CatalogueKind[];

/**
 * Works as they are written: `post-swap`, or with posts of their own `post-swap:3,4,7`.
 * @param posts those of works that name none of their own; every post where left out
 */
export function wantedWorks(texts: readonly string[], posts?: readonly number[]): readonly WantedWorks[] {
  return texts.map((text) => {
    const [name = '', own] = text.split(/:(.*)/s);
    const kind = KINDS.find((each) => each === name);
    if (kind && own !== undefined) return { kind, posts: ownPosts(text, own) };
    if (kind) return { kind, posts: WHOLE_FENCE.has(kind) ? 'all' : (posts ?? 'all') };
    const near = nearestName(name, KINDS);
    throw new CliError(
      EXIT.usage,
      `there are no works called ${JSON.stringify(name)}${near === null ? '' : `; did you mean ${near}?`}`,
      `write some of ${KINDS.join(', ')}`,
    );
  });
}

function ownPosts(text: string, numbers: string): readonly number[] {
  try {
    return postsArgument(numbers);
  } catch (error) {
    if (!(error instanceof InvalidArgumentError)) throw error;
    throw new CliError(EXIT.usage, `${JSON.stringify(text)}: ${numbers} are no numbers of posts`, error.message);
  }
}
