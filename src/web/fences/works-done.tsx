import type { FC } from 'hono/jsx';
import type { Works } from '../../forecast/works.ts';
import { worksText } from './record-words.ts';

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
