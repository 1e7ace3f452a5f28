import type { FC } from 'hono/jsx';
import type { StoppedAddress } from '../../register/delivery-reports.ts';
import { reasonIn } from '../../service/delivery-report.ts';
import { Moment } from '../frame/moment.tsx';
import { ScrollFrame } from '../frame/scroll-frame.tsx';

/** Addresses that get no mail because one came back for good; nothing where there are none. */
export const StoppedAddresses: FC<{ readonly stopped: readonly StoppedAddress[] }> = ({ stopped }) =>
  stopped.length === 0 ? null : (
    <section>
      <h2 id="stopped">Stopped addresses</h2>
      <p>
        {
          'A mail to these came back for good, and nothing more is sent there. Call the owner, correct the address, then: '
        }
        <code>stormpale mail resume ADDRESS</code>.
      </p>
      <ScrollFrame label="Stopped addresses">
        <table class="stacked">
          <caption>Stopped addresses</caption>
          <thead>
            <tr>
              <th scope="col">Address</th>
              <th scope="col">Owner</th>
              <th scope="col">Why</th>
              <th scope="col">Since</th>
              <th scope="col" class="figure">
                Waiting
              </th>
            </tr>
          </thead>
          <tbody>
            {stopped.map((each) => (
              <tr>
                <th scope="row">{each.address}</th>
                <td data-label="Owner">
                  {each.ownerName}
                  <span class="small">{each.ownerRef}</span>
                </td>
                <td data-label="Why">
                  {reasonIn(each)}
                  <span class="small">{`Message ${each.outboxId}: ${each.subject}`}</span>
                </td>
                <td data-label="Since">
                  <Moment at={each.since} />
                </td>
                <td data-label="Waiting" class="figure">
                  {each.waiting}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </ScrollFrame>
    </section>
  );
