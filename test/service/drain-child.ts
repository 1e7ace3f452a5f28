/** Drains a register's outbox to a port on loopback; for tests that kill it. */
import { openRegister } from '../../src/register/database.ts';
import { drainOutbox } from '../../src/service/drain-outbox.ts';
import { mailServerAddress, smtpTransport } from '../../src/service/mail-transport.ts';
import { JANUARY } from './fence-register-moment.ts';

const register = await openRegister(process.argv[2] ?? '');
const transport = smtpTransport(mailServerAddress(`smtp://127.0.0.1:${process.argv[3] ?? ''}`));
await drainOutbox(register, { now: () => JANUARY, transport });
await register.close();
process.stdout.write('done\n');
