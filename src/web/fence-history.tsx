import type { FC } from 'hono/jsx';
import type { DisplayUnits } from '../drawing/speed-text.ts';
import { speedText } from '../drawing/speed-text.ts';
import type { FenceForecast } from '../forecast/fence-forecast.ts';
import type { Works } from '../forecast/works.ts';
import type { StoredNotice } from '../register/notice-store.ts';
import { worksText } from './record-words.ts';

/** What the register does not know and what the forecast remarks. */
export const Unknowns: FC<{ readonly forecast: FenceForecast; readonly units: DisplayUnits }> = ({
  forecast,
  units,
}) => {
  const unknowns = forecast.unknowns.toSorted((a, b) => b.swingMps - a.swingMps);
  return (
    <>
      <h2>What it does not know</h2>
      {unknowns.length === 0 ? (
        <p>Every input of the forecast is recorded.</p>
      ) : (
        <ul class="plain">
          {unknowns.map((unknown) => (
            <li>
              {`The ${unknown.input}: ${unknown.standsIn} stands in. It moves the ${unknown.moves} speed by ${speedText(unknown.swingMps, units)} between its likely ends.`}
            </li>
          ))}
        </ul>
      )}
      {forecast.remarks.length > 0 && (
        <ul class="plain">
          {forecast.remarks.map((remark) => (
            <li>{remark}</li>
          ))}
        </ul>
      )}
    </>
  );
};

/** Works done, newest first. */
export const WorksDone: FC<{ readonly works: readonly Works[] }> = ({ works }) => (
  <>
    <h2>Works done</h2>
    {works.length === 0 ? (
      <p>None recorded.</p>
    ) : (
      <table>
        <caption class="visually-hidden">Works done, newest first</caption>
        <thead>
          <tr>
            <th scope="col">Day</th>
            <th scope="col">Works</th>
          </tr>
        </thead>
        <tbody>
          {works
            .toSorted((a, b) => (a.day < b.day ? 1 : -1))
            .map((done) => (
              <tr>
                <td>{done.day}</td>
                <td>{worksText(done)}</td>
              </tr>
            ))}
        </tbody>
      </table>
    )}
  </>
);

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
