import type { ServerResponse } from 'node:http';
import { systemClock } from '../src/service/clock.ts';
import { loadConfig } from '../src/service/config.ts';
import { createLog } from '../src/service/log.ts';
import { type App, startService } from '../src/service/service.ts';
import { makeApp } from '../src/web/make-app.tsx';
import { READER_HEADER, type TimedServiceMessage } from './timed-message.ts';

const tell = (message: TimedServiceMessage): void => void process.send?.(message);
const pages: Record<string, number[]> = {};

/** The pages, each answer timed from the parsed request to its last byte. */
function timed(app: App): App {
  const fetch = app.fetch as (request: Request, env: { readonly outgoing?: ServerResponse }) => Promise<Response>;
  return {
    fetch: ((request: Request, env: { readonly outgoing?: ServerResponse }) => {
      const from = performance.now();
      const { pathname, search } = new URL(request.url);
      env.outgoing?.once('finish', () => {
        const page = `${request.headers.get(READER_HEADER) ?? ''} ${pathname}${search}`;
        pages[page] ??= [];
        pages[page].push(performance.now() - from);
      });
      return fetch(request, env);
    }) as App['fetch'],
  };
}

const service = await startService({
  config: loadConfig({ ...process.env }),
  clock: systemClock,
  log: createLog('silent'),
  makeApp: (parts) => timed(makeApp(parts)),
});
tell({ kind: 'up', url: service.url });
async function hear(message: unknown): Promise<void> {
  if (message === 'forget') for (const path of Object.keys(pages)) delete pages[path];
  if (message === 'tell') {
    const { progress } = await service.view.sweepStatus();
    const { user, system } = process.cpuUsage();
    tell({ kind: 'took', pages, sweptSoFar: progress?.done ?? null, cpuSeconds: (user + system) / 1e6 });
  }
  if (message === 'close') {
    await service.close();
    process.exit(0);
  }
}
process.on('message', (message) => void hear(message));
