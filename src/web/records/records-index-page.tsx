import type { FC } from 'hono/jsx';
import { TokenField } from '../frame/form-field.tsx';
import type { PageFrame } from '../frame/page-frame.ts';
import { PageShell } from '../frame/page-shell.tsx';

type Entry = readonly [path: string, name: string, about: string];

const GROUPS: readonly (readonly [heading: string, entries: readonly Entry[]])[] = [
  [
    'Bring in and take out',
    [
      ['/import', 'Import', 'CSV files, with a look at what they would change before anything does'],
      ['/import#columns', 'Columns and exports', 'empty files to fill in, and all that the register holds'],
    ],
  ],
  [
    'What was seen and done',
    [
      ['/storms', 'Report a storm', 'what became of the fences of a site, all at once'],
      ['/learned', 'Learned', 'what readings and storms say about rot and footings, accepted or taken back'],
    ],
  ],
  [
    'What the season is planned with',
    [
      ['/crews', 'Crews', 'members, hours, licences, languages, days off'],
      ['/catalogue', 'Works catalogue', 'hours, prices and materials of each kind of works'],
      ['/seasons', 'Storm seasons', 'when each region’s season opens and closes'],
      ['/climate-zones', 'Climate zones', 'rain, warmth and dry months, from which the pace of rot follows'],
    ],
  ],
  [
    'How the service runs',
    [
      ['/settings', 'Settings', 'design return period, look-ahead, reminders, who writes to owners'],
      ['/accounts', 'Accounts', 'who signs in, and what they see'],
    ],
  ],
];

/** The page that leads to what the office needs now and then. */
export const RecordsIndexPage: FC<{
  readonly frame: PageFrame;
  readonly formToken: string;
  readonly done: string | null;
}> = ({ frame, formToken, done }) => (
  <PageShell title="Records" section="records" frame={frame} cautions={false}>
    <h1>Records</h1>
    {done && <p class="done">{done}</p>}
    <p class="lead">Everything that forecasts and plans rest on, and the way to bring it in.</p>
    {GROUPS.map(([heading, entries]) => (
      <>
        <h2>{heading}</h2>
        <dl class="index">
          {entries.map(([path, name, about]) => (
            <div>
              <dt>
                <a href={path}>{name}</a>
              </dt>
              <dd>{about}</dd>
            </div>
          ))}
        </dl>
      </>
    ))}
    <h2>Sweep</h2>
    <p>
      The sweep computes every fence whose records changed, and writes the notices that follow. It runs every night.
    </p>
    <form class="tall" method="post" action="/records/sweep">
      <TokenField token={formToken} />
      <button type="submit">Sweep now</button>
    </form>
  </PageShell>
);
