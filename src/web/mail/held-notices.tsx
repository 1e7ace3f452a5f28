import type { FC } from 'hono/jsx';
import type { HeldNotice, HeldOverview } from '../../register/held-notices.ts';
import type { OfficeNotice } from '../../register/office-notices.ts';
import { momentText } from '../frame/moment-text.ts';
import { ScrollFrame } from '../frame/scroll-frame.tsx';

/** Rows of a list shown at most; the command shows all. */
export const MOST_SHOWN = 100;

const WHY: Readonly<Record<HeldNotice['held'], string>> = {
  'first sweep': 'found by the first sweep',
  matter: 'its matter is held',
  'kept back': 'others of its owner were released before it',
};

const count = (number: number, what: string): string => `${number} ${what}${number === 1 ? '' : 's'}`;

/** Notices that wait until the office releases them; nothing where none do. */
export const HeldNotices: FC<{ readonly held: HeldOverview }> = ({ held }) => {
  if (held.notices === 0) return null;
  return (
    <section>
      <h2 id="held">Held</h2>
      <p>
        {`${count(held.notices, 'notice')} to ${count(held.owners, 'owner')} ${held.notices === 1 ? 'waits' : 'wait'} until you release ${held.notices === 1 ? 'it' : 'them'}: `}
        <code>stormpale mail release --all</code>
        {', or by '}
        <code>--owner</code>, <code>--matter</code>
        {' or number; '}
        <code>--sentence</code>
        {' puts a sentence of your own after the greeting. What is no longer so by then is not sent.'}
      </p>
      {held.dangerous > 0 && (
        <p>
          <strong>{`${count(held.dangerous, 'notice')} of danger among them: call these owners, or release these first.`}</strong>
        </p>
      )}
      <ScrollFrame label="Held notices">
        <table class="stacked">
          <caption>{`Held notices${held.notices > held.first.length ? `, ${held.first.length} of ${held.notices}` : ''}`}</caption>
          <thead>
            <tr>
              <th scope="col" class="figure">
                No.
              </th>
              <th scope="col">Matter</th>
              <th scope="col">Fence</th>
              <th scope="col">To</th>
              <th scope="col">Held because</th>
            </tr>
          </thead>
          <tbody>
            {held.first.map((notice) => (
              <tr>
                <td data-label="No." class="figure">
                  {notice.id}
                </td>
                <th scope="row">{notice.matter}</th>
                <td data-label="Fence">
                  <a href={`/fences/${encodeURIComponent(notice.fenceRef)}`}>{notice.fenceRef}</a>
                  <span class="small">{notice.siteName}</span>
                </td>
                <td data-label="To">
                  {notice.ownerName}
                  <span class="small">{notice.ownerRef}</span>
                </td>
                <td data-label="Held because">{WHY[notice.held]}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </ScrollFrame>
    </section>
  );
};

/** What the sweep found for the office itself; nothing where it has settled everything. */
export const OfficeNotices: FC<{ readonly notices: readonly OfficeNotice[] }> = ({ notices }) =>
  notices.length === 0 ? null : (
    <section>
      <h2 id="office">For the office</h2>
      <p>
        {'What the sweep found for you. When it is dealt with: '}
        <code>stormpale mail office --settle NUMBER</code>.
      </p>
      <ScrollFrame label="For the office">
        <table class="stacked">
          <caption>For the office</caption>
          <thead>
            <tr>
              <th scope="col" class="figure">
                No.
              </th>
              <th scope="col">Fence</th>
              <th scope="col">What</th>
              <th scope="col">Since</th>
            </tr>
          </thead>
          <tbody>
            {notices.slice(0, MOST_SHOWN).map((notice) => (
              <tr>
                <td data-label="No." class="figure">
                  {notice.id}
                </td>
                <th scope="row">
                  <a href={`/fences/${encodeURIComponent(notice.fenceRef)}`}>{notice.fenceRef}</a>
                  <span class="small">{notice.siteName}</span>
                </th>
                <td data-label="What">
                  {notice.matter}
                  <span class="small">{notice.occasion.replace(/; told .*$/, '')}</span>
                </td>
                <td data-label="Since">{momentText(notice.createdAt)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </ScrollFrame>
    </section>
  );
