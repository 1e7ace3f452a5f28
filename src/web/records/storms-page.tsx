import type { FC } from 'hono/jsx';
import type { ExportUnits } from '../../register/csv/csv-field.ts';
import { FormAlert, FormField, TokenField } from '../frame/form-field.tsx';
import type { PageFrame } from '../frame/page-frame.ts';
import { PageShell } from '../frame/page-shell.tsx';
import { ScrollFrame } from '../frame/scroll-frame.tsx';
import type { FenceEntry, StormEntry } from './storm-form.ts';

/** Something wrong or doubtful about a report: of the storm, or of a fence. */
export interface StormFault {
  /** Null where it is about the storm itself. */
  readonly fenceRef: string | null;
  readonly field: string;
  readonly reason: string;
}

/** Properties of the page on which a storm is reported. */
export interface StormsPageProps {
  readonly frame: PageFrame;
  readonly formToken: string;
  readonly sites: readonly { readonly ref: string; readonly name: string }[];
  /** The site whose fences are shown; null before one is chosen. */
  readonly site: { readonly ref: string; readonly name: string; readonly units: ExportUnits } | null;
  readonly storm: StormEntry;
  readonly fences: readonly FenceEntry[];
  readonly faults: readonly StormFault[];
  readonly warnings: readonly StormFault[];
  readonly asked: boolean;
  readonly done: string | null;
}

/** The page on which the office reports what a storm did to the fences of a site. */
export const StormsPage: FC<StormsPageProps> = (props) => {
  const { frame, sites, site, done } = props;
  return (
    <PageShell title="Report a storm" section="records" frame={frame} cautions={false}>
      <p class="back">
        <a href="/records">Records</a>
      </p>
      <h1>Report a storm</h1>
      {done && <p class="done">{done}</p>}
      <p class="lead">
        A storm that passed is a test of every fence: one that stood is better than feared, one that leaned or snapped
        tells where it is weak.
      </p>
      {sites.length === 0 ? (
        <p>The register holds no sites yet.</p>
      ) : (
        <form class="narrow" method="get" action="/storms">
          <div class="field">
            <label for="site">Site</label>
            <select id="site" name="site">
              {sites.map(({ ref, name }) => (
                <option value={ref} selected={ref === site?.ref}>
                  {name}
                </option>
              ))}
            </select>
          </div>
          <button type="submit">Show its fences</button>
        </form>
      )}
      {site && <Report {...props} site={site} />}
    </PageShell>
  );
};

const Report: FC<StormsPageProps & { readonly site: NonNullable<StormsPageProps['site']> }> = (props) => {
  const { formToken, site, storm, fences, faults, warnings, asked } = props;
  const fault = (...fields: readonly string[]): string | undefined =>
    faults.find((each) => each.fenceRef === null && fields.includes(each.field))?.reason;
  const known = ['storm', 'day', 'gust', 'gust_spread_percent', 'gust_source', 'reported_by'];
  const lone = faults.filter(({ fenceRef, field }) => fenceRef === null && !known.includes(field));
  return (
    <form method="post" action={`/storms?site=${encodeURIComponent(site.ref)}`}>
      <TokenField token={formToken} />
      <h2>{site.name}</h2>
      {faults.length > 0 && (
        <FormAlert>
          {'Nothing was stored. '}
          {asked
            ? 'Some of it contradicts what the register knows. Correct it, or say below that it is so.'
            : lone.map(({ reason }) => reason).join(' · ') || 'See below what to correct.'}
        </FormAlert>
      )}
      <Remarks faults={faults.filter(({ fenceRef }) => fenceRef !== null)} name="What stands against it" />
      <Remarks faults={warnings} name="Doubtful" />
      <div class="tall-fields">
        <FormField
          name="storm"
          label="Name of the storm"
          value={storm.storm}
          fault={fault('storm')}
          hint="The same for every fence: they share its wind."
        />
        <FormField name="day" label="Day" value={storm.day} fault={fault('day')} hint="As 2026-09-14." />
        <FormField
          name="gust"
          label={`Highest gust [${site.units === 'us' ? 'mph' : 'km/h'}]`}
          value={storm.gust}
          fault={fault('gust')}
          hint="3-second gust at 10 m in open terrain, as weather stations give it."
        />
        <FormField
          name="spread"
          label="How unsure it is [%] (may be empty)"
          value={storm.spread}
          required={false}
          fault={fault('gust_spread_percent')}
          hint="10 where it was measured near the fences."
        />
        <FormField
          name="gust_source"
          label="Where it was read (may be empty)"
          value={storm.source}
          required={false}
          fault={fault('gust_source')}
        />
        <FormField name="reported_by" label="Who reports" value={storm.reporter} fault={fault('reported_by')} />
      </div>
      {fences.length === 0 ? (
        <p>No fence stands here.</p>
      ) : (
        <>
          <p>
            A fence without a tick and without numbers counts as one nobody looked at. Posts are numbers parted by
            blanks, as 3 4 7-9, or all.
          </p>
          <FenceRows fences={fences} faults={faults} />
          {asked && (
            <div class="tick">
              <input id="confirmed" type="checkbox" name="confirmed" value="yes" />
              <label for="confirmed">It is so: take it as it stands</label>
            </div>
          )}
          <button type="submit">Store the report</button>
        </>
      )}
    </form>
  );
};

const Remarks: FC<{ readonly faults: readonly StormFault[]; readonly name: string }> = ({ faults, name }) =>
  faults.length === 0 ? null : (
    <>
      <h3>{name}</h3>
      <ul class="plain">
        {faults.map(({ fenceRef, field, reason }) => (
          <li>{`${fenceRef === null ? '' : `Fence ${fenceRef}, `}${field.replaceAll('_', ' ')}: ${reason}`}</li>
        ))}
      </ul>
    </>
  );

const FenceRows: FC<{ readonly fences: readonly FenceEntry[]; readonly faults: readonly StormFault[] }> = ({
  fences,
  faults,
}) => (
  <ScrollFrame label="Fences">
    <table class="stacked">
      <caption class="visually-hidden">What became of each fence</caption>
      <thead>
        <tr>
          <th scope="col">Fence</th>
          <th scope="col">Stood, but for what is named beside</th>
          <th scope="col">Posts that leaned</th>
          <th scope="col">Posts that snapped</th>
        </tr>
      </thead>
      <tbody>
        {fences.map((entry) => {
          const { fenceRef, stood, leaned, snapped } = entry;
          const isWrong = faults.some((fault) => fault.fenceRef === fenceRef) ? 'true' : undefined;
          return (
            <tr>
              <th scope="row">
                <a href={`/fences/${encodeURIComponent(fenceRef)}`}>{fenceRef}</a>
              </th>
              <td data-label="Stood, but for what is named beside">
                <input
                  type="checkbox"
                  name={`stood ${fenceRef}`}
                  value="yes"
                  checked={stood}
                  aria-label={`Fence ${fenceRef} stood`}
                />
              </td>
              <td data-label="Posts that leaned">
                <input
                  type="text"
                  name={`leaned ${fenceRef}`}
                  value={leaned}
                  autocomplete="off"
                  aria-label={`Posts of fence ${fenceRef} that leaned`}
                  aria-invalid={isWrong}
                />
              </td>
              <td data-label="Posts that snapped">
                <input
                  type="text"
                  name={`snapped ${fenceRef}`}
                  value={snapped}
                  autocomplete="off"
                  aria-label={`Posts of fence ${fenceRef} that snapped`}
                  aria-invalid={isWrong}
                />
              </td>
            </tr>
          );
        })}
      </tbody>
    </table>
  </ScrollFrame>
);
