import type { DisplayUnits } from '../drawing/speed-text.ts';
import type { FenceFacts, ForecastSettings } from '../forecast/fence-facts.ts';
import { MODEL_VERSION } from '../forecast/model-version.ts';
import { seasonOneYear } from '../forecast/season-calendar.ts';
import type { Register } from '../register/database.ts';
import { loadFenceFacts } from '../register/fence-facts-store.ts';
import type { StoredState } from '../register/forecast-store.ts';
import { loadStoredStates } from '../register/forecast-store.ts';
import { readRecord } from '../register/record-store.ts';
import { readSettings } from '../register/settings-store.ts';
import { canonicalJson, sha256 } from '../service/canonical-json.ts';
import type { Clock } from '../service/clock.ts';
import { dayInZone } from '../service/clock.ts';
import { forecastSettingsOf } from '../service/run-sweep.ts';
import { CliError } from './cli-error.ts';
import { EXIT } from './exit-codes.ts';

/** A fence with everything its forecast depends on, and how it is shown. */
export interface FenceInRegister {
  readonly ref: string;
  readonly siteName: string;
  readonly units: DisplayUnits;
  readonly facts: FenceFacts;
  readonly settings: ForecastSettings;
  readonly seasonOneYear: number;
  readonly modelVersion: string;
  /** The hash that the sweep would store with this forecast. */
  readonly inputHash: string;
  /** What the last sweep stored; null where the fence was never swept. */
  readonly lastSweep: Pick<StoredState, 'standing' | 'endsStanding' | 'inputHash'> | null;
}

/** Loads one fence's inputs. Throws `CliError` (not found) where the register has no such fence. */
export async function fenceInRegister(register: Register, ref: string, clock: Clock): Promise<FenceInRegister> {
  const fence = await readRecord(register.db, 'fences', ref);
  const site = fence && (await readRecord(register.db, 'sites', fence.siteRef));
  const facts = (await loadFenceFacts(register, [ref])).get(ref);
  if (!fence || !site || !facts) {
    throw new CliError(
      EXIT.notFound,
      `no fence ${JSON.stringify(ref)} in the register at ${register.path}`,
      'refs are compared letter by letter; "stormpale export fences" lists them, --data names another register',
    );
  }
  const stored = (await loadStoredStates(register, [ref])).get(ref);
  const settings = forecastSettingsOf(await readSettings(register.db));
  const year = seasonOneYear(facts.site.seasonWindow, dayInZone(clock(), site.timeZone));
  return {
    ref,
    siteName: site.name,
    units: site.units,
    facts,
    settings,
    seasonOneYear: year,
    modelVersion: MODEL_VERSION,
    inputHash: sha256(canonicalJson({ facts, modelVersion: MODEL_VERSION, seasonOneYear: year, settings })),
    lastSweep: stored ?? null,
  };
}
