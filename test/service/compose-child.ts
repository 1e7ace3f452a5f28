/** Writes the messages of a register's notices and says when it is done; for tests that kill it. */
import { openRegister } from '../../src/register/database.ts';
import { composeNotices } from '../../src/service/compose-notices.ts';
import { JANUARY } from './fence-register-moment.ts';

const register = await openRegister(process.argv[2] ?? '');
const office = { name: 'Gale & Rail Fence Care', phone: '555-0100', email: 'office@example.org' };
process.stdout.write('begun\n');
await composeNotices(register, { now: () => JANUARY, sender: { office, from: 'notices@example.org' } });
await register.close();
process.stdout.write('done\n');
