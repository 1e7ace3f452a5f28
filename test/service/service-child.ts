/** Runs the service on a folder until it is told to stop; for tests that stop it. */
import { systemClock } from '../../src/service/clock.ts';
import { loadConfig } from '../../src/service/config.ts';
import { createLog } from '../../src/service/log.ts';
import { closeOnSignal, startService } from '../../src/service/service.ts';

const config = loadConfig({
  STORMPALE_DATA: process.argv[2] ?? '',
  STORMPALE_PORT: '0',
  STORMPALE_LOG_LEVEL: 'silent',
});
const makeApp = () => ({ fetch: () => new Response('') });
const service = await startService({ config, clock: systemClock, log: createLog(config.logLevel), makeApp });
const closed = closeOnSignal(service);
process.stdout.write('started\n');
await closed;
process.stdout.write('closed\n');
