import { postsOfOutcome, STORM_RESULTS } from '../forecast/evidence/storm-outcome.ts';
import { fenceStates, stateBefore } from '../forecast/fence-state.ts';
import type { Register } from '../register/database.ts';
import { namedPosts } from '../register/evidence-post-list.ts';
import { loadFenceFacts } from '../register/fence-facts-store.ts';
import { readRecord } from '../register/record-store.ts';
import type { StormOutcomeRecord } from '../register/storm-outcome-record.ts';

/** The outcomes that a ref names: the one of that ref, or all that one report of a storm stored under it. */
export async function outcomesOfRef(register: Register, ref: string): Promise<readonly StormOutcomeRecord[]> {
  const exact = await readRecord(register.db, 'outcomes', ref);
  if (exact) return [exact];
  const parts = await Promise.all(
    STORM_RESULTS.map((result) => readRecord(register.db, 'outcomes', `${ref}/${result}`)),
  );
  return parts.filter((part) => part !== null);
}

/**
 * What an outcome of "all" posts that is left behind would then speak of too, in a sentence, where outcomes of the same storm and fence
 * are taken back; null where it speaks of no more than before.
 */
export async function spreadingOutcome(
  register: Register,
  outcomes: readonly StormOutcomeRecord[],
): Promise<string | null> {
  const [first] = outcomes;
  const facts = first && (await loadFenceFacts(register, [first.fenceRef])).get(first.fenceRef);
  if (!first || !facts) return null;
  const gone = new Set(outcomes.map(({ ref }) => ref));
  const all = facts.outcomes.find((each) => each.storm === first.storm && each.posts === 'all' && !gone.has(each.ref));
  if (!all) return null;
  const state = stateBefore(fenceStates(facts), all.day);
  const before = new Set(postsOfOutcome(all, facts.outcomes, state));
  const left = facts.outcomes.filter(({ ref }) => !gone.has(ref));
  const added = postsOfOutcome(all, left, state).filter((post) => !before.has(post));
  if (added.length === 0) return null;
  return `without ${[...gone].join(', ')}, outcome ${all.ref} (all posts ${all.result}) would speak of ${namedPosts(added)} too`;
}
