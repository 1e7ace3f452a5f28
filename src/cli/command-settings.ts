import { nearestName } from '../register/csv/nearest-name.ts';
import type { RegisterSettings } from '../register/settings-store.ts';
import { readSettings, SETTING_NAMES, settingFromText, writeSettings } from '../register/settings-store.ts';
import { isoUtc } from '../service/clock.ts';
import { SETTING_WORDS } from '../service/setting-words.ts';
import type { CliContext, GlobalOptions } from './cli-context.ts';
import { configOf, withExistingRegister, withRegister } from './cli-context.ts';
import { CliError } from './cli-error.ts';
import { EXIT } from './exit-codes.ts';
import { plainTable } from './plain-table.ts';
import { jsonText } from './terminal.ts';

/** Options of `settings`. */
export interface SettingsOptions extends GlobalOptions {
  readonly json?: boolean;
}

type Setting = keyof RegisterSettings;

/** The key of a setting on the command line: `timeZone` is `time-zone`. */
const keyOf = (setting: Setting): string => setting.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`);
const SETTING_OF_KEY: ReadonlyMap<string, Setting> = new Map(SETTING_NAMES.map((name) => [keyOf(name), name]));

/** Shows the register's settings; with `key=value` sets them first, all of them or (where one is refused) none. */
export async function runSettings(
  context: CliContext,
  changes: readonly string[],
  options: SettingsOptions,
): Promise<void> {
  const wanted = wantedSettings(changes);
  // a mistyped folder must not look like a register in which nothing was set
  const open = changes.length === 0 ? withExistingRegister : withRegister;
  const settings = await open(configOf(context, options), async ({ db }) => {
    await writeSettings(db, wanted, isoUtc(context.clock()));
    return readSettings(db);
  });
  const { terminal } = context;
  if (options.json) {
    terminal.out(jsonText(Object.fromEntries(SETTING_NAMES.map((name) => [keyOf(name), settings[name]]))));
    return;
  }
  const rows = SETTING_NAMES.map((name) => [
    keyOf(name),
    String(settings[name]).replaceAll('\n', ', ') || '–',
    SETTING_WORDS[name],
  ]);
  terminal.out(plainTable(['Setting', 'Value', 'What it is for'], rows));
  const swept = ['standingReturnPeriodYears', 'lookAheadSeasons'].some((name) => name in wanted);
  if (swept) terminal.out('The next sweep judges every fence by this; "stormpale sweep" does so at once.\n');
}

function wantedSettings(changes: readonly string[]): Partial<RegisterSettings> {
  const wanted: Record<string, string | number> = {};
  const refusals: string[] = [];
  for (const change of changes) {
    const [, key, text] = /^([^=]*)=(.*)$/s.exec(change) ?? [];
    const setting = SETTING_OF_KEY.get(key ?? change);
    if (!setting) {
      const near = nearestName(key ?? change, SETTING_OF_KEY.keys());
      refusals.push(`${JSON.stringify(key ?? change)} is no setting${near ? `; did you mean ${near}?` : ''}`);
    } else if (text === undefined) {
      refusals.push(`${change} has no value; write it as ${change}=VALUE`);
    } else {
      const checked = settingFromText(setting, text);
      if ('reason' in checked) refusals.push(`${key} = ${JSON.stringify(text)}: ${checked.reason}`);
      else wanted[setting] = checked.value;
    }
  }
  if (refusals.length > 0) {
    throw new CliError(
      EXIT.refused,
      refusals.join('\n'),
      'nothing was set; "stormpale settings" lists every setting with its value',
    );
  }
  return wanted;
}
