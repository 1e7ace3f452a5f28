import type { FC } from 'hono/jsx';
import type { FeedLink } from '../../register/feed-link-store.ts';
import { FormAlert, TokenField } from '../frame/form-field.tsx';
import { Moment } from '../frame/moment.tsx';
import type { PageFrame } from '../frame/page-frame.ts';
import { PageShell } from '../frame/page-shell.tsx';
import { ScrollFrame } from '../frame/scroll-frame.tsx';
import type { SeasonNames } from '../frame/season-names.ts';

/** Properties of the page of calendar links. */
interface FeedLinksPageProps extends SeasonNames {
  readonly links: readonly FeedLink[];
  /** Sites to choose from; null where there are too many: the ref is typed then. */
  readonly sites: ReadonlyMap<string, string> | null;
  /** The link that was just made, with its address, which is shown this once. */
  readonly made: { readonly link: FeedLink; readonly url: string } | null;
  readonly fault: string | null;
  readonly formToken: string;
  readonly frame: PageFrame;
}

const nameOf = ({ kind, ref }: FeedLink, { crewNames, siteNames }: SeasonNames): string =>
  (kind === 'crew' ? crewNames : siteNames).get(ref) ?? ref;

/** The page of secret links to calendars of visits. */
export const FeedLinksPage: FC<FeedLinksPageProps> = (props) => {
  const { links, made, fault, formToken, frame, crewNames, sites } = props;
  return (
    <PageShell title="Calendar links" section="visits" frame={frame} cautions={false}>
      <p class="back">
        <a href="/visits">All visits</a>
      </p>
      <h1>Calendar links</h1>
      <p class="lead">
        A secret address shows the visits of one crew or one site in a calendar program, and follows every change.
      </p>
      <p>
        Whoever has the address can read it; nobody can change anything through it. A link that is revoked never answers
        again.
      </p>
      {fault !== null && <FormAlert>{fault}</FormAlert>}
      {made && (
        <section aria-label="The new link">
          <p class="done">
            {`The calendar of ${nameOf(made.link, props)}, link ${made.link.id}. Copy the address now: it is shown this once, for the register keeps only a digest of it. Add it to the calendar as a subscription, not as an import.`}
          </p>
          <p class="secret">
            <code>{made.url}</code>
          </p>
        </section>
      )}
      <form class="narrow" method="post" action="/feeds">
        <TokenField token={formToken} />
        <div class="field">
          <label for="subject">Whose visits</label>
          <select id="subject" name="subject" required={sites !== null}>
            <option value="">{sites === null ? 'choose a crew, or type a site' : 'choose a crew or a site'}</option>
            <optgroup label="Crews">
              {[...crewNames].map(([ref, name]) => (
                <option value={`crew ${ref}`}>{name}</option>
              ))}
            </optgroup>
            {sites !== null && (
              <optgroup label="Sites">
                {[...sites].map(([ref, name]) => (
                  <option value={`site ${ref}`}>{name}</option>
                ))}
              </optgroup>
            )}
          </select>
        </div>
        {sites === null && (
          <div class="field">
            <label for="site">Or the ref of a site</label>
            <input id="site" name="site" type="text" maxlength={40} />
          </div>
        )}
        <button type="submit">Make a link</button>
      </form>
      {links.length > 0 && (
        <ScrollFrame label="Calendar links">
          <table class="stacked">
            <caption>{links.length === 1 ? '1 link' : `${links.length} links`}, the first made first</caption>
            <thead>
              <tr>
                <th scope="col">Link</th>
                <th scope="col">Visits of</th>
                <th scope="col">Made</th>
                <th scope="col">State</th>
              </tr>
            </thead>
            <tbody>
              {links.map((link) => (
                <tr>
                  <th scope="row">{`Link ${link.id}`}</th>
                  <td data-label="Visits of">
                    {nameOf(link, props)}
                    <span class="small">{link.kind}</span>
                  </td>
                  <td data-label="Made">
                    <Moment at={link.createdAt} />
                  </td>
                  <td data-label="State">
                    {link.revokedAt === null ? (
                      <form class="inline" method="post" action={`/feeds/${link.id}/revoke`}>
                        <TokenField token={formToken} />
                        <button type="submit" aria-label={`Revoke link ${link.id}`}>
                          Revoke
                        </button>
                      </form>
                    ) : (
                      <>
                        {'revoked '}
                        <Moment at={link.revokedAt} />
                      </>
                    )}
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        </ScrollFrame>
      )}
    </PageShell>
  );
};
