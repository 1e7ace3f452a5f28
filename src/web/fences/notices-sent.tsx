import type { FC } from 'hono/jsx';
import type { StoredNotice } from '../../register/notice-store.ts';

/** Notices about the fence, newest first. */
export const NoticesSent: FC<{ readonly notices: readonly StoredNotice[] }> = ({ notices }) => (
  <>
    <h2>Notices</h2>
    {notices.length === 0 ? (
      <p>None yet: its owners are written to when its standing or a mark changes.</p>
    ) : (
      <table>
        <caption class="visually-hidden">Notices about this fence, newest first</caption>
        <thead>
          <tr>
            <th scope="col">Decided</th>
            <th scope="col">Matter</th>
            <th scope="col">Owner</th>
          </tr>
        </thead>
        <tbody>
          {notices.map((notice) => (
            <tr>
              <td>{notice.createdAt.slice(0, 10)}</td>
              <td>{notice.matter}</td>
              <td>{notice.ownerRef}</td>
            </tr>
          ))}
        </tbody>
      </table>
    )}
  </>
);
