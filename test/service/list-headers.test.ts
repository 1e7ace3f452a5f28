import { describe, expect, it } from 'vitest';
import { listHeaders } from '../../src/service/list-headers.ts';

const office = { officeEmail: 'office@example.org' };
const url = 'https://fences.example.org/owner/1.x/unsubscribe';
const byMail = '<mailto:office@example.org?subject=unsubscribe>';

describe('listHeaders', () => {
  it.each([
    [{ unsubscribeUrl: url, oneClick: true }, `<${url}>, ${byMail}`, 'List-Unsubscribe=One-Click'],
    [{ unsubscribeUrl: url, oneClick: false }, `<${url}>, ${byMail}`, undefined],
    [{ unsubscribeUrl: null, oneClick: true }, byMail, undefined],
    // RFC 8058, 3.1: the address must be https
    [{ unsubscribeUrl: url.replace('https', 'http'), oneClick: true }, byMail, undefined],
  ])('%o', (list, unsubscribe, post) => {
    const headers = listHeaders({ ...office, ...list });
    expect(headers['List-Unsubscribe']).toBe(unsubscribe);
    expect(headers['List-Unsubscribe-Post']).toBe(post);
  });
});
