import type { FC } from 'hono/jsx';
import type { RegisterSettings } from '../../register/settings-store.ts';
import { SETTING_NAMES } from '../../register/settings-store.ts';
import { SETTING_WORDS } from '../../service/setting-words.ts';
import { ChoiceField, FormAlert, FormField, TokenField } from '../frame/form-field.tsx';
import type { PageFrame } from '../frame/page-frame.ts';
import { PageShell } from '../frame/page-shell.tsx';
import type { ChangedField } from './changed-fields.ts';
import { FieldTable } from './changed-table.tsx';
import { LongTextField } from './record-fields.tsx';

/** The name of a setting: what a form calls it, with its range. */
export const SETTING_LABELS: Readonly<Record<keyof RegisterSettings, string>> = {
  standingReturnPeriodYears: 'Return period of the design gust [years], 10 to 3000',
  lookAheadSeasons: 'Look-ahead [seasons], 0 to 30',
  reminderDays: 'Reminder before a season [days], 0 to 180',
  holdFirstSweep: 'Hold what the first sweep finds',
  largeImportFences: 'Hold the first notices of an import of so many new fences',
  currency: 'Currency, three letters',
  timeZone: 'Time zone of the office',
  companyName: 'Name of the office',
  companyPostalAddress: 'Postal address of the office',
  companyPhone: 'Phone of the office',
  senderAddress: 'Mail address of the office',
};

/** Properties of the page of settings. */
export interface SettingsPageProps {
  readonly frame: PageFrame;
  readonly formToken: string;
  readonly values: Readonly<Record<keyof RegisterSettings, string>>;
  readonly opened: string;
  readonly faults: Readonly<Partial<Record<keyof RegisterSettings, string>>>;
  readonly clash: readonly ChangedField[] | null;
  readonly changed: readonly ChangedField[];
}

/** The page on which the office sets what holds for the whole register. */
export const SettingsPage: FC<SettingsPageProps> = (props) => {
  const { frame, formToken, values, opened, faults, clash, changed } = props;
  return (
    <PageShell title="Settings" section="records" frame={frame} cautions={false}>
      <p class="back">
        <a href="/records">Records</a>
      </p>
      <h1>Settings</h1>
      {changed.length > 0 && (
        <>
          <p class="done">Set. The next sweep judges every fence by this.</p>
          <FieldTable fields={changed} caption="What was changed" headings={['Before', 'Now']} />
        </>
      )}
      {Object.keys(faults).length > 0 && <FormAlert>Nothing was set: see below what to correct.</FormAlert>}
      {clash && (
        <>
          <FormAlert>
            Nothing was set: somebody changed settings since you opened the page. What you wrote is still below; save
            again to put it in place.
          </FormAlert>
          <FieldTable
            fields={clash}
            caption="Where the two differ"
            headings={['In the register now', 'What you wrote']}
          />
        </>
      )}
      <p class="lead">What holds for the whole register.</p>
      <form class="tall" method="post" action="/settings">
        <TokenField token={formToken} />
        <input type="hidden" name="opened_print" value={opened} />
        {SETTING_NAMES.map((name) => {
          const common = {
            name,
            label: SETTING_LABELS[name],
            hint: `${SETTING_WORDS[name].charAt(0).toUpperCase()}${SETTING_WORDS[name].slice(1)}.`,
            fault: faults[name],
          };
          if (name === 'holdFirstSweep') {
            return (
              <ChoiceField
                {...common}
                chosen={values[name]}
                choices={[
                  ['yes', 'yes'],
                  ['no', 'no'],
                ]}
              />
            );
          }
          if (name === 'companyPostalAddress') return <LongTextField {...common} value={values[name]} />;
          return <FormField {...common} value={values[name]} required={name !== 'companyPhone'} />;
        })}
        <button type="submit">Save</button>
      </form>
    </PageShell>
  );
};
