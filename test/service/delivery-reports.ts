/** What a made-up delivery report says. */
export interface ReportPlan {
  /** Address that the report comes to. */
  readonly to: string;
  readonly action?: string;
  readonly status?: string;
  readonly recipient?: string;
  readonly diagnostic?: string;
  /** Message-ID of the returned mail, with angle brackets; none where null. */
  readonly messageId?: string | null;
  /** Address that the returned mail went out under. */
  readonly returnPath?: string;
  /** Type of the part with the returned mail or its headers. */
  readonly returnedAs?: 'message/rfc822' | 'text/rfc822-headers';
}

/** A delivery report as a mail server writes it (multipart/report with delivery-status; RFC 3464, 6522). */
export function deliveryReport(plan: ReportPlan): Buffer {
  const { to, action = 'failed', status = '5.1.1', recipient = 'ann@example.net', messageId = null } = plan;
  const diagnostic = plan.diagnostic ?? `550 ${status} <${recipient}>: nobody of that name`;
  const lines = [
    'Return-Path: <>',
    'Date: Fri, 15 Jan 2027 12:30:00 +0000',
    'From: MAILER-DAEMON@mx.example.net (Mail Delivery System)',
    `To: ${to}`,
    'Subject: Undelivered Mail Returned to Sender',
    'Message-ID: <report-1@mx.example.net>',
    'Auto-Submitted: auto-replied',
    'MIME-Version: 1.0',
    'Content-Type: multipart/report; report-type=delivery-status;',
    '\tboundary="4B1F/mx.example.net"',
    '',
    'This is a MIME-encapsulated message.',
    '',
    '--4B1F/mx.example.net',
    'Content-Type: text/plain; charset=us-ascii',
    '',
    'Your message could not be delivered.',
    '',
    '--4B1F/mx.example.net',
    'Content-Type: message/delivery-status',
    '',
    'Reporting-MTA: dns; mx.example.net',
    'Arrival-Date: Fri, 15 Jan 2027 12:29:00 +0000',
    '',
    `Final-Recipient: rfc822; ${recipient}`,
    `Original-Recipient: rfc822;${recipient}`,
    `Action: ${action}`,
    `Status: ${status}`,
    'Remote-MTA: dns; mail.example.net',
    `Diagnostic-Code: smtp; ${diagnostic.slice(0, 30)}`,
    `    ${diagnostic.slice(30)}`,
    '',
    '--4B1F/mx.example.net',
    `Content-Type: ${plan.returnedAs ?? 'text/rfc822-headers'}`,
    '',
    ...(plan.returnPath === undefined ? [] : [`Return-Path: <${plan.returnPath}>`]),
    'From: Gale & Rail <notices@example.org>',
    ...(messageId === null ? [] : ['Message-ID:', ` ${messageId}`]),
    'Subject: Your fence',
    '',
    '--4B1F/mx.example.net--',
    '',
  ];
  return Buffer.from(lines.join('\r\n'), 'latin1');
}
