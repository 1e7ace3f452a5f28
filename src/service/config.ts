import { readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { IANAZone } from 'luxon';
import { z } from 'zod';
import { nearestName } from '../register/csv/nearest-name.ts';
import { checked, line } from './config-value.ts';
import type { DeliveryConfig } from './delivery-config.ts';
import { DELIVERY_OPTIONS, deliveryConfig, deliveryProblems } from './delivery-config.ts';
import { mailServerAddress } from './mail-transport.ts';
import { hostInUrl, hostReason, isLoopbackHost, publicUrlReason } from './service-address.ts';
import { clockTimeReason } from './sweep-schedule.ts';

/** Levels of the log, quietest first. */
const LOG_LEVELS = ['silent', 'fatal', 'error', 'warn', 'info', 'debug', 'trace'] as const;

/** How the service runs. Null office entries: the register's own settings hold. */
export interface Config {
  readonly dataFolder: string;
  readonly registerPath: string;
  readonly caughtMailFolder: string;
  /** Address to serve on. */
  readonly host: string;
  readonly port: number;
  /** Null: the service catches its own mail and shows it on a page. */
  readonly smtpUrl: string | null;
  readonly mailFrom: string | null;
  readonly officeName: string | null;
  readonly officePhone: string | null;
  readonly officeEmail: string | null;
  readonly publicUrl: string;
  /** Zone in which the nightly sweep's time is meant; null: the register's. */
  readonly timeZone: string | null;
  /** Local time of the nightly sweep, `HH:MM`. */
  readonly sweepAt: string;
  readonly logLevel: (typeof LOG_LEVELS)[number];
  readonly delivery: DeliveryConfig;
}

/** One thing wrong with the configuration. */
export interface ConfigProblem {
  /** The variable, or the file and its key. */
  readonly name: string;
  /** The value as given; `[hidden]` where it may hold a secret. */
  readonly value: string;
  readonly reason: string;
}

/** Thrown with everything that is wrong with the configuration, not just the first. */
export class ConfigError extends Error {
  readonly problems: readonly ConfigProblem[];
  constructor(problems: readonly ConfigProblem[]) {
    super(problems.map(({ name, value, reason }) => `${name} = ${JSON.stringify(value)}: ${reason}`).join('\n'));
    this.name = 'ConfigError';
    this.problems = problems;
  }
}

function smtpUrlReason(text: string): string | null {
  try {
    mailServerAddress(text);
    return null;
  } catch (error) {
    return error instanceof Error ? error.message : String(error);
  }
}

const zoneReason = (text: string): string | null =>
  IANAZone.isValidZone(text) ? null : 'no time zone of that name; write one as America/Chicago';

const mailAddress = z.email('not a mail address; write one as name@example.org');

/** Every option: its variable, its key in the file follows from it, how it is checked. */
const OPTIONS = {
  STORMPALE_DATA: line(1000),
  STORMPALE_HOST: checked(hostReason),
  STORMPALE_PORT: checked((text) =>
    /^\d{1,5}$/.test(text) && Number(text) <= 65_535 ? null : 'write a port from 0 (any free one) to 65535',
  ),
  STORMPALE_SMTP_URL: checked(smtpUrlReason),
  STORMPALE_MAIL_FROM: mailAddress,
  STORMPALE_OFFICE_NAME: line(200),
  STORMPALE_OFFICE_PHONE: line(50),
  STORMPALE_OFFICE_EMAIL: mailAddress,
  STORMPALE_PUBLIC_URL: checked(publicUrlReason),
  STORMPALE_TIME_ZONE: checked(zoneReason),
  STORMPALE_SWEEP_AT: checked(clockTimeReason),
  STORMPALE_LOG_LEVEL: checked((text) =>
    (LOG_LEVELS as readonly string[]).includes(text) ? null : `write one of ${LOG_LEVELS.join(', ')}`,
  ),
  ...DELIVERY_OPTIONS,
} as const satisfies Record<string, z.ZodType<string>>;

type Variable = keyof typeof OPTIONS;
const VARIABLES = Object.keys(OPTIONS) as readonly Variable[];
const SECRET: ReadonlySet<string> = new Set<Variable>(['STORMPALE_SMTP_URL']);

/** The key of a variable in the configuration file: `STORMPALE_SMTP_URL` is `smtpUrl`. */
const fileKey = (variable: string): string =>
  variable
    .replace(/^STORMPALE_/, '')
    .toLowerCase()
    .replace(/_(\w)/g, (_match, letter: string) => letter.toUpperCase());

const shown = (variable: string, value: string): string => (SECRET.has(variable) ? '[hidden]' : value);

interface Given {
  readonly name: string;
  readonly value: string;
}

function fromFile(path: string, problems: ConfigProblem[]): ReadonlyMap<string, Given> {
  const given = new Map<string, Given>();
  let content: unknown;
  try {
    content = JSON.parse(readFileSync(path, 'utf8'));
  } catch (error) {
    const why = error instanceof SyntaxError ? 'is not JSON' : 'cannot be read';
    problems.push({ name: 'STORMPALE_CONFIG', value: path, reason: `the file ${why}; correct it or leave it out` });
    return given;
  }
  if (content === null || typeof content !== 'object' || Array.isArray(content)) {
    problems.push({
      name: 'STORMPALE_CONFIG',
      value: path,
      reason: 'the file must hold one JSON object, {"port": 8480}',
    });
    return given;
  }
  const byKey = new Map(VARIABLES.map((variable) => [fileKey(variable), variable]));
  for (const [key, value] of Object.entries(content)) {
    const variable = byKey.get(key);
    if (!variable) {
      problems.push({ name: `${path}: ${key}`, value: '[not read]', reason: unknownReason(key, [...byKey.keys()]) });
    } else if (typeof value === 'string' || typeof value === 'number') {
      given.set(variable, { name: `${path}: ${key}`, value: String(value) });
    } else {
      problems.push({ name: `${path}: ${key}`, value: '[not read]', reason: 'write a text or a number' });
    }
  }
  return given;
}

function unknownReason(name: string, known: readonly string[]): string {
  const near = nearestName(name, known);
  return near
    ? `there is no such option; did you mean ${near}?`
    : `there is no such option; there are ${known.join(', ')}`;
}

function fromEnvironment(
  env: Readonly<Record<string, string | undefined>>,
  problems: ConfigProblem[],
): ReadonlyMap<string, Given> {
  const given = new Map<string, Given>();
  const known: readonly string[] = [...VARIABLES, 'STORMPALE_CONFIG'];
  for (const [name, value] of Object.entries(env)) {
    if (!name.startsWith('STORMPALE_') || value === undefined || value === '') continue;
    if (known.includes(name)) given.set(name, { name, value });
    else problems.push({ name, value: '[not read]', reason: unknownReason(name, known) });
  }
  return given;
}

/**
 * Reads the configuration: the environment's `STORMPALE_…` variables, then the JSON file that `STORMPALE_CONFIG` names (the
 * same options, `smtpUrl` for `STORMPALE_SMTP_URL`), then defaults. Empty variables count as not given.
 * Throws `ConfigError` with every problem; what may hold a secret is never repeated.
 */
export function loadConfig(env: Readonly<Record<string, string | undefined>>): Config {
  const problems: ConfigProblem[] = [];
  const environment = fromEnvironment(env, problems);
  const path = environment.get('STORMPALE_CONFIG')?.value;
  const given = new Map([...(path ? fromFile(path, problems) : []), ...environment]);
  for (const variable of VARIABLES) {
    const option = given.get(variable);
    const result = option && OPTIONS[variable].safeParse(option.value);
    if (!option || !result || result.success) continue;
    const reason = result.error.issues.map((issue) => issue.message).join('; ');
    problems.push({ name: option.name, value: shown(variable, option.value), reason });
  }
  if (given.has('STORMPALE_SMTP_URL') && !given.has('STORMPALE_MAIL_FROM')) {
    const reason = 'missing: a mail that is sent for real needs the address it comes from, as notices@example.org';
    problems.push({ name: 'STORMPALE_MAIL_FROM', value: '', reason });
  }
  const value = (variable: Variable): string | null => given.get(variable)?.value ?? null;
  problems.push(...deliveryProblems(value));
  const givenHost = value('STORMPALE_HOST') ?? '127.0.0.1';
  const host = givenHost === 'localhost' ? '127.0.0.1' : givenHost;
  if (hostReason(host) === null && !isLoopbackHost(host) && !given.has('STORMPALE_PUBLIC_URL')) {
    const reason =
      'missing: pages that others reach need the address under which they do, as https://fences.example.org';
    problems.push({ name: 'STORMPALE_PUBLIC_URL', value: '', reason });
  }
  if (problems.length > 0) throw new ConfigError(problems);
  const dataFolder = resolve(value('STORMPALE_DATA') ?? 'data');
  const port = Number(value('STORMPALE_PORT') ?? '8480');
  return {
    dataFolder,
    registerPath: join(dataFolder, 'register.sqlite'),
    caughtMailFolder: join(dataFolder, 'caught-mail'),
    host,
    port,
    smtpUrl: value('STORMPALE_SMTP_URL'),
    mailFrom: value('STORMPALE_MAIL_FROM'),
    officeName: value('STORMPALE_OFFICE_NAME'),
    officePhone: value('STORMPALE_OFFICE_PHONE'),
    officeEmail: value('STORMPALE_OFFICE_EMAIL'),
    publicUrl: value('STORMPALE_PUBLIC_URL') ?? `http://${hostInUrl(host)}:${port}`,
    timeZone: value('STORMPALE_TIME_ZONE'),
    sweepAt: value('STORMPALE_SWEEP_AT') ?? '04:30',
    logLevel: (value('STORMPALE_LOG_LEVEL') ?? 'info') as Config['logLevel'],
    delivery: deliveryConfig(value),
  };
}
