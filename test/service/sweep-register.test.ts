import { describe, expect, it } from 'vitest';
import { DEFAULT_SETTINGS, writeSettings } from '../../src/register/settings-store.ts';
import { officeGap, sweepRegister } from '../../src/service/sweep-register.ts';
import { fenceRegister, JANUARY, manyFences } from './fence-register.ts';

const config = {
  officeName: null,
  officePhone: null,
  officeEmail: null,
  mailFrom: null,
  smtpUrl: null,
  publicUrl: 'https://fences.example.org',
};
const smtp = { ...config, smtpUrl: 'smtps://mail.example.org', mailFrom: 'notices@example.org' };

describe('officeGap', () => {
  it('names what is missing and how it is set', () => {
    expect(officeGap(config, DEFAULT_SETTINGS)).toMatch(
      /without the office's name and the office's mail address: set .*stormpale settings company-name=… sender-address=…/,
    );
    expect(officeGap(smtp, DEFAULT_SETTINGS)).toMatch(/without the office's name: /);
    expect(officeGap({ ...smtp, officeName: 'Gale & Rail' }, DEFAULT_SETTINGS)).toBeNull();
    const settings = { ...DEFAULT_SETTINGS, companyName: 'Gale & Rail', senderAddress: 'office@gale.example.org' };
    expect(officeGap(config, settings)).toBeNull();
  });
});

describe('sweepRegister', () => {
  it('leaves notices unwritten, and says so in one line, where mail is sent for real by an office without a name', async () => {
    const installed = { installedEarliest: '2005-04-15', installedLatest: '2005-04-15' };
    const register = await fenceRegister({
      owners: [{}, { ref: 'BEA' }],
      fences: manyFences(2, installed).map((fence, index) => ({ ...fence, ownerRef: index === 0 ? 'ANN' : 'BEA' })),
    });
    const now = () => JANUARY;
    const refused = await sweepRegister(register, { now, sender: smtp });
    expect(refused.composed).toMatchObject({ mails: 0, failures: [{ ownerRef: 'ANN and 1 more' }] });
    await writeSettings(register.db, { companyName: 'Gale & Rail' }, '2027-01-15T00:00:00.000Z');
    const written = await sweepRegister(register, { now: () => JANUARY.plus({ days: 1 }), sender: smtp });
    expect(written.composed).toMatchObject({ mails: 2, failures: [] });
  });
});
