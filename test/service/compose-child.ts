/** Writes the messages of a register's notices and says when it is done; for tests that kill it. */
import { openRegister } from '../../src/register/database.ts';
import { composeNotices } from '../../src/service/compose-notices.ts';
import { JANUARY } from './fence-register-moment.ts';
import { SENDER } from './sender.ts';

const register = await openRegister(process.argv[2] ?? '');
process.stdout.write('begun\n');
await composeNotices(register, { now: () => JANUARY, sender: SENDER });
await register.close();
process.stdout.write('done\n');
