import type { FC } from 'hono/jsx';
import type { CaughtMail, CaughtMailContent } from '../../service/mail-catcher.ts';
import { Moment } from '../frame/moment.tsx';
import type { PageFrame } from '../frame/page-frame.ts';
import { PageShell } from '../frame/page-shell.tsx';
import { ScrollFrame } from '../frame/scroll-frame.tsx';

/** The page that lists caught mail. */
export const MailListPage: FC<{ readonly mails: readonly CaughtMail[]; readonly frame: PageFrame }> = ({
  mails,
  frame,
}) => (
  <PageShell title="Caught mail" section="mail" frame={frame} cautions={true}>
    <h1>Caught mail</h1>
    <p>
      No mail server is set, so mail to owners stops here instead of leaving. Set <code>STORMPALE_SMTP_URL</code> and it
      goes out for real.
    </p>
    {mails.length === 0 ? (
      <p>Nothing caught yet. Mail appears here a moment after a sweep has written it.</p>
    ) : (
      <ScrollFrame label="Caught mail">
        <table>
          <caption>{mails.length === 1 ? '1 mail' : `${mails.length} mails, newest first`}</caption>
          <thead>
            <tr>
              <th scope="col">Subject</th>
              <th scope="col">To</th>
              <th scope="col">Caught</th>
            </tr>
          </thead>
          <tbody>
            {mails.map((mail) => (
              <tr>
                <th scope="row">
                  <a href={`/mail/${encodeURIComponent(mail.id)}`}>{mail.subject || '(no subject)'}</a>
                </th>
                <td>{mail.to}</td>
                <td>
                  <Moment at={mail.caughtAt} />
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </ScrollFrame>
    )}
  </PageShell>
);

/** The page of one caught mail: headers, the HTML part in a frame without rights, the text part, the files. */
export const MailPage: FC<{ readonly mail: CaughtMailContent; readonly frame: PageFrame }> = ({ mail, frame }) => {
  const path = `/mail/${encodeURIComponent(mail.id)}`;
  return (
    <PageShell title={mail.subject || 'Caught mail'} section="mail" frame={frame} cautions={true}>
      <p class="back">
        <a href="/mail">All caught mail</a>
      </p>
      <h1>{mail.subject || '(no subject)'}</h1>
      <dl class="facts">
        {[
          ['From', mail.from],
          ['To', mail.to],
          ['Caught', <Moment at={mail.caughtAt} />],
          ['Message-ID', mail.messageId],
        ].map(([name, value]) => (
          <div>
            <dt>{name}</dt>
            <dd class="hash">{value}</dd>
          </div>
        ))}
      </dl>
      {mail.html !== null && (
        <>
          <h2>As most programs show it</h2>
          <iframe class="message" title="HTML part of the mail" src={`${path}/html`} sandbox="" />
        </>
      )}
      <h2>As plain text</h2>
      <pre>{mail.text}</pre>
      <h2>Files</h2>
      <ul class="plain">
        {mail.files.map((file, index) => (
          <li>
            <a href={`${path}/files/${index}`} download={file.name}>
              {file.name}
            </a>
            {` (${file.contentType}, ${file.content.byteLength} bytes)`}
          </li>
        ))}
        <li>
          <a href={`${path}/raw`} download={`${mail.id}.eml`}>
            The whole mail
          </a>
          {` (${mail.raw.byteLength} bytes, with every header)`}
        </li>
      </ul>
    </PageShell>
  );
};
