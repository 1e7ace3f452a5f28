import type { FC } from 'hono/jsx';
import type { OutboxEntry } from '../../register/outbox.ts';
import type { OwnerQuote } from '../../service/owner-quotes.ts';
import type { PageLanguage } from '../frame/page-language.ts';
import { OwnerShell } from './owner-shell.tsx';
import type { OwnerView } from './owner-view.ts';
import { QUOTES_WORDS } from './quotes-words.ts';

interface DocumentsWords {
  readonly title: string;
  readonly lead: string;
  readonly messages: string;
  readonly noMessages: string;
  readonly sent: (day: string, channel: OutboxEntry['channel']) => string;
  readonly quotes: string;
}

const WORDS: Readonly<Record<PageLanguage, DocumentsWords>> = {
  en: {
    title: 'Documents',
    lead: 'What there is in writing about your fences.',
    messages: 'What we wrote to you',
    noMessages: 'Nothing was sent to you yet.',
    sent: (day, channel) => (channel === 'mail' ? `mailed on ${day}` : `letter of ${day}`),
    quotes: 'Quotes',
  },
  es: {
    title: 'Documentos',
    lead: 'Lo que hay por escrito sobre sus cercas.',
    messages: 'Lo que le escribimos',
    noMessages: 'Todavía no se le ha enviado nada.',
    sent: (day, channel) => (channel === 'mail' ? `correo del ${day}` : `carta del ${day}`),
    quotes: 'Presupuestos',
  },
};

/** The page of what there is in writing: a section for each kind of document. */
export const OwnerDocumentsPage: FC<{
  readonly view: OwnerView;
  /** Messages that left, the newest first. */
  readonly messages: readonly Pick<OutboxEntry, 'subject' | 'channel' | 'sentAt'>[];
  /** None where the link is not good for quotes. */
  readonly quotes: readonly OwnerQuote[];
}> = ({ view, messages, quotes }) => {
  const { language } = view.owner;
  const words = WORDS[language];
  return (
    <OwnerShell view={view} title={words.title} place="documents" cautions={false}>
      <h1>{words.title}</h1>
      <p class="lead">{words.lead}</p>
      <h2>{words.messages}</h2>
      {messages.length === 0 ? (
        <p>{words.noMessages}</p>
      ) : (
        <ul class="plain wide-text">
          {messages.map(({ subject, channel, sentAt }) => (
            <li>
              {subject}
              {sentAt !== null && <span class="muted">{`, ${words.sent(view.dayOf(sentAt), channel)}`}</span>}
            </li>
          ))}
        </ul>
      )}
      {quotes.length > 0 && (
        <>
          <h2>{words.quotes}</h2>
          <ul class="plain">
            {quotes.map(({ number, standing }) => (
              <li>
                <a href={`${view.home}/quotes/${encodeURIComponent(number)}`}>{number}</a>
                {`, ${QUOTES_WORDS[language].standings[standing]}`}
              </li>
            ))}
          </ul>
        </>
      )}
    </OwnerShell>
  );
};
