import { Hono } from 'hono';
import { describe, expect, it } from 'vitest';
import type { StoppedAddress } from '../../../src/register/delivery-reports.ts';
import { StoppedAddresses } from '../../../src/web/mail/stopped-addresses.tsx';

async function htmlOf(stopped: readonly StoppedAddress[]): Promise<string> {
  const app = new Hono().get('/', (context) =>
    context.html(
      <main>
        <StoppedAddresses stopped={stopped} />
      </main>,
    ),
  );
  return (await app.request('/')).text();
}

describe('StoppedAddresses', () => {
  it('says who hears nothing, why, how much waits and how mail goes again, and trusts no server’s words', async () => {
    const html = await htmlOf([
      {
        address: 'ann@example.net',
        ownerRef: 'ANN',
        ownerName: 'Ann Tidewell',
        since: '2027-01-15T12:30:00.000Z',
        status: '5.1.1',
        diagnostic: '550 <script>alert(1)</script> nobody of that name',
        outboxId: 7,
        subject: 'Your fence',
        waiting: 2,
      },
    ]);
    expect(html).toContain('ann@example.net');
    expect(html).toContain('5.1.1 550 &lt;script&gt;');
    expect(html).not.toContain('<script>');
    expect(html).toContain('Message 7: Your fence');
    expect(html).toContain('stormpale mail resume ADDRESS');
  });

  it('is nothing where no address is stopped', async () => {
    expect(await htmlOf([])).toBe('<main></main>');
  });
});
