#!/usr/bin/env node
import { systemClock } from '../service/clock.ts';
import { runCli } from './run-cli.ts';
import { processTerminal } from './terminal.ts';

process.exitCode = await runCli(process.argv.slice(2), {
  terminal: processTerminal(),
  env: process.env,
  clock: systemClock,
});
