import type { DestinationStream, Logger } from 'pino';
import { pino } from 'pino';
import type { Config } from './config.ts';

export type { Logger } from 'pino';

/** Places at which a log line may hold a secret. */
const SECRET_PATHS = ['smtpUrl', '*.smtpUrl', 'password', '*.password', '*.*.password', 'auth', '*.auth'];

/** The service's log: one JSON object a line, secrets replaced. Goes to standard output unless told otherwise. */
export function createLog(level: Config['logLevel'], destination?: DestinationStream): Logger {
  const options = { level, redact: { paths: SECRET_PATHS, censor: '[hidden]' } };
  return destination ? pino(options, destination) : pino(options);
}
