import type { FC } from 'hono/jsx';
import type { FenceSummary } from '../../register/fence-summaries.ts';
import type { MessageLink } from '../../register/message-link-store.ts';
import type { OutboxEntry } from '../../register/outbox.ts';
import type { OwnerLink } from '../../register/owner-link-store.ts';
import type { OwnerRecord } from '../../register/owner-record.ts';
import type { RecordEdit } from '../../register/record-edit-store.ts';
import type { RecordPage } from '../../register/record-pages.ts';
import { FormAlert, FormField, TokenField } from '../frame/form-field.tsx';
import { Moment } from '../frame/moment.tsx';
import type { PageFrame } from '../frame/page-frame.ts';
import { LANGUAGE_NAMES } from '../frame/page-language.ts';
import { PageShell } from '../frame/page-shell.tsx';
import { ScrollFrame } from '../frame/scroll-frame.tsx';
import { editPath } from './edited-kinds.ts';
import { FenceSummaries, fencesSentence, PageLinks, SearchForm, standingsText } from './list-pieces.tsx';
import { RecordEdits } from './record-edits.tsx';

/** The page of all owners. */
export const OwnersPage: FC<{
  readonly frame: PageFrame;
  readonly list: RecordPage<'owners'>;
  readonly text: string;
  readonly fencesOf: (ownerRef: string) => readonly FenceSummary[];
}> = ({ frame, list, text, fencesOf }) => (
  <PageShell title="Owners" section="owners" frame={frame} cautions={false}>
    <h1>Owners</h1>
    <p class="lead">
      {list.total === 0
        ? 'The register holds no owners yet.'
        : `${list.total === 1 ? '1 owner' : `${list.total} owners`} in the register.`}
    </p>
    <p>
      <a href="/records/owners/new">Add an owner</a>, or <a href="/import">import owners.csv</a>.
    </p>
    {list.total > 0 && <SearchForm path="/owners" label="Name, ref or address" text={text} />}
    {list.records.length > 0 ? (
      <ScrollFrame label="Owners">
        <table class="stacked">
          <caption>{`${list.found} of ${list.total}, by name`}</caption>
          <thead>
            <tr>
              <th scope="col">Owner</th>
              <th scope="col">Kind</th>
              <th scope="col">Hears of them by</th>
              <th scope="col">Language</th>
              <th scope="col">Fences</th>
            </tr>
          </thead>
          <tbody>
            {list.records.map((owner) => (
              <tr>
                <th scope="row">
                  <a href={`/owners/${encodeURIComponent(owner.ref)}`}>{owner.name}</a>
                  <span class="small">{owner.ref}</span>
                </th>
                <td data-label="Kind">{owner.kind}</td>
                <td data-label="Hears of them by" class="hash">
                  {owner.channel === 'mail' ? owner.email : 'letter'}
                  {!owner.enrolled && <span class="small">not enrolled: is not written to</span>}
                </td>
                <td data-label="Language">{LANGUAGE_NAMES[owner.language]}</td>
                <td data-label="Fences">{standingsText(fencesOf(owner.ref))}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </ScrollFrame>
    ) : (
      list.total > 0 && (
        <p>
          No owner answers to that. <a href="/owners">Show all</a>.
        </p>
      )
    )}
    <PageLinks path="/owners" text={text} page={list.page} pages={list.pages} />
  </PageShell>
);

/** Properties of the page of one owner. */
export interface OwnerPageProps {
  readonly frame: PageFrame;
  readonly formToken: string;
  readonly owner: OwnerRecord;
  readonly fences: readonly FenceSummary[];
  readonly messages: readonly OutboxEntry[];
  readonly held: number;
  readonly links: readonly OwnerLink[];
  /** The messages that carried links, by the number of the link. */
  readonly carriedBy: ReadonlyMap<number, Pick<MessageLink, 'purpose' | 'subject'>>;
  readonly edits: readonly RecordEdit[];
  /** Moment of looking, ISO 8601. */
  readonly now: string;
  readonly done: string | null;
  readonly problem: string | null;
  /** A link that was just made; it is shown this once. */
  readonly newLink: string | null;
}

/** The page of one owner. */
export const OwnerPage: FC<OwnerPageProps> = (props) => {
  const { frame, owner, fences, edits, done, problem } = props;
  const facts: readonly (readonly [string, string])[] = [
    ['Ref', owner.ref],
    ['Kind', owner.kind],
    ['Mail', owner.email ?? '–'],
    ['Post', owner.postalAddress ?? '–'],
    ['Language', LANGUAGE_NAMES[owner.language]],
    ['Enrolled', owner.enrolled ? 'yes' : 'no: is not written to'],
  ];
  return (
    <PageShell title={owner.name} section="owners" frame={frame} cautions={fences.length > 0}>
      <p class="back">
        <a href="/owners">All owners</a>
      </p>
      <h1>{owner.name}</h1>
      {done && <p class="done">{done}</p>}
      {problem && <FormAlert>{problem}</FormAlert>}
      <p class="lead">
        {`${fences.length === 0 ? 'No fence is theirs.' : fencesSentence(fences)} Told by ${owner.channel}${owner.enrolled ? '' : ', but not enrolled'}.`}
      </p>
      <dl class="facts">
        {facts.map(([name, value]) => (
          <div>
            <dt>{name}</dt>
            <dd class="kept-lines hash">{value}</dd>
          </div>
        ))}
      </dl>
      <p>
        <a href={editPath('owners', owner.ref)}>Change this owner</a>
      </p>
      {fences.length > 0 && (
        <>
          <h2 id="fences">Fences</h2>
          <FenceSummaries fences={fences} beside="site" />
        </>
      )}
      <Messages {...props} />
      <Links {...props} />
      <RecordEdits edits={edits} units="us" />
    </PageShell>
  );
};

const Messages: FC<OwnerPageProps> = ({ owner, messages, held, frame }) => (
  <>
    <h2 id="notices">Notices</h2>
    {held > 0 && (
      <p>
        <a href={`/notices?owner=${encodeURIComponent(owner.ref)}`}>
          {held === 1 ? '1 notice waits for your release' : `${held} notices wait for your release`}
        </a>
      </p>
    )}
    {messages.length === 0 ? (
      <p>No message was written to this owner yet.</p>
    ) : (
      <>
        <ul class="plain">
          {messages.map((message) => (
            <li>
              <Moment at={message.createdAt} />
              {': '}
              <a href={`/outbox/${message.id}`}>{message.subject}</a>
              {` (${message.state === 'sent' && frame.catchesMail ? 'kept here' : message.state})`}
            </li>
          ))}
        </ul>
        <p>
          <a href={`/outbox?owner=${encodeURIComponent(owner.ref)}`}>All messages to this owner</a>
        </p>
      </>
    )}
  </>
);

const Links: FC<OwnerPageProps> = ({ owner, links, carriedBy, now, newLink, formToken }) => {
  const path = `/owners/${encodeURIComponent(owner.ref)}/links`;
  return (
    <>
      <h2 id="links">Links of the owner</h2>
      <p>A signed link shows this owner their fences, and nobody else’s, without an account.</p>
      {newLink && (
        <div class="done">
          <p>The link is made. Hand it to the owner only; it is shown this once.</p>
          <pre>{newLink}</pre>
        </div>
      )}
      {links.length > 0 && (
        <ul class="plain">
          {links.map((link) => (
            <li>
              <form class="in-line" method="post" action={`${path}/${link.id}/revoke`}>
                <TokenField token={formToken} />
                <span>{`Link ${link.id}, ${linkUse(carriedBy.get(link.id))}, made ${link.createdAt.slice(0, 10)}: ${linkState(link, now)}`}</span>
                {linkAnswers(link, now) && (
                  <button class="quiet" type="submit" aria-label={`Revoke link ${link.id}`}>
                    Revoke
                  </button>
                )}
              </form>
            </li>
          ))}
        </ul>
      )}
      <form class="tall" method="post" action={path}>
        <TokenField token={formToken} />
        <FormField name="days" label="It answers for so many days" value="90" hint="1 to 3650." />
        <button type="submit">Make a link</button>
      </form>
    </>
  );
};

/** What a link is for: one that no message carried was made on its own. */
function linkUse(carried: Pick<MessageLink, 'purpose' | 'subject'> | undefined): string {
  if (!carried) return 'to be handed over';
  return `${carried.purpose === 'unsubscribe' ? 'to stop mails' : 'to the owner’s pages'}, in “${carried.subject}”`;
}

const linkAnswers = (link: OwnerLink, now: string): boolean => link.revokedAt === null && link.expiresAt > now;

function linkState(link: OwnerLink, now: string): string {
  if (link.revokedAt !== null) return `revoked ${link.revokedAt.slice(0, 10)}`;
  return link.expiresAt > now
    ? `answers until ${link.expiresAt.slice(0, 10)}`
    : `over since ${link.expiresAt.slice(0, 10)}`;
}
