/** What the list headers of a mail depend on. */
export interface MailList {
  /** Address that a written "unsubscribe" goes to. */
  readonly officeEmail: string;
  /** Page that stops the list, over HTTPS; null where there is none: then only the address is named. */
  readonly unsubscribeUrl: string | null;
  /** True where a mail program may stop the list by itself: never for news of danger, which is its own list. */
  readonly oneClick: boolean;
}

/**
 * The headers by which a mail program stops the list that a mail belongs to (RFC 2369; RFC 8058 where it may do so by one click,
 * which asks for HTTPS).
 */
export function listHeaders({ officeEmail, unsubscribeUrl, oneClick }: MailList): Readonly<Record<string, string>> {
  const byMail = `<mailto:${officeEmail}?subject=unsubscribe>`;
  if (unsubscribeUrl === null || !unsubscribeUrl.startsWith('https://')) return { 'List-Unsubscribe': byMail };
  return {
    'List-Unsubscribe': `<${unsubscribeUrl}>, ${byMail}`,
    ...(oneClick ? { 'List-Unsubscribe-Post': 'List-Unsubscribe=One-Click' } : {}),
  };
}
