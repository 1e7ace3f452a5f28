import type { Sender } from '../../src/service/owner-messages.ts';

/** Who writes in tests. */
export const SENDER: Sender = {
  office: { name: 'Gale & Rail Fence Care', phone: '555-0100', email: 'office@example.org', postalAddress: null },
  from: 'notices@example.org',
  gap: null,
  mailReachesOwners: true,
  timeZone: 'UTC',
  publicUrl: null,
};
