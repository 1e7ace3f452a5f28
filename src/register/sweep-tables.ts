import type { Generated, GeneratedAlways } from 'kysely';
import type { FenceStanding } from '../forecast/fence-forecast.ts';

/** State of a sweep; `superseded`: never finished, and a later sweep took its place. */
export type SweepState = 'running' | 'finished' | 'superseded';

/** State of a message in the outbox; letters are `to print` until the office has posted them (`sent`). */
export type OutboxState = 'queued' | 'leased' | 'sent' | 'parked' | 'cancelled' | 'to print';

/** Why a queued mail is not tried before it is due. */
export type WaitsFor = 'quiet hours' | 'sending rate';

/**
 * Why a notice waits for the office: what a register's first sweep found, a fence that came with a large import (either one also for
 * fences that are new while such notices wait), a matter that the office holds, or other first notices of its owner were released before it.
 */
export type HeldBy = 'first sweep' | 'large import' | 'matter' | 'kept back';

export interface SweepsTable {
  readonly id: Generated<number>;
  readonly as_of: string;
  readonly model_version: string;
  readonly settings: string;
  readonly state: SweepState;
  readonly started_at: string;
  readonly finished_at: string | null;
  readonly checkpoint_ref: string | null;
  readonly computed: Generated<number>;
  readonly unchanged: Generated<number>;
  readonly failed: Generated<number>;
  readonly notices: Generated<number>;
  readonly change_count: number | null;
}

interface SweepFailuresTable {
  readonly sweep_id: number;
  readonly fence_ref: string;
  readonly message: string;
}

interface SweepClaimTable {
  readonly id: number;
  readonly token: string;
  readonly pid: number;
  readonly process_start: string | null;
  readonly expires_at: string;
}

export interface ForecastsTable {
  readonly fence_ref: string;
  readonly sweep_id: number;
  readonly input_hash: string;
  readonly model_version: string;
  readonly computed_at: string;
  readonly season_one: string;
  readonly generation: string;
  readonly standing: FenceStanding;
  readonly ends_standing: FenceStanding | null;
  readonly short_season: string | null;
  readonly ends_short_season: string | null;
  readonly snap_mps: number;
  readonly lean_mps: number;
  readonly ends_snap_mps: number | null;
  readonly design_gust_mps: number;
  readonly once_in_years: number | null;
  readonly p_short: number | null;
  readonly told_marks: string;
  readonly told_findings: string;
  readonly told_works: string | null;
  readonly detail: string;
}

interface IntroductionsTable {
  readonly fence_ref: string;
  readonly owner_ref: string;
  readonly sweep_id: number;
}

interface OutboxTable {
  readonly id: Generated<number>;
  readonly message_id: string;
  /** Null for a mail to the office itself. */
  readonly owner_ref: string | null;
  readonly channel: 'mail' | 'letter';
  readonly envelope_from: string | null;
  readonly envelope_to: string | null;
  readonly subject: string;
  readonly raw: Uint8Array;
  readonly sha256: string;
  readonly state: OutboxState;
  readonly attempts: Generated<number>;
  readonly due_at: string | null;
  readonly lease_token: string | null;
  readonly lease_until: string | null;
  readonly first_failed_at: string | null;
  readonly last_reply: string | null;
  readonly sent_at: string | null;
  readonly created_at: string;
  readonly urgent: Generated<number>;
  readonly waits_for: WaitsFor | null;
  readonly domain: GeneratedAlways<string | null>;
  readonly posted_by: Generated<string>;
  readonly posted_on: Generated<string | null>;
}

interface NoticesTable {
  readonly id: Generated<number>;
  readonly fence_ref: string;
  readonly owner_ref: string;
  readonly matter: string;
  readonly occasion: string;
  readonly facts: string;
  /** Null where it comes from a visit or a plan. */
  readonly sweep_id: number | null;
  readonly visit_uid: Generated<string | null>;
  readonly plan_number: Generated<number | null>;
  readonly outbox_id: number | null;
  readonly void_reason: string | null;
  readonly created_at: string;
  readonly held: HeldBy | null;
  readonly released_at: string | null;
  readonly covering: string | null;
}

interface LargeImportFencesTable {
  readonly fence_ref: string;
  readonly imported_at: string;
}

interface OfficeToldTable {
  readonly what: string;
  readonly told_at: string;
  readonly outbox_id: number;
}

interface HeldMattersTable {
  readonly matter: string;
  readonly since: string;
}

interface OfficeNoticesTable {
  readonly id: Generated<number>;
  readonly fence_ref: string;
  readonly matter: string;
  readonly occasion: string;
  readonly facts: string;
  readonly sweep_id: number;
  readonly created_at: string;
  readonly settled_at: string | null;
  readonly settled_by: Generated<string>;
}

interface StandingChangesTable {
  readonly id: Generated<number>;
  readonly fence_ref: string;
  readonly sweep_id: number;
  readonly at: string;
  readonly standing_before: FenceStanding;
  readonly standing_after: FenceStanding;
  readonly ends_before: FenceStanding | null;
  readonly ends_after: FenceStanding | null;
  readonly snap_mps: number;
  readonly design_gust_mps: number;
  readonly causes: string;
}

interface RegisterChangesTable {
  readonly id: number;
  readonly count: number;
}

interface MailServerTable {
  readonly id: number;
  readonly failures: number;
  readonly retry_at: string;
  readonly last_reply: string;
}

/** Tables of the sweep, its notices and the outbox. Times are ISO text in UTC, days `YYYY-MM-DD`. */
export interface SweepTables {
  readonly sweeps: SweepsTable;
  readonly sweep_failures: SweepFailuresTable;
  readonly sweep_claim: SweepClaimTable;
  readonly forecasts: ForecastsTable;
  readonly introductions: IntroductionsTable;
  readonly outbox: OutboxTable;
  readonly notices: NoticesTable;
  readonly held_matters: HeldMattersTable;
  readonly large_import_fences: LargeImportFencesTable;
  readonly office_told: OfficeToldTable;
  readonly office_notices: OfficeNoticesTable;
  readonly mail_server: MailServerTable;
  readonly standing_changes: StandingChangesTable;
  readonly register_changes: RegisterChangesTable;
}
