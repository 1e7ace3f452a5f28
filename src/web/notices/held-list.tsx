import type { FC } from 'hono/jsx';
import type { HeldNotice, HeldOverview } from '../../register/held-notices.ts';
import { LONGEST_SENTENCE } from '../../service/preview-release.ts';
import { TokenField } from '../frame/form-field.tsx';
import { ScrollFrame } from '../frame/scroll-frame.tsx';
import { count, WHY_HELD } from './held-words.ts';

/** Notices shown at most; the rest is released in bulk or by narrowing the list. */
export const MOST_HELD_SHOWN = 300;

/** What the list of held notices is narrowed to. */
export interface HeldAsked {
  readonly matter: string;
  readonly owner: string;
}

/** The held notices of one owner, in the order of the list. */
interface OfOwner {
  readonly ownerRef: string;
  readonly ownerName: string;
  readonly notices: readonly HeldNotice[];
}

const isDanger = ({ matter }: HeldNotice): boolean => matter === 'dangerous';

/** Owners with something dangerous stand first. */
function byOwner(held: readonly HeldNotice[]): readonly OfOwner[] {
  const groups = new Map<string, HeldNotice[]>();
  for (const notice of held) {
    const known = groups.get(notice.ownerRef);
    if (known) known.push(notice);
    else groups.set(notice.ownerRef, [notice]);
  }
  const owners = [...groups.values()].flatMap((notices) => {
    const [first] = notices;
    return first ? [{ ownerRef: first.ownerRef, ownerName: first.ownerName, notices }] : [];
  });
  const urgent = (owner: OfOwner): boolean => owner.notices.some(isDanger);
  return [...owners.filter(urgent), ...owners.filter((owner) => !urgent(owner))];
}

/** The form that releases held notices: those that are ticked, or all of the list. */
export const HeldList: FC<{
  readonly formToken: string;
  readonly held: HeldOverview;
  readonly asked: HeldAsked;
  readonly sentence: string;
}> = ({ formToken, held, asked, sentence }) => {
  const owners = byOwner(held.first);
  return (
    <form class="release" method="post" action="/notices/release">
      <TokenField token={formToken} />
      <input type="hidden" name="matter" value={asked.matter} />
      <input type="hidden" name="owner" value={asked.owner} />
      <input type="hidden" name="newest" value={String(held.newest)} />
      <ScrollFrame label="Held notices">
        <table class="stacked held">
          <caption>
            {`${count(held.notices, 'notice')} to ${count(held.owners, 'owner')}`}
            {held.notices > held.first.length && `; the first ${held.first.length} are shown`}
          </caption>
          <thead>
            <tr>
              <th scope="col">Release</th>
              <th scope="col">Matter</th>
              <th scope="col">Fence</th>
              <th scope="col">Held because</th>
              <th scope="col">Since</th>
            </tr>
          </thead>
          {owners.map((owner) => (
            <OwnerRows owner={owner} />
          ))}
        </table>
      </ScrollFrame>
      <div class="field">
        <label for="sentence">A sentence of your own after the greeting (may be empty)</label>
        <textarea id="sentence" name="sentence" rows={3} maxlength={LONGEST_SENTENCE} aria-describedby="sentence-hint">
          {sentence}
        </textarea>
        <p class="hint" id="sentence-hint">
          {`It stands in every message of this release as you write it, also in those to owners who read Spanish. At most ${LONGEST_SENTENCE} characters.`}
        </p>
      </div>
      <div class="two-ways">
        <button type="submit" name="act" value="ticked">
          Release what is ticked
        </button>
        <button class="quiet" type="submit" name="act" value="all">
          {`Release all ${held.notices} of this list …`}
        </button>
      </div>
    </form>
  );
};

const OwnerRows: FC<{ readonly owner: OfOwner }> = ({ owner }) => (
  <tbody>
    <tr class="group">
      <th scope="rowgroup" colspan={5}>
        <a href={`/owners/${encodeURIComponent(owner.ownerRef)}`}>{owner.ownerName}</a>
        {', '}
        {count(owner.notices.length, 'notice')}
        {': '}
        <a href={`/notices/preview?owner=${encodeURIComponent(owner.ownerRef)}`}>
          see the message<span class="visually-hidden">{` to ${owner.ownerName}`}</span>
        </a>
      </th>
    </tr>
    {owner.notices.map((notice) => (
      <tr>
        <td data-label="Release">
          <input
            type="checkbox"
            name="id"
            value={String(notice.id)}
            aria-label={`${notice.matter}, fence ${notice.fenceRef}`}
          />
        </td>
        <td data-label="Matter">{isDanger(notice) ? <strong>{notice.matter}</strong> : notice.matter}</td>
        <td data-label="Fence">
          <a href={`/fences/${encodeURIComponent(notice.fenceRef)}`}>{notice.fenceRef}</a>
          <span class="small">{notice.siteName}</span>
        </td>
        <td data-label="Held because">{WHY_HELD[notice.held]}</td>
        <td data-label="Since">{notice.createdAt.slice(0, 10)}</td>
      </tr>
    ))}
  </tbody>
);
