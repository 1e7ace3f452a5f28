/** Sweeps a register slowly in small chunks and says which fence it is at; for tests that kill it. */
import { forecastFence } from '../../src/forecast/forecast-fence.ts';
import { openRegister } from '../../src/register/database.ts';
import { runSweep } from '../../src/service/run-sweep.ts';
import { JANUARY } from './fence-register-moment.ts';

const register = await openRegister(process.argv[2] ?? '');
const pause = new Int32Array(new SharedArrayBuffer(4));
await runSweep(register, {
  now: () => JANUARY,
  chunkSize: 5,
  forecast: (facts, year, settings) => {
    process.stdout.write(`at ${facts.ref}\n`);
    Atomics.wait(pause, 0, 0, 60);
    return forecastFence(facts, year, settings);
  },
});
await register.close();
process.stdout.write('done\n');
