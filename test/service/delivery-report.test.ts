import { describe, expect, it } from 'vitest';
import { NoDeliveryReport, readDeliveryReport } from '../../src/service/delivery-report.ts';
import { deliveryReport } from './delivery-reports.ts';

/** After the example of RFC 3464, appendix E.2: several recipients, of which one failed; names are invented. */
const SEVERAL_RECIPIENTS = `Date: Fri, 8 Jul 1994 09:21:47 -0400
From: Mail Delivery Subsystem <MAILER-DAEMON@RELAY.EXAMPLE>
Subject: Returned mail: User unknown
To: <owner-list@RELAY.EXAMPLE>
MIME-Version: 1.0
Content-Type: multipart/report; report-type=delivery-status;
  boundary="JAA13167.773673707/RELAY.EXAMPLE"

--JAA13167.773673707/RELAY.EXAMPLE
content-type: text/plain; charset=us-ascii

   ----- The following addresses had delivery problems -----
<avery@gate.EXAMPLE>  (unrecoverable error)
<wes@near.example>  (unrecoverable error)

--JAA13167.773673707/RELAY.EXAMPLE
content-type: message/delivery-status

Reporting-MTA: dns; relay.example

Original-Recipient: rfc822;avery@gate.example
Final-Recipient: rfc822;avery@gate.example
Action: failed
Status: 5.0.0 (permanent failure)
Diagnostic-Code: smtp;
  550 'avery@gate.EXAMPLE' is not a registered gateway user
Remote-MTA: dns; gate.example

Original-Recipient: rfc822;joan@far.example
Final-Recipient: rfc822;joan@far.example
Action: delayed
Status: 4.0.0 (far.example: host name lookup failure)

--JAA13167.773673707/RELAY.EXAMPLE
content-type: message/rfc822

From: owner-list@RELAY.EXAMPLE
Message-ID: <mail-7@example.org>

hello
--JAA13167.773673707/RELAY.EXAMPLE--
`;

describe('readDeliveryReport', () => {
  it('reads the example of RFC 3464 with comments, several recipients and bare line feeds', async () => {
    expect(await readDeliveryReport(Buffer.from(SEVERAL_RECIPIENTS))).toEqual({
      action: 'failed',
      status: '5.0.0',
      recipient: 'avery@gate.example',
      diagnostic: "550 'avery@gate.EXAMPLE' is not a registered gateway user",
      returnAddresses: ['owner-list@RELAY.EXAMPLE'],
      messageId: '<mail-7@example.org>',
    });
  });

  it.each(['message/rfc822', 'text/rfc822-headers'] as const)(
    'finds the returned headers in %s',
    async (returnedAs) => {
      const raw = deliveryReport({
        to: 'bounces+x@example.org',
        messageId: '<mail-1@example.org>',
        returnPath: 'bounces+y@example.org',
        returnedAs,
      });
      expect(await readDeliveryReport(raw)).toMatchObject({
        returnAddresses: ['bounces+x@example.org', 'bounces+y@example.org'],
        messageId: '<mail-1@example.org>',
      });
    },
  );

  it('takes the recipient that failed before one that is delayed', async () => {
    const text = SEVERAL_RECIPIENTS.replace('Action: failed', 'Action: relayed').replace(
      'Action: delayed',
      'Action: FAILED',
    );
    expect(await readDeliveryReport(Buffer.from(text))).toMatchObject({ action: 'failed', status: '4.0.0' });
  });

  it.each([
    ['no report', 'Subject: Away\r\n\r\nI am on holiday.\r\n', 'no delivery report'],
    ['nothing at all', '', 'no delivery report'],
    ['no status part', SEVERAL_RECIPIENTS.replace('message/delivery-status', 'text/plain'), 'no part that says'],
    ['no action', SEVERAL_RECIPIENTS.replace(/^Action:.*$/gm, 'Action: sunk'), 'no recipient and action'],
    ['no status code', SEVERAL_RECIPIENTS.replace(/^Status:.*$/gm, 'Status: bad'), 'no status code'],
  ])('refuses %s with the reason', async (_what, text, reason) => {
    const attempt = readDeliveryReport(Buffer.from(text));
    await expect(attempt).rejects.toThrow(NoDeliveryReport);
    await expect(attempt).rejects.toThrow(reason);
  });
});
