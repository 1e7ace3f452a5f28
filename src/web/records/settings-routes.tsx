import { Hono } from 'hono';
import {
  type RegisterSettings,
  readSettings,
  SETTING_NAMES,
  settingFromText,
  writeSettings,
} from '../../register/settings-store.ts';
import { canonicalJson, sha256 } from '../../service/canonical-json.ts';
import { isoUtc } from '../../service/clock.ts';
import type { AppParts } from '../../service/service.ts';
import { formToken } from '../access/form-token.ts';
import { accountName, type PageContext, type PageEnv } from '../access/visitor.ts';
import { frameFor } from '../frame/page-frame.ts';
import { textField } from '../frame/text-field.ts';
import type { ChangedField } from './changed-fields.ts';
import { SETTING_LABELS, SettingsPage, type SettingsPageProps } from './settings-page.tsx';

const printOf = (settings: RegisterSettings): string => sha256(canonicalJson(settings));

const textsOf = (settings: Readonly<Partial<Record<keyof RegisterSettings, string | number>>>) =>
  Object.fromEntries(SETTING_NAMES.map((name) => [name, String(settings[name] ?? '')])) as SettingsPageProps['values'];

const differences = (
  before: SettingsPageProps['values'],
  after: SettingsPageProps['values'],
): readonly ChangedField[] =>
  SETTING_NAMES.filter((name) => before[name] !== after[name]).map((name) => ({
    label: SETTING_LABELS[name],
    before: before[name],
    after: after[name],
  }));

/** What holds for the whole register, as the command line sets it too. */
export function settingsRoutes({ register, clock, log }: Pick<AppParts, 'register' | 'clock' | 'log'>): Hono<PageEnv> {
  const { db } = register;
  const app = new Hono<PageEnv>();

  const show = (context: PageContext, status: 200 | 400 | 409, form: Omit<SettingsPageProps, 'frame' | 'formToken'>) =>
    context.html(<SettingsPage {...form} frame={frameFor(context)} formToken={formToken(context)} />, status);

  app.get('/settings', async (context) => {
    const settings = await readSettings(db);
    const form = { values: textsOf(settings), opened: printOf(settings), faults: {}, clash: null, changed: [] };
    return show(context, 200, form);
  });

  app.post('/settings', async (context) => {
    const sent = await context.req.parseBody();
    const texts = Object.fromEntries(
      SETTING_NAMES.map((name) => [name, textField(sent, name).replace(/\r\n?/g, '\n').trim()]),
    ) as SettingsPageProps['values'];
    const faults: Partial<Record<keyof RegisterSettings, string>> = {};
    const wanted: Record<string, string | number> = {};
    for (const name of SETTING_NAMES) {
      const checked = settingFromText(name, texts[name]);
      if ('reason' in checked) faults[name] = checked.reason;
      else wanted[name] = checked.value;
    }
    const opened = textField(sent, 'opened_print');
    const settings = await readSettings(db);
    const form = { values: texts, opened, faults, clash: null, changed: [] };
    if (Object.keys(faults).length > 0) return show(context, 400, form);
    const changed = differences(textsOf(settings), textsOf(wanted));
    if (opened !== printOf(settings)) {
      return show(context, 409, { ...form, opened: printOf(settings), clash: changed });
    }
    const names = SETTING_NAMES.filter((name) => wanted[name] !== settings[name]);
    await writeSettings(db, Object.fromEntries(names.map((name) => [name, wanted[name]])), isoUtc(clock()));
    if (names.length > 0) log.info({ by: accountName(context.var), settings: names }, 'settings were changed');
    const now = await readSettings(db);
    return show(context, 200, { ...form, values: textsOf(now), opened: printOf(now), changed });
  });
  return app;
}
