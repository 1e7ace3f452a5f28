import { count, ownersOf } from '../service/learned-words.ts';
import type { LearnedPreview, StandingChange } from '../service/preview-learned.ts';

/** Lines listed one by one; of more only the number is told. */
const MOST_LISTED = 40;

const changeText = ({ ref, of, from, to }: StandingChange): string =>
  `  ${ref}${of === 'ends' ? ', its ends' : ''}: ${from ?? 'not forecast yet'} -> ${to ?? 'none'}`;

function listed(lines: readonly string[]): readonly string[] {
  if (lines.length <= MOST_LISTED) return lines;
  return [...lines.slice(0, MOST_LISTED), `  and ${lines.length - MOST_LISTED} more (all of them with --json)`];
}

/** What would change, as text. */
export function previewText(preview: LearnedPreview): string {
  const { fences, standings } = preview;
  const owners = ownersOf(preview);
  const changed = new Set(standings.map(({ ref }) => ref)).size;
  return [
    `The next sweep would forecast ${count(fences.length, 'fence')} anew; the standing of ${changed === 0 ? 'none' : changed} of them would change${changed === 0 ? '.' : ':'}`,
    ...listed(standings.map(changeText)),
    owners.length === 0
      ? 'No owner would get a notice because of it.'
      : `${count(owners.length, 'owner')} would get a notice because of it:`,
    ...listed(owners.map((owner) => `  ${owner.ref}, about ${owner.fences.join(', ')}`)),
    'Nothing was changed: this was a dry run.',
    '',
  ].join('\n');
}
