import { Counter, collectDefaultMetrics, Gauge, Registry } from 'prom-client';
import type { Register } from '../register/database.ts';
import { countStandings } from '../register/forecast-store.ts';
import { countOutbox } from '../register/outbox.ts';
import { mailServerTrouble } from '../register/outbox-claims.ts';
import { newestSweep } from '../register/sweep-store.ts';
import type { DrainReport } from './drain-outbox.ts';
import type { SweepOutcome } from './sweep-register.ts';

/** The service's metrics in the Prometheus text format; the state of the register is read when they are asked for. */
export interface ServiceMetrics {
  readonly contentType: string;
  text(): Promise<string>;
  countSweep(outcome: SweepOutcome): void;
  countDrain(report: DrainReport): void;
}

/** Makes the metrics of one service. */
export function createMetrics(register: Register): ServiceMetrics {
  const registry = new Registry();
  const registers = [registry];
  collectDefaultMetrics({ register: registry });
  const byKey = (
    name: string,
    help: string,
    label: string,
    read: () => Promise<Readonly<Record<string, number>>>,
  ): Gauge =>
    new Gauge({
      name,
      help,
      labelNames: [label],
      registers,
      async collect() {
        for (const [key, value] of Object.entries(await read())) this.set({ [label]: key }, value);
      },
    });
  const gauge = (name: string, help: string, read: () => Promise<number>): Gauge =>
    new Gauge({
      name,
      help,
      registers,
      async collect() {
        this.set(await read());
      },
    });
  byKey('stormpale_outbox_messages', 'Messages in the outbox by state', 'state', () => countOutbox(register));
  byKey('stormpale_fences', 'Fences by standing, as last forecast', 'standing', () => countStandings(register));
  gauge(
    'stormpale_mail_server_failures',
    'Times in a row that the mail server could not be used',
    async () => (await mailServerTrouble(register))?.failures ?? 0,
  );
  gauge(
    'stormpale_last_sweep_finished_seconds',
    'When the last sweep was finished, seconds since 1970; 0 for never',
    async () => {
      const at = (await newestSweep(register, 'finished'))?.finishedAt;
      return at ? Date.parse(at) / 1000 : 0;
    },
  );
  gauge(
    'stormpale_last_sweep_failed_fences',
    'Fences that the last sweep could not forecast',
    async () => (await newestSweep(register, 'finished'))?.failed ?? 0,
  );
  const sweeps = new Counter({
    name: 'stormpale_sweeps_total',
    help: 'Sweeps that ended since the service started, by how',
    labelNames: ['end'],
    registers,
  });
  const tries = new Counter({
    name: 'stormpale_mail_tries_total',
    help: 'Tries to hand a mail over since the service started, by how they ended',
    labelNames: ['end'],
    registers,
  });
  return {
    contentType: registry.contentType,
    text: () => registry.metrics(),
    countSweep: ({ report }) => sweeps.inc({ end: report.kind }),
    countDrain: ({ sent, again, parked }) => {
      tries.inc({ end: 'sent' }, sent);
      tries.inc({ end: 'again' }, again);
      tries.inc({ end: 'parked' }, parked);
    },
  };
}
