import { createContext, type FC, useContext } from 'hono/jsx';
import { momentInZone } from '../../service/clock.ts';

/** Zone in which the pages of the office show moments; the frame of a page sets it. */
export const OfficeZone = createContext('UTC');

/** How a component writes stored moments where an element cannot stand, as in an attribute. */
export const useMomentText = (): ((iso: string) => string) => {
  const zone = useContext(OfficeZone);
  return (iso) => momentInZone(iso, zone);
};

/** A stored moment (ISO text in UTC) in the office's zone: `2027-05-31 09:05 CDT`; programs find the moment itself. */
export const Moment: FC<{ readonly at: string }> = ({ at }) => (
  <time class="moment" datetime={at}>
    {momentInZone(at, useContext(OfficeZone))}
  </time>
);
