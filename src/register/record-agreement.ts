import { generatePostPositions } from '../forecast/post-positions.ts';
import { type FenceRecord, runFacts } from './fence-record.ts';
import { overriddenWood, type PostRecord } from './post-record.ts';
import { refuseWood } from './post-wood-record.ts';
import type { Refuse } from './value-schemas.ts';
import type { WorksRecord } from './works-record.ts';

const metres = (value: number): string => `${Number(value.toPrecision(6))} m`;

/** Refuses a post that its fence cannot have: number, position, material, or a shared corner that does not meet. */
export function refusePost(
  post: PostRecord,
  fence: FenceRecord,
  sharedFence: FenceRecord | null,
  refuse: Refuse,
): void {
  const positions = generatePostPositions(fence.runLengthM, fence.postSpacingM);
  const count = positions.length;
  if (post.number > count) {
    refuse('number', `fence ${fence.ref} has posts 1 to ${count}; correct the number, or record added posts as works`);
    return;
  }
  if (post.positionM !== null && post.positionM > fence.runLengthM) {
    refuse('positionM', `beyond the run of fence ${fence.ref}, which is ${metres(fence.runLengthM)} long; correct it`);
  }
  if (post.installedLatest !== null && post.installedLatest < fence.installedEarliest) {
    refuse(
      'installedEarliest',
      `before fence ${fence.ref} was installed (${fence.installedEarliest} at the earliest); correct one of them`,
    );
  }
  const wood = overriddenWood(post, fence);
  if (wood) refuseWood(wood, refuse);
  if (sharedFence && post.sharedEnd) refuseCorner(post, fence, sharedFence, refuse);
}

function refuseCorner(post: PostRecord, fence: FenceRecord, shared: FenceRecord, refuse: Refuse): void {
  const count = generatePostPositions(fence.runLengthM, fence.postSpacingM).length;
  if (post.number !== 1 && post.number !== count) {
    refuse('sharedFenceRef', `a corner is at an end; only post 1 or ${count} of fence ${fence.ref} can share one`);
    return;
  }
  if (shared.siteRef !== fence.siteRef) {
    refuse(
      'sharedFenceRef',
      `fence ${shared.ref} stands on site ${shared.siteRef}, not ${fence.siteRef}; name its neighbour`,
    );
    return;
  }
  const [ownA, ownB] = runFacts(fence).ends;
  const own = post.number === 1 ? ownA : ownB;
  const other = runFacts(shared).ends[post.sharedEnd === 'A' ? 0 : 1];
  const meets = (kind: string): boolean => kind === 'return' || kind === 'unknown';
  if (!meets(own.kind)) {
    refuse(
      'sharedFenceRef',
      `this end of fence ${fence.ref} is recorded as ${own.kind}, not as a return; correct one of them`,
    );
  }
  if (!meets(other.kind)) {
    refuse(
      'sharedEnd',
      `end ${post.sharedEnd} of fence ${shared.ref} is recorded as ${other.kind}, not as a return; correct one of them`,
    );
  }
}

/**
 * Refuses works that cannot have been done to a fence: before it stood, to posts it had not, at positions off its run.
 * @param works everything done to the fence; `refuseOf` gives where to say it, null for works not to be judged
 */
export function refuseWorks(
  works: readonly WorksRecord[],
  fence: FenceRecord,
  refuseOf: (each: WorksRecord) => Refuse | null,
): void {
  let count = generatePostPositions(fence.runLengthM, fence.postSpacingM).length;
  const inOrder = [...works].sort((a, b) => (`${a.day} ${a.ref}` < `${b.day} ${b.ref}` ? -1 : 1));
  for (const each of inOrder) {
    const refuse = refuseOf(each);
    if (refuse && each.day < fence.installedEarliest) {
      refuse(
        'day',
        `before fence ${fence.ref} was installed (${fence.installedEarliest} at the earliest); correct one of them`,
      );
    }
    if (refuse && each.posts !== 'all' && each.posts.some((number) => number > count)) {
      refuse('posts', `fence ${fence.ref} had posts 1 to ${count} on that day; correct the numbers`);
    }
    if (each.kind === 'added-posts' && each.positionsM) {
      if (refuse && each.positionsM.some((position) => position > fence.runLengthM)) {
        refuse(
          'positionsM',
          `beyond the run of fence ${fence.ref}, which is ${metres(fence.runLengthM)} long; correct it`,
        );
      }
      count += each.positionsM.length;
    }
    if (each.kind === 'rebuild') {
      count = generatePostPositions(fence.runLengthM, each.postSpacingM ?? fence.postSpacingM).length;
      if (refuse && each.postSpacingM !== null && each.postSpacingM > fence.runLengthM) {
        refuse('postSpacingM', 'longer than the run; give the distance from post to post');
      }
    }
  }
}
