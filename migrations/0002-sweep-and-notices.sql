-- The sweep over the register: its runs, the forecasts it keeps, the notices it decides and the outbox they leave by.

create table sweeps (
  id integer primary key,
  as_of text not null,
  model_version text not null,
  settings text not null,
  state text not null check (state in ('running', 'finished', 'superseded')),
  started_at text not null,
  finished_at text,
  checkpoint_ref text,
  computed integer not null default 0,
  unchanged integer not null default 0,
  failed integer not null default 0,
  notices integer not null default 0
) strict;

create table sweep_failures (
  sweep_id integer not null references sweeps (id),
  fence_ref text not null,
  message text not null,
  primary key (sweep_id, fence_ref)
) strict, without rowid;

-- At most one sweep at a time: whoever holds the one row, until its lease runs out.
create table sweep_claim (
  id integer primary key check (id = 1),
  token text not null,
  pid integer not null,
  expires_at text not null
) strict;

create table forecasts (
  fence_ref text primary key not null references fences (ref) on delete cascade,
  sweep_id integer not null references sweeps (id),
  input_hash text not null,
  model_version text not null,
  computed_at text not null,
  season_one text not null,
  generation text not null,
  standing text not null check (standing in ('clear', 'closing', 'short', 'short from new')),
  ends_standing text check (ends_standing in ('clear', 'closing', 'short', 'short from new')),
  short_season text,
  ends_short_season text,
  snap_mps real not null,
  lean_mps real not null,
  ends_snap_mps real,
  design_gust_mps real not null,
  once_in_years real,
  p_short real,
  told_marks text not null,
  detail text not null
) strict;
create index forecasts_by_standing on forecasts (standing, snap_mps);
create index forecasts_by_short_season on forecasts (short_season);
create index forecasts_by_snap on forecasts (snap_mps);

-- Which owner has been told how a fence stands at least once; whoever is not here yet gets a first notice.
create table introductions (
  fence_ref text not null references fences (ref) on delete cascade,
  owner_ref text not null references owners (ref) on delete cascade,
  sweep_id integer not null references sweeps (id),
  primary key (fence_ref, owner_ref)
) strict, without rowid;

create table outbox (
  id integer primary key,
  message_id text not null unique,
  owner_ref text not null references owners (ref),
  channel text not null check (channel in ('mail', 'letter')),
  envelope_from text,
  envelope_to text,
  subject text not null,
  raw blob not null,
  sha256 text not null,
  state text not null check (state in ('queued', 'leased', 'sent', 'parked', 'cancelled', 'to print')),
  attempts integer not null default 0,
  due_at text,
  lease_token text,
  lease_until text,
  first_failed_at text,
  last_reply text,
  sent_at text,
  created_at text not null,
  check (channel = 'letter' or (envelope_from is not null and envelope_to is not null))
) strict;
create index outbox_by_due on outbox (state, due_at);
create index outbox_by_owner on outbox (owner_ref);

create table notices (
  id integer primary key,
  fence_ref text not null references fences (ref),
  owner_ref text not null references owners (ref),
  matter text not null,
  occasion text not null,
  first integer not null check (first in (0, 1)),
  facts text not null,
  sweep_id integer not null references sweeps (id),
  outbox_id integer references outbox (id),
  created_at text not null,
  unique (fence_ref, owner_ref, matter, occasion)
) strict;
create index notices_without_message on notices (owner_ref) where outbox_id is null;
create index notices_by_outbox on notices (outbox_id);

-- What the mail server said last as a whole: a refused connection makes every message wait, and spends none's tries.
create table mail_server (
  id integer primary key check (id = 1),
  failures integer not null,
  retry_at text not null,
  last_reply text not null
) strict;
