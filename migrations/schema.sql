-- Schema after migration 26, written by src/register/dump-schema.ts: do not edit.

CREATE TABLE account_sites (
  account_id integer not null references accounts (id),
  site_ref text not null references sites (ref) on delete cascade,
  primary key (account_id, site_ref)
) strict, without rowid;

CREATE TABLE accounts (
  id integer primary key not null,
  -- folded: small letters
  name text not null unique check (length(name) between 2 and 80),
  display_name text not null check (length(display_name) between 1 and 200),
  role text not null check (role in ('office', 'crew', 'board')),
  crew_ref text references crews (ref),
  language text not null check (language in ('en', 'es')),
  -- scrypt with its parameters and salt; null for an account of the demo, which is entered by one click on this machine only
  password_hash text check (length(password_hash) between 60 and 200),
  demo integer not null check (demo in (0, 1)),
  created_at text not null,
  disabled_at text check (disabled_at >= created_at),
  check ((password_hash is null) = (demo = 1)),
  check (crew_ref is null or role = 'crew')
) strict;

CREATE TRIGGER accounts_kept before update of id, name, role, demo, created_at on accounts
  begin select raise(abort, 'name and role of an account stay; disable it and make another'); end;

CREATE TRIGGER accounts_stay before delete on accounts
  begin select raise(abort, 'an account is disabled, never deleted'); end;

CREATE TABLE api_answers (
  token_id integer not null references api_tokens (id),
  -- made up by the program
  key text not null check (length(key) between 1 and 200),
  -- over method, path and body, in hexadecimal
  request_sha256 text not null check (length(request_sha256) = 64),
  begun_at text not null,
  -- null while it is at work, as all that follow
  status integer check (status between 200 and 499),
  content_type text,
  body text,
  primary key (token_id, key),
  check ((status is null) = (body is null))
) strict, without rowid;

CREATE INDEX api_answers_by_age on api_answers (begun_at);

CREATE TABLE api_tokens (
  id integer primary key not null,
  name text not null check (length(name) between 1 and 100),
  token_sha256 text not null unique check (length(token_sha256) = 64),
  -- words parted by spaces
  scopes text not null check (length(scopes) > 0),
  created_at text not null,
  expires_at text not null check (expires_at > created_at),
  revoked_at text check (revoked_at >= created_at)
) strict;

CREATE TRIGGER api_tokens_kept before update of id, name, token_sha256, scopes, created_at, expires_at on api_tokens
  begin select raise(abort, 'a token is only ever revoked; make another'); end;

CREATE TRIGGER api_tokens_stay before delete on api_tokens
  begin select raise(abort, 'a token is revoked, never deleted'); end;

CREATE TRIGGER api_tokens_stay_revoked before update of revoked_at on api_tokens when old.revoked_at is not null
  begin select raise(abort, 'a revoked token never answers again'); end;

CREATE TABLE catalogue_lines (
  kind text primary key not null
    check (kind in ('inspect', 'groundline-treatment', 'liner', 'drainage', 'trimmer-guard', 'footing-reset', 'post-swap',
      'steel-sleeve', 'added-posts', 'rebuild')),
  person_hours_fixed real not null check (person_hours_fixed between 0 and 500),
  person_hours_per_post real not null check (person_hours_per_post between 0 and 100),
  price_fixed real not null check (price_fixed between 0 and 1000000),
  price_per_post real not null check (price_per_post between 0 and 100000),
  cure_days integer not null check (cure_days between 0 and 120),
  locate_notice_days integer not null check (locate_notice_days between 0 and 60),
  not_on_frozen_ground integer not null check (not_on_frozen_ground in (0, 1)),
  licensed_applicator integer not null check (licensed_applicator in (0, 1)),
  permit integer not null check (permit in (0, 1)),
  embedment_m real not null check (embedment_m between 0.15 and 2.5),
  footing text not null check (footing in ('concrete', 'soil', 'gravel')),
  footing_diameter_m real not null check (footing_diameter_m between 0.08 and 1.2),
  sleeve_moment_nm real not null check (sleeve_moment_nm between 50 and 200000),
  years_effective real not null check (years_effective between 0.5 and 30),
  treatment_class text not null,
  source text not null check (length(source) > 0),
  created_at text not null,
  updated_at text not null
) strict;

CREATE TABLE catalogue_materials (
  kind text not null,
  name text not null check (length(name) between 1 and 100),
  unit text not null check (length(unit) between 1 and 20),
  quantity_fixed real not null check (quantity_fixed between 0 and 10000),
  quantity_per_post real not null check (quantity_per_post between 0 and 10000),
  unit_cost real not null check (unit_cost between 0 and 100000),
  created_at text not null,
  updated_at text not null,
  primary key (kind, name)
) strict;

CREATE TABLE climate_zones (
  ref text primary key not null check (length(ref) between 1 and 40),
  name text not null check (length(name) > 0),
  rain_mm_per_year real check (rain_mm_per_year between 0 and 12000),
  mean_temperature_c real check (mean_temperature_c between -20 and 35),
  dry_months integer check (dry_months between 0 and 12),
  decay_zone integer check (decay_zone between 1 and 5),
  irrigated integer not null check (irrigated in (0, 1)),
  source text not null check (length(source) > 0),
  created_at text not null,
  updated_at text not null,
  check (
    (decay_zone is null and rain_mm_per_year is not null and mean_temperature_c is not null and dry_months is not null)
    or (decay_zone is not null and rain_mm_per_year is null and mean_temperature_c is null and dry_months is null)
  )
) strict;

CREATE TRIGGER climate_zones_delete_counted after delete on climate_zones begin update register_changes set count = count + 1; end;

CREATE TRIGGER climate_zones_insert_counted after insert on climate_zones begin update register_changes set count = count + 1; end;

CREATE TRIGGER climate_zones_update_counted after update on climate_zones begin update register_changes set count = count + 1; end;

CREATE TABLE crew_members (
  ref text primary key not null check (length(ref) between 1 and 40),
  crew_ref text not null references crews (ref) on delete cascade,
  name text not null check (length(name) > 0),
  hours_per_week real not null check (hours_per_week between 1 and 80),
  -- words parted by spaces
  languages text not null,
  skills text not null,
  from_day text,
  to_day text,
  created_at text not null,
  updated_at text not null
) strict;

CREATE INDEX crew_members_by_crew on crew_members (crew_ref);

CREATE TABLE crews (
  ref text primary key not null check (length(ref) between 1 and 40),
  name text not null check (length(name) > 0),
  base_latitude real check (base_latitude between -90 and 90),
  base_longitude real check (base_longitude between -180 and 180),
  speed_mps real not null check (speed_mps between 1 and 50),
  -- share of the hours kept free for weather
  weather_reserve real not null check (weather_reserve between 0 and 0.9),
  created_at text not null,
  updated_at text not null,
  check ((base_latitude is null) = (base_longitude is null))
) strict;

CREATE TABLE day_wishes (
  id integer primary key not null,
  visit_uid text not null check (length(visit_uid) between 1 and 60),
  owner_ref text not null check (length(owner_ref) between 1 and 40),
  link_id integer not null references owner_links (id),
  -- Monday of the week that was offered
  week text not null check (week glob '[12][0-9][0-9][0-9]-[01][0-9]-[0-3][0-9]'),
  -- days, as JSON lists; none that suits: an empty one
  offered text not null check (json_valid(offered)),
  suits text not null check (json_valid(suits)),
  at text not null
) strict;

CREATE INDEX day_wishes_by_visit on day_wishes (visit_uid, id);

CREATE TRIGGER day_wishes_kept before update on day_wishes
  begin select raise(abort, 'what an owner answered stays as it is'); end;

CREATE TRIGGER day_wishes_stay before delete on day_wishes
  begin select raise(abort, 'what an owner answered is never deleted'); end;

CREATE TABLE days_off (
  ref text primary key not null check (length(ref) between 1 and 40),
  crew_ref text not null references crews (ref) on delete cascade,
  -- null: the whole crew
  member_ref text references crew_members (ref) on delete cascade,
  first_day text not null,
  last_day text not null check (last_day >= first_day),
  reason text not null,
  created_at text not null,
  updated_at text not null
) strict;

CREATE INDEX days_off_by_crew on days_off (crew_ref, first_day);

CREATE TABLE delivery_reports (
  id integer primary key,
  -- of the report's bytes: the same report is noted once
  sha256 text not null unique,
  raw blob not null,
  outbox_id integer not null references outbox (id),
  received_at text not null,
  found_by text not null check (found_by in ('signed address', 'message id')),
  action text not null check (action in ('failed', 'delayed', 'delivered', 'relayed', 'expanded')),
  status text not null,
  recipient text not null,
  diagnostic text not null
) strict;

CREATE INDEX delivery_reports_of_mail on delivery_reports (outbox_id);

CREATE TABLE entry_receipts (
  -- who sent it: `account:4`, `token:2`; ids of one sender mean nothing to another
  holder text not null check (length(holder) between 3 and 60),
  -- made by whoever sent it
  id text not null check (length(id) between 8 and 100),
  -- what kind of entry, and a digest of what it says: the same id with something else in it is refused
  kind text not null check (length(kind) between 1 and 60),
  content_sha256 text not null check (length(content_sha256) = 64),
  answer text not null check (json_valid(answer)),
  stored_at text not null,
  primary key (holder, id)
) strict, without rowid;

CREATE TRIGGER entry_receipts_kept before update on entry_receipts
  begin select raise(abort, 'a receipt is never edited'); end;

CREATE TABLE feed_links (
  id integer primary key not null,
  kind text not null check (kind in ('crew', 'site')),
  ref text not null check (length(ref) between 1 and 40),
  token_sha256 text not null unique check (length(token_sha256) = 64),
  created_at text not null,
  -- null while it answers
  revoked_at text check (revoked_at >= created_at)
) strict;

CREATE INDEX feed_links_by_ref on feed_links (kind, ref);

CREATE TRIGGER feed_links_kept before update of id, kind, ref, token_sha256, created_at on feed_links
  begin select raise(abort, 'a feed link is only ever revoked; make another'); end;

CREATE TRIGGER feed_links_stay before delete on feed_links
  begin select raise(abort, 'a feed link is revoked, never deleted'); end;

CREATE TRIGGER feed_links_stay_revoked before update of revoked_at on feed_links when old.revoked_at is not null
  begin select raise(abort, 'a revoked feed link never answers again'); end;

CREATE TABLE fence_lines (
  id integer primary key not null,
  ref text not null unique references fences (ref) on delete cascade,
  ref_key text not null,
  site_ref text not null,
  site_key text not null,
  owner_ref text not null,
  second_owner_ref text,
  owner_key text not null,
  -- what a text is looked for in: ref, site, owners
  folded text not null,
  treatment_class text not null,
  installed_earliest text not null,
  built_from integer not null,
  built_to integer not null,
  -- 0 for the worst standing, 3 for the best; null until the fence is swept
  standing_rank integer,
  ends_rank integer,
  short_season text,
  short_year integer,
  snap_mps real,
  lean_mps real,
  design_gust_mps real,
  once_in_years real,
  -- snap speed over design gust; the second, for orders among equals, puts a fence that was not swept last
  worst real,
  tie real not null default 1e9
, stands_rank integer
  generated always as (min(standing_rank, coalesce(ends_rank, standing_rank))) virtual) strict;

CREATE INDEX fence_lines_by_ends on fence_lines
  (ends_rank, tie, ref_key, id, standing_rank, built_from, built_to, short_year, treatment_class);

CREATE INDEX fence_lines_by_gust on fence_lines
  (design_gust_mps, tie, ref_key, id, standing_rank, ends_rank, built_from, built_to, short_year, treatment_class);

CREATE INDEX fence_lines_by_installed on fence_lines
  (installed_earliest, tie, ref_key, id, standing_rank, ends_rank, built_from, built_to, short_year, treatment_class);

CREATE INDEX fence_lines_by_lean on fence_lines
  (lean_mps, tie, ref_key, id, standing_rank, ends_rank, built_from, built_to, short_year, treatment_class);

CREATE INDEX fence_lines_by_once on fence_lines
  (once_in_years, tie, ref_key, id, standing_rank, ends_rank, built_from, built_to, short_year, treatment_class);

CREATE INDEX fence_lines_by_owner on fence_lines
  (owner_key, tie, ref_key, id, standing_rank, ends_rank, built_from, built_to, short_year, treatment_class);

CREATE INDEX fence_lines_by_ref on fence_lines
  (ref_key, id, standing_rank, ends_rank, built_from, built_to, short_year, treatment_class);

CREATE INDEX fence_lines_by_short on fence_lines
  (short_season, tie, ref_key, id, standing_rank, ends_rank, built_from, built_to, short_year, treatment_class);

CREATE INDEX fence_lines_by_site on fence_lines
  (site_key, tie, ref_key, id, standing_rank, ends_rank, built_from, built_to, short_year, treatment_class);

CREATE INDEX fence_lines_by_snap on fence_lines
  (snap_mps, tie, ref_key, id, standing_rank, ends_rank, built_from, built_to, short_year, treatment_class);

CREATE INDEX fence_lines_by_standing on fence_lines
  (standing_rank, tie, ref_key, id, ends_rank, built_from, built_to, short_year, treatment_class);

CREATE INDEX fence_lines_by_stands on fence_lines (stands_rank, site_ref, standing_rank);

CREATE INDEX fence_lines_by_treatment on fence_lines
  (treatment_class, tie, ref_key, id, standing_rank, ends_rank, built_from, built_to, short_year);

CREATE INDEX fence_lines_by_worst on fence_lines
  (worst, ref_key, id, standing_rank, ends_rank, built_from, built_to, short_year, treatment_class);

CREATE INDEX fence_lines_of_owner on fence_lines (owner_ref);

CREATE INDEX fence_lines_of_second_owner on fence_lines (second_owner_ref) where second_owner_ref is not null;

CREATE INDEX fence_lines_of_site on fence_lines (site_ref);

CREATE TRIGGER fence_lines_counted_anew after update on fence_lines
  when old.site_ref <> new.site_ref or old.standing_rank is not new.standing_rank or old.ends_rank is not new.ends_rank begin
  update register_standings set fences = fences - 1
    where standing_rank = coalesce(old.standing_rank, 4) and ends_rank = coalesce(old.ends_rank, 4);
  insert into register_standings (standing_rank, ends_rank, fences)
    values (coalesce(new.standing_rank, 4), coalesce(new.ends_rank, 4), 1)
    on conflict do update set fences = fences + 1;
  update site_standings set fences = fences - 1
    where site_ref = old.site_ref and standing_rank = coalesce(old.standing_rank, 4) and ends_rank = coalesce(old.ends_rank, 4);
  insert into site_standings (site_ref, standing_rank, ends_rank, fences)
    values (new.site_ref, coalesce(new.standing_rank, 4), coalesce(new.ends_rank, 4), 1)
    on conflict do update set fences = fences + 1;
end;

CREATE TRIGGER fence_lines_counted_in after insert on fence_lines begin
  insert into register_standings (standing_rank, ends_rank, fences)
    values (coalesce(new.standing_rank, 4), coalesce(new.ends_rank, 4), 1)
    on conflict do update set fences = fences + 1;
  insert into site_standings (site_ref, standing_rank, ends_rank, fences)
    values (new.site_ref, coalesce(new.standing_rank, 4), coalesce(new.ends_rank, 4), 1)
    on conflict do update set fences = fences + 1;
end;

CREATE TRIGGER fence_lines_counted_out after delete on fence_lines begin
  update register_standings set fences = fences - 1
    where standing_rank = coalesce(old.standing_rank, 4) and ends_rank = coalesce(old.ends_rank, 4);
  update site_standings set fences = fences - 1
    where site_ref = old.site_ref and standing_rank = coalesce(old.standing_rank, 4) and ends_rank = coalesce(old.ends_rank, 4);
end;

CREATE TRIGGER fence_lines_text_anew after update on fence_lines when old.folded <> new.folded begin
  insert into fence_text (fence_text, rowid, folded) values ('delete', old.id, old.folded);
  insert into fence_text (rowid, folded) values (new.id, new.folded);
end;

CREATE TRIGGER fence_lines_text_in after insert on fence_lines begin
  insert into fence_text (rowid, folded) values (new.id, new.folded);
end;

CREATE TRIGGER fence_lines_text_out after delete on fence_lines begin
  insert into fence_text (fence_text, rowid, folded) values ('delete', old.id, old.folded);
end;

CREATE VIEW fence_lines_now as
select
  fences.ref as ref,
  natural_key(fences.ref) as ref_key,
  fences.site_ref as site_ref,
  natural_key(sites.name) as site_key,
  fences.owner_ref as owner_ref,
  fences.second_owner_ref as second_owner_ref,
  natural_key(owners.name) as owner_key,
  folded_text(
    fences.ref || char(10) || sites.name || char(10) || owners.name || coalesce(char(10) || second.name, '')
  ) as folded,
  fences.treatment_class as treatment_class,
  fences.installed_earliest as installed_earliest,
  cast(substr(fences.installed_earliest, 1, 4) as integer) as built_from,
  cast(substr(fences.installed_latest, 1, 4) as integer) as built_to,
  case forecasts.standing
    when 'short from new' then 0 when 'short' then 1 when 'closing' then 2 when 'clear' then 3 end as standing_rank,
  case forecasts.ends_standing
    when 'short from new' then 0 when 'short' then 1 when 'closing' then 2 when 'clear' then 3 end as ends_rank,
  forecasts.short_season as short_season,
  cast(substr(forecasts.short_season, 1, 4) as integer) as short_year,
  forecasts.snap_mps as snap_mps,
  forecasts.lean_mps as lean_mps,
  forecasts.design_gust_mps as design_gust_mps,
  forecasts.once_in_years as once_in_years,
  worst_by_fence.worst as worst,
  coalesce(worst_by_fence.worst, 1e9) as tie
from fences
join sites on sites.ref = fences.site_ref
join owners on owners.ref = fences.owner_ref
left join owners as second on second.ref = fences.second_owner_ref
left join forecasts on forecasts.fence_ref = fences.ref
join worst_by_fence on worst_by_fence.ref = fences.ref;

CREATE VIRTUAL TABLE fence_text using fts5(
  folded, content = 'fence_lines', content_rowid = 'id', tokenize = 'trigram case_sensitive 1'
);

CREATE TABLE 'fence_text_config'(k PRIMARY KEY, v) WITHOUT ROWID;

CREATE TABLE 'fence_text_data'(id INTEGER PRIMARY KEY, block BLOB);

CREATE TABLE 'fence_text_docsize'(id INTEGER PRIMARY KEY, sz BLOB);

CREATE TABLE 'fence_text_idx'(segid, term, pgno, PRIMARY KEY(segid, term)) WITHOUT ROWID;

CREATE TABLE fences (
  ref text primary key not null check (length(ref) between 1 and 40),
  site_ref text not null references sites (ref),
  owner_ref text not null references owners (ref),
  second_owner_ref text references owners (ref) check (second_owner_ref <> owner_ref),
  style text not null check (style in ('solid-board', 'board-on-board', 'shadowbox', 'picket', 'open-rail')),
  solidity real not null check (solidity > 0 and solidity <= 1),
  height_m real not null check (height_m between 0.3 and 4.6),
  run_length_m real not null check (run_length_m between 0.6 and 1000),
  bottom_gap_m real not null check (bottom_gap_m between 0 and 1),
  post_spacing_m real not null check (post_spacing_m between 0.5 and 6),
  named_end text not null check (length(named_end) > 0),
  end_a_kind text not null check (end_a_kind in ('return', 'building', 'gate', 'free', 'unknown')),
  end_a_return_m real check (end_a_return_m between 0.3 and 500),
  end_b_kind text not null check (end_b_kind in ('return', 'building', 'gate', 'free', 'unknown')),
  end_b_return_m real check (end_b_return_m between 0.3 and 500),
  section_kind text not null check (section_kind in ('rectangular', 'round')),
  -- along the fence; the diameter where round
  section_width_mm real not null check (section_width_mm between 38 and 400),
  -- in the wind's direction; null where round
  section_depth_mm real check (section_depth_mm between 38 and 400),
  species text not null,
  grade text not null check (grade in ('no-1', 'no-2', 'no-3', 'unknown')),
  incised integer not null check (incised in (0, 1)),
  treatment_class text not null,
  moment_capacity_nm real check (moment_capacity_nm between 50 and 200000),
  retention_kg_m3 real check (retention_kg_m3 between 0.3 and 400),
  installed_earliest text not null,
  installed_latest text not null,
  embedment_m real check (embedment_m between 0.15 and 2.5),
  footing text check (footing in ('concrete', 'soil', 'gravel')),
  footing_diameter_m real check (footing_diameter_m between 0.08 and 1.2),
  boards text not null check (boards in ('continuous', 'spliced', 'unknown')),
  trimmer_guards text not null check (trimmer_guards in ('yes', 'no', 'unknown')),
  yearly_trimmer_cut_mm real not null check (yearly_trimmer_cut_mm between 0 and 10),
  consequence text not null
    check (consequence in ('ordinary', 'pool-barrier', 'over-footpath', 'livestock', 'other-high')),
  access_note text not null,
  note text not null,
  created_at text not null,
  updated_at text not null,
  check ((end_a_kind = 'return') = (end_a_return_m is not null)),
  check ((end_b_kind = 'return') = (end_b_return_m is not null)),
  check ((section_kind = 'round') = (section_depth_mm is null)),
  check ((treatment_class = 'does-not-rot') = (moment_capacity_nm is not null)),
  check (installed_earliest <= installed_latest)
) strict;

CREATE INDEX fences_by_owner on fences (owner_ref);

CREATE INDEX fences_by_second_owner on fences (second_owner_ref) where second_owner_ref is not null;

CREATE INDEX fences_by_site on fences (site_ref);

CREATE INDEX fences_by_site_and_ref on fences (site_ref, ref);

CREATE TRIGGER fences_delete_counted after delete on fences begin update register_changes set count = count + 1; end;

CREATE TRIGGER fences_insert_counted after insert on fences begin update register_changes set count = count + 1; end;

CREATE TRIGGER fences_insert_lined after insert on fences begin
  insert into fence_lines (
    ref, ref_key, site_ref, site_key, owner_ref, second_owner_ref, owner_key, folded, treatment_class,
    installed_earliest, built_from, built_to
  )
  select
    ref, ref_key, site_ref, site_key, owner_ref, second_owner_ref, owner_key, folded, treatment_class,
    installed_earliest, built_from, built_to
  from fence_lines_now where ref = new.ref;
end;

CREATE TRIGGER fences_update_counted after update on fences begin update register_changes set count = count + 1; end;

CREATE TRIGGER fences_update_lined after update on fences begin
  update fence_lines set
    ref_key = fresh.ref_key, site_ref = fresh.site_ref, site_key = fresh.site_key, owner_ref = fresh.owner_ref,
    second_owner_ref = fresh.second_owner_ref, owner_key = fresh.owner_key, folded = fresh.folded,
    treatment_class = fresh.treatment_class, installed_earliest = fresh.installed_earliest,
    built_from = fresh.built_from, built_to = fresh.built_to, worst = fresh.worst, tie = fresh.tie
  from (select * from fence_lines_now where ref = new.ref) as fresh
  where fence_lines.ref = new.ref;
end;

CREATE TABLE forecasts (
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
, told_findings text not null default '[]' check (json_valid(told_findings)), told_works text check (json_valid(told_works))) strict;

CREATE INDEX forecasts_by_short_season on forecasts (short_season);

CREATE INDEX forecasts_by_snap on forecasts (snap_mps);

CREATE INDEX forecasts_by_standing on forecasts (standing, snap_mps);

CREATE INDEX forecasts_standing_of_fence on forecasts (fence_ref, standing, ends_standing);

CREATE TRIGGER forecasts_delete_lined after delete on forecasts begin
  update fence_lines set
    standing_rank = null, ends_rank = null, short_season = null, short_year = null, snap_mps = null, lean_mps = null,
    design_gust_mps = null, once_in_years = null, worst = null, tie = 1e9
  where ref = old.fence_ref;
end;

CREATE TRIGGER forecasts_insert_lined after insert on forecasts begin
  update fence_lines set
    standing_rank = fresh.standing_rank, ends_rank = fresh.ends_rank, short_season = fresh.short_season,
    short_year = fresh.short_year, snap_mps = fresh.snap_mps, lean_mps = fresh.lean_mps,
    design_gust_mps = fresh.design_gust_mps, once_in_years = fresh.once_in_years, worst = fresh.worst,
    tie = fresh.tie
  from (select * from fence_lines_now where ref = new.fence_ref) as fresh
  where fence_lines.ref = new.fence_ref;
end;

CREATE TRIGGER forecasts_update_lined after update on forecasts
  when old.standing <> new.standing or old.ends_standing is not new.ends_standing
    or old.short_season is not new.short_season or old.snap_mps <> new.snap_mps or old.lean_mps <> new.lean_mps
    or old.design_gust_mps <> new.design_gust_mps or old.once_in_years is not new.once_in_years begin
  update fence_lines set
    standing_rank = fresh.standing_rank, ends_rank = fresh.ends_rank, short_season = fresh.short_season,
    short_year = fresh.short_year, snap_mps = fresh.snap_mps, lean_mps = fresh.lean_mps,
    design_gust_mps = fresh.design_gust_mps, once_in_years = fresh.once_in_years, worst = fresh.worst,
    tie = fresh.tie
  from (select * from fence_lines_now where ref = new.fence_ref) as fresh
  where fence_lines.ref = new.fence_ref;
end;

CREATE TABLE held_matters (
  matter text primary key not null check (length(matter) between 1 and 40),
  since text not null
) strict;

CREATE TABLE import_drafts (
  -- drawn at random
  id text primary key not null check (length(id) between 20 and 64),
  made_at text not null,
  -- name of the account that brought the files
  made_by text not null check (length(made_by) between 1 and 200),
  expires_at text not null check (expires_at > made_at),
  -- names and texts as JSON; gone once they are imported, put away or too old
  files text check (json_valid(files)),
  imported_at text,
  imported_by text check ((imported_by is null) = (imported_at is null)),
  -- what the import did: files and counts by kind, as JSON
  done text check (json_valid(done) and (done is null) = (imported_at is null)),
  check (files is null or imported_at is null)
) strict;

CREATE INDEX import_drafts_by_age on import_drafts (made_at);

CREATE TABLE inspections (
  ref text primary key not null check (length(ref) between 1 and 120),
  fence_ref text not null references fences (ref) on delete cascade,
  day text not null check (day glob '[12][0-9][0-9][0-9]-[01][0-9]-[0-3][0-9]'),
  inspector text not null check (length(inspector) > 0),
  qualification text not null,
  method text not null
    check (method in ('awl-or-probe', 'caliper', 'drill-resistance', 'circumference-tape', 'level', 'eye')),
  instrument text not null,
  notes text not null,
  created_at text not null,
  updated_at text not null
) strict;

CREATE INDEX inspections_by_fence on inspections (fence_ref, day);

CREATE TRIGGER inspections_delete_counted after delete on inspections begin update register_changes set count = count + 1; end;

CREATE TRIGGER inspections_insert_counted after insert on inspections begin update register_changes set count = count + 1; end;

CREATE TRIGGER inspections_update_counted after update on inspections begin update register_changes set count = count + 1; end;

CREATE TABLE introductions (
  fence_ref text not null references fences (ref) on delete cascade,
  owner_ref text not null references owners (ref) on delete cascade,
  sweep_id integer not null references sweeps (id),
  primary key (fence_ref, owner_ref)
) strict, without rowid;

CREATE TABLE large_import_fences (
  fence_ref text primary key not null references fences (ref) on delete cascade,
  imported_at text not null
) strict;

CREATE TABLE learned_acts (
  number integer primary key not null check (number > 0),
  act text not null check (act in ('accepted', 'reverted')),
  -- the acceptance that was taken back
  reverted integer unique references learned_acts (number),
  at text not null,
  by text not null check (length(by) between 1 and 200),
  note text not null check (length(note) <= 2000),
  check ((act = 'reverted') = (reverted is not null))
) strict;

CREATE TRIGGER learned_acts_counted after insert on learned_acts begin update register_changes set count = count + 1; end;

CREATE TRIGGER learned_acts_kept before update on learned_acts begin select raise(abort, 'what was accepted or taken back is never edited'); end;

CREATE TRIGGER learned_acts_stay before delete on learned_acts begin select raise(abort, 'what was accepted or taken back is never deleted'); end;

CREATE TABLE learned_values (
  acceptance integer not null references learned_acts (number),
  -- ground-contact/4, footing/sand
  key text not null check (length(key) > 0),
  kind text not null check (kind in ('pace', 'footing')),
  treatment_class text,
  climate_band integer check (climate_band between 1 and 5),
  soil_kind text check (soil_kind in ('sand', 'clay')),
  -- ln over the published value: mean, and the interval that holds in 9 cases of 10
  log_shift real not null,
  low real not null,
  high real not null check (low <= log_shift and log_shift <= high),
  spread real not null check (spread > 0),
  -- what it rests on: fences; readings, or posts tried; of these leaned
  fences integer not null check (fences >= 0),
  seen integer not null check (seen >= 0),
  leaned integer check (leaned between 0 and seen),
  -- the acceptance in which this value came in
  since integer not null references learned_acts (number) check (since <= acceptance),
  primary key (acceptance, key),
  check ((kind = 'pace') = (treatment_class is not null and climate_band is not null and leaned is null and soil_kind is null)),
  check ((kind = 'footing') = (soil_kind is not null and leaned is not null and treatment_class is null and climate_band is null))
) strict, without rowid;

CREATE TRIGGER learned_values_kept before update on learned_values begin select raise(abort, 'what was accepted is never edited'); end;

CREATE TRIGGER learned_values_stay before delete on learned_values begin select raise(abort, 'what was accepted is never deleted'); end;

CREATE TABLE link_key (
  id integer primary key not null check (id = 1),
  key blob not null check (length(key) = 32),
  created_at text not null
) strict;

CREATE TABLE link_visits (
  link_id integer not null references owner_links (id),
  page text not null check (length(page) between 1 and 40),
  way text not null check (way in ('head', 'get', 'post')),
  visits integer not null check (visits > 0),
  first_at text not null,
  last_at text not null,
  primary key (link_id, page, way)
) strict, without rowid;

CREATE TABLE mail_secret (
  id integer primary key check (id = 1),
  secret text not null
) strict;

CREATE TABLE mail_server (
  id integer primary key check (id = 1),
  failures integer not null,
  retry_at text not null,
  last_reply text not null
) strict;

CREATE TABLE mail_tries (
  id integer primary key,
  outbox_id integer not null references outbox (id),
  at text not null,
  -- 'lost': the service ended while the mail was its turn or under way, and nobody knows what came of that try
  outcome text not null check (outcome in ('sent', 'again', 'parked', 'lost')),
  -- 1 where the server may have taken the mail and its answer never came
  may_have_arrived integer not null check (may_have_arrived in (0, 1)),
  envelope_from text not null,
  envelope_to text not null,
  domain text not null,
  reply text not null
) strict;

CREATE INDEX mail_tries_of_domain on mail_tries (domain, at);

CREATE INDEX mail_tries_of_mail on mail_tries (outbox_id);

CREATE TABLE message_links (
  message_id text not null check (length(message_id) between 3 and 200),
  purpose text not null check (purpose in ('pages', 'unsubscribe')),
  link_id integer not null unique references owner_links (id),
  primary key (message_id, purpose)
) strict, without rowid;

CREATE TABLE "notices" (
  id integer primary key,
  fence_ref text not null references fences (ref),
  owner_ref text not null references owners (ref),
  matter text not null,
  occasion text not null,
  facts text not null,
  sweep_id integer references sweeps (id),
  visit_uid text references visits (uid),
  plan_number integer references season_plans (number),
  outbox_id integer references outbox (id),
  void_reason text,
  created_at text not null,
  -- why it waits for the office: what a register's first sweep found; fences that came with a large import; a matter that the office holds;
  -- or other first notices of its owner were released before it
  held text check (held in ('first sweep', 'large import', 'matter', 'kept back')),
  released_at text check (released_at is null or held is not null),
  -- the office's own sentence after the greeting
  covering text check (length(covering) between 1 and 600),
  check (outbox_id is null or void_reason is null),
  check ((sweep_id is null) <> (visit_uid is null and plan_number is null))
) strict;

CREATE INDEX notices_by_matter on notices (matter, outbox_id);

CREATE INDEX notices_by_outbox on notices (outbox_id);

CREATE INDEX notices_by_visit on notices (visit_uid) where visit_uid is not null;

CREATE INDEX notices_held on notices (owner_ref) where held is not null and released_at is null;

CREATE UNIQUE INDEX notices_once on notices (fence_ref, owner_ref, matter, occasion) where void_reason is null;

CREATE INDEX notices_waiting on notices (owner_ref, fence_ref, id, matter)
  where held is not null and released_at is null and outbox_id is null and void_reason is null;

CREATE INDEX notices_without_message on notices (owner_ref) where outbox_id is null and void_reason is null;

CREATE TABLE offered_quotes (
  number text primary key not null check (length(number) between 5 and 40),
  fence_ref text not null check (length(fence_ref) between 1 and 40),
  content text not null check (json_valid(content)),
  -- of the content, letter by letter
  sha256 text not null check (length(sha256) = 64),
  valid_until text not null,
  offered_at text not null,
  withdrawn_at text check (withdrawn_at >= offered_at)
) strict;

CREATE INDEX offered_quotes_by_fence on offered_quotes (fence_ref);

CREATE TRIGGER offered_quotes_kept before update of number, fence_ref, content, sha256, valid_until, offered_at on offered_quotes
  begin select raise(abort, 'an offered quote is only ever withdrawn; offer another'); end;

CREATE TRIGGER offered_quotes_stay before delete on offered_quotes
  begin select raise(abort, 'an offered quote is withdrawn, never deleted'); end;

CREATE TABLE office_notices (
  id integer primary key,
  fence_ref text not null references fences (ref) on delete cascade,
  matter text not null,
  occasion text not null,
  facts text not null,
  sweep_id integer not null references sweeps (id),
  created_at text not null,
  settled_at text,
  -- empty where nobody was named
  settled_by text not null default '' check (length(settled_by) <= 200),
  unique (fence_ref, matter, occasion)
) strict;

CREATE INDEX office_notices_dangerous on office_notices (fence_ref) where settled_at is null and matter = 'dangerous';

CREATE INDEX office_notices_open on office_notices (id) where settled_at is null;

CREATE TRIGGER office_notices_insert_lined after insert on office_notices when new.matter = 'dangerous' begin
  update fence_lines set worst = fresh.worst, tie = coalesce(fresh.worst, 1e9)
  from (select * from worst_by_fence where ref = new.fence_ref) as fresh
  where fence_lines.ref = new.fence_ref;
end;

CREATE TRIGGER office_notices_update_lined after update of settled_at on office_notices when new.matter = 'dangerous' begin
  update fence_lines set worst = fresh.worst, tie = coalesce(fresh.worst, 1e9)
  from (select * from worst_by_fence where ref = new.fence_ref) as fresh
  where fence_lines.ref = new.fence_ref;
end;

CREATE TABLE office_told (
  what text primary key not null check (length(what) between 1 and 200),
  told_at text not null,
  outbox_id integer not null references outbox (id)
) strict;

CREATE TABLE outbox (
  id integer primary key,
  message_id text not null unique,
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
  created_at text not null, posted_by text not null default '' check (length(posted_by) <= 200), posted_on text check (posted_on is null or posted_on glob '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'), owner_ref text references owners (ref), urgent integer not null default 0 check (urgent in (0, 1)), waits_for text check (waits_for in ('quiet hours', 'sending rate')), domain text generated always as (lower(substr(envelope_to, instr(envelope_to, '@') + 1))) virtual,
  check (channel = 'letter' or (envelope_from is not null and envelope_to is not null))
) strict;

CREATE INDEX outbox_by_due on outbox (state, due_at);

CREATE INDEX outbox_by_owner on outbox (owner_ref);

CREATE INDEX outbox_by_sender on outbox (envelope_from) where envelope_from is not null;

CREATE INDEX outbox_by_state on outbox (state, id);

CREATE INDEX outbox_letters on outbox (id) where channel = 'letter';

CREATE INDEX outbox_queue on outbox (urgent desc, id, state, due_at, waits_for, lease_until, channel, envelope_to)
  where state in ('queued', 'leased');

CREATE INDEX outbox_waiting on outbox (waits_for, domain) where waits_for is not null;

CREATE TABLE owner_answers (
  id integer primary key not null,
  owner_ref text not null check (length(owner_ref) between 1 and 40),
  link_id integer not null references owner_links (id),
  kind text not null check (kind in ('read', 'day chosen', 'quote accepted', 'call wanted', 'preferences', 'unsubscribed')),
  -- ref of the fence, uid of the visit, number of the quote; empty where it is about none
  subject text not null check (length(subject) <= 60),
  detail text not null check (json_valid(detail)),
  -- the same for the same answer given again
  once text not null unique,
  at text not null,
  -- null while the office has something to do about it
  settled_at text,
  -- empty where nobody was named
  settled_by text not null default '' check (length(settled_by) <= 200)
) strict;

CREATE INDEX owner_answers_by_owner on owner_answers (owner_ref, kind);

CREATE INDEX owner_answers_open on owner_answers (id) where settled_at is null;

CREATE TRIGGER owner_answers_kept before update of id, owner_ref, link_id, kind, subject, detail, once, at on owner_answers
  begin select raise(abort, 'what an owner answered stays as it is'); end;

CREATE TRIGGER owner_answers_stay before delete on owner_answers
  begin select raise(abort, 'what an owner answered is never deleted'); end;

CREATE TABLE owner_links (
  id integer primary key not null,
  owner_ref text not null check (length(owner_ref) between 1 and 40),
  -- words parted by spaces
  scopes text not null check (length(scopes) > 0),
  created_at text not null,
  expires_at text not null check (expires_at > created_at),
  revoked_at text check (revoked_at >= created_at)
) strict;

CREATE INDEX owner_links_by_owner on owner_links (owner_ref);

CREATE TRIGGER owner_links_kept before update of id, owner_ref, scopes, created_at, expires_at on owner_links
  begin select raise(abort, 'an owner link is only ever revoked; make another'); end;

CREATE TRIGGER owner_links_stay before delete on owner_links
  begin select raise(abort, 'an owner link is revoked, never deleted'); end;

CREATE TRIGGER owner_links_stay_revoked before update of revoked_at on owner_links when old.revoked_at is not null
  begin select raise(abort, 'a revoked owner link never answers again'); end;

CREATE TABLE owner_preferences (
  owner_ref text primary key not null references owners (ref) on delete cascade,
  -- names of groups of matters, as a JSON list
  muted text not null check (json_valid(muted)),
  -- last day of a pause, the danger excepted
  paused_until text check (paused_until glob '[12][0-9][0-9][0-9]-[01][0-9]-[0-3][0-9]'),
  changed_at text not null
) strict, without rowid;

CREATE TABLE owners (
  ref text primary key not null check (length(ref) between 1 and 40),
  name text not null check (length(name) > 0),
  kind text not null check (kind in ('person', 'association', 'company')),
  channel text not null check (channel in ('mail', 'letter')),
  email text,
  postal_address text,
  language text not null check (language in ('en', 'es')),
  enrolled integer not null check (enrolled in (0, 1)),
  created_at text not null,
  updated_at text not null,
  check (channel <> 'mail' or email is not null),
  check (channel <> 'letter' or postal_address is not null)
) strict;

CREATE TRIGGER owners_delete_counted after delete on owners begin update register_changes set count = count + 1; end;

CREATE TRIGGER owners_insert_counted after insert on owners begin update register_changes set count = count + 1; end;

CREATE TRIGGER owners_update_counted after update on owners begin update register_changes set count = count + 1; end;

CREATE TRIGGER owners_update_lined after update of name on owners when old.name <> new.name begin
  update fence_lines set owner_key = fresh.owner_key, folded = fresh.folded
  from (select ref, owner_key, folded from fence_lines_now where owner_ref = new.ref or second_owner_ref = new.ref) as fresh
  where fence_lines.ref = fresh.ref;
end;

CREATE TABLE posts (
  fence_ref text not null references fences (ref) on delete cascade,
  number integer not null check (number between 1 and 2000),
  position_m real check (position_m between 0 and 1000),
  installed_earliest text,
  installed_latest text,
  section_kind text check (section_kind in ('rectangular', 'round')),
  section_width_mm real check (section_width_mm between 38 and 400),
  section_depth_mm real check (section_depth_mm between 38 and 400),
  species text,
  grade text check (grade in ('no-1', 'no-2', 'no-3', 'unknown')),
  incised integer check (incised in (0, 1)),
  treatment_class text,
  moment_capacity_nm real check (moment_capacity_nm between 50 and 200000),
  shared_fence_ref text references fences (ref) check (shared_fence_ref <> fence_ref),
  shared_end text check (shared_end in ('A', 'B')),
  created_at text not null,
  updated_at text not null,
  primary key (fence_ref, number),
  check ((section_kind is null) = (section_width_mm is null)),
  check (section_depth_mm is null or section_kind = 'rectangular'),
  check ((installed_earliest is null) = (installed_latest is null)),
  check (installed_earliest <= installed_latest),
  check ((shared_fence_ref is null) = (shared_end is null))
) strict;

CREATE INDEX posts_by_shared_fence on posts (shared_fence_ref) where shared_fence_ref is not null;

CREATE TRIGGER posts_delete_counted after delete on posts begin update register_changes set count = count + 1; end;

CREATE TRIGGER posts_insert_counted after insert on posts begin update register_changes set count = count + 1; end;

CREATE TRIGGER posts_update_counted after update on posts begin update register_changes set count = count + 1; end;

CREATE TABLE readings (
  inspection_ref text not null references inspections (ref) on delete cascade,
  post integer not null check (post between 1 and 2000),
  groundline_kind text
    check (groundline_kind in ('depth', 'residual-width', 'residual-circumference', 'sound-to', 'soft-to', 'broken')),
  -- depth lost, or width or girth left: the kind says which; null where broken or not looked at
  groundline_mm real check (groundline_mm between 0 and 1300),
  cavity_mm real check (cavity_mm between 0 and 400),
  lean_degrees real check (lean_degrees between 0 and 90),
  collar_cracked integer check (collar_cracked in (0, 1)),
  rail_connection real check (rail_connection between 0 and 1),
  trimmer_cut_mm real check (trimmer_cut_mm between 0 and 200),
  closed_off integer not null check (closed_off in (0, 1)),
  notes text not null,
  created_at text not null,
  updated_at text not null, sure integer not null default 0 check (sure in (0, 1)),
  primary key (inspection_ref, post),
  check ((groundline_mm is null) = (groundline_kind is null or groundline_kind = 'broken'))
) strict;

CREATE INDEX readings_dangerous on readings (updated_at) where closed_off = 1 or groundline_kind = 'broken';

CREATE TRIGGER readings_delete_counted after delete on readings begin update register_changes set count = count + 1; end;

CREATE TRIGGER readings_insert_counted after insert on readings begin update register_changes set count = count + 1; end;

CREATE TRIGGER readings_update_counted after update on readings begin update register_changes set count = count + 1; end;

CREATE TABLE record_edits (
  id integer primary key,
  at text not null,
  -- name of the account
  by text not null check (length(by) between 1 and 200),
  kind text not null check (length(kind) between 1 and 40),
  -- the record's name within its kind
  ref text not null check (length(ref) between 1 and 240),
  -- the record before (null: it was made) and after, as JSON
  before text check (json_valid(before)),
  after text not null check (json_valid(after))
) strict;

CREATE INDEX record_edits_by_record on record_edits (kind, ref, id);

CREATE TRIGGER record_edits_kept before update on record_edits begin select raise(abort, 'what was edited is never edited again'); end;

CREATE TRIGGER record_edits_stay before delete on record_edits begin select raise(abort, 'what was edited is never deleted'); end;

CREATE TABLE register_changes (
  id integer primary key check (id = 1),
  count integer not null
) strict;

CREATE TABLE register_standings (
  standing_rank integer not null check (standing_rank between 0 and 4),
  ends_rank integer not null check (ends_rank between 0 and 4),
  fences integer not null check (fences >= 0),
  primary key (standing_rank, ends_rank)
) strict, without rowid;

CREATE TABLE season_plans (
  number integer primary key autoincrement,
  made_at text not null,
  as_of text not null check (as_of glob '[12][0-9][0-9][0-9]-[01][0-9]-[0-3][0-9]'),
  first_week text not null check (first_week glob '[12][0-9][0-9][0-9]-[01][0-9]-[0-3][0-9]'),
  weeks integer not null check (weeks between 1 and 52),
  model_version text not null,
  -- 'superseded': it was accepted, and then another one was
  state text not null check (state in ('made', 'accepted', 'superseded')),
  -- its visits by week, how good it is and what it leaves out, as JSON
  content text not null check (json_valid(content)),
  accepted_at text check ((accepted_at is null) = (state = 'made')),
  -- who accepted it and why; empty where nobody said
  by text not null check (length(by) <= 200),
  because text not null check (length(because) <= 2000)
) strict;

CREATE UNIQUE INDEX season_plans_in_force on season_plans (state) where state = 'accepted';

CREATE TRIGGER season_plans_content_kept before update of made_at, as_of, first_week, weeks, model_version, content on season_plans
  begin select raise(abort, 'a season plan is never edited'); end;

CREATE TABLE sessions (
  token_sha256 text primary key not null check (length(token_sha256) = 64),
  account_id integer not null references accounts (id),
  created_at text not null,
  last_seen_at text not null check (last_seen_at >= created_at),
  -- at the latest; a session that is not used ends before
  expires_at text not null check (expires_at > created_at)
) strict, without rowid;

CREATE INDEX sessions_by_account on sessions (account_id);

CREATE TABLE settings (
  key text primary key not null,
  value text not null,
  updated_at text not null
) strict;

CREATE TRIGGER settings_delete_counted after delete on settings begin update register_changes set count = count + 1; end;

CREATE TRIGGER settings_insert_counted after insert on settings begin update register_changes set count = count + 1; end;

CREATE TRIGGER settings_update_counted after update on settings begin update register_changes set count = count + 1; end;

CREATE TABLE sign_in_failures (
  kind text not null check (kind in ('account', 'address')),
  key text not null check (length(key) between 1 and 200),
  count integer not null check (count > 0),
  last_at text not null,
  -- no try is looked at before
  wait_until text not null,
  primary key (kind, key)
) strict, without rowid;

CREATE TABLE site_standings (
  site_ref text not null,
  -- as in fence_lines; 4 until the fence is swept
  standing_rank integer not null check (standing_rank between 0 and 4),
  -- 4 where the ends have no standing of their own
  ends_rank integer not null check (ends_rank between 0 and 4),
  fences integer not null check (fences >= 0),
  primary key (site_ref, standing_rank, ends_rank)
) strict, without rowid;

CREATE TABLE sites (
  ref text primary key not null check (length(ref) between 1 and 40),
  name text not null check (length(name) > 0),
  place text not null check (length(place) > 0),
  region text not null,
  time_zone text not null check (length(time_zone) > 0),
  units text not null check (units in ('us', 'metric')),
  climate_zone_ref text not null references climate_zones (ref),
  exposure text not null check (exposure in ('B', 'C', 'D')),
  elevation_m real not null check (elevation_m between -100 and 5000),
  topographic_factor real not null check (topographic_factor between 1 and 3),
  soil_class text not null
    check (soil_class in ('loose-sand', 'medium-sand', 'dense-sand', 'soft-clay', 'firm-clay', 'stiff-clay')),
  soil_saturated integer not null check (soil_saturated in (0, 1)),
  lateral_bearing_doubled integer not null check (lateral_bearing_doubled in (0, 1)),
  wind_kind text not null check (wind_kind in ('map', 'local-rule')),
  wind_basis text not null check (wind_basis in ('ultimate', 'nominal', 'asd', 'fastest-mile')),
  design_gust_mps real not null check (design_gust_mps between 20 and 120),
  return_period_years real check (return_period_years between 5 and 10000),
  second_gust_mps real check (second_gust_mps between 10 and 120),
  second_return_period_years real check (second_return_period_years between 5 and 10000),
  hurricane integer not null check (hurricane in (0, 1)),
  wind_source text not null check (length(wind_source) > 0),
  season_opens text not null check (season_opens glob '[01][0-9]-[0-3][0-9]'),
  season_closes text not null check (season_closes glob '[01][0-9]-[0-3][0-9]'),
  season_share real not null check (season_share > 0 and season_share <= 1),
  created_at text not null,
  updated_at text not null, storm_season_ref text references storm_seasons (ref), latitude real check (latitude between -90 and 90), longitude real check ((latitude is null) = (longitude is null) and (longitude is null or longitude between -180 and 180)), frozen_from text check (frozen_from glob '[01][0-9]-[0-3][0-9]'), frozen_to text
  check ((frozen_from is null) = (frozen_to is null) and (frozen_to is null or frozen_to glob '[01][0-9]-[0-3][0-9]')),
  check ((wind_kind = 'map') = (return_period_years is not null)),
  check ((second_gust_mps is null) = (second_return_period_years is null))
) strict;

CREATE INDEX sites_by_climate_zone on sites (climate_zone_ref);

CREATE TRIGGER sites_delete_counted after delete on sites begin update register_changes set count = count + 1; end;

CREATE TRIGGER sites_insert_counted after insert on sites begin update register_changes set count = count + 1; end;

CREATE TRIGGER sites_update_counted after update on sites begin update register_changes set count = count + 1; end;

CREATE TRIGGER sites_update_lined after update of name on sites when old.name <> new.name begin
  update fence_lines set site_key = fresh.site_key, folded = fresh.folded
  from (select ref, site_key, folded from fence_lines_now where site_ref = new.ref) as fresh
  where fence_lines.ref = fresh.ref;
end;

CREATE TABLE standing_changes (
  id integer primary key,
  fence_ref text not null references fences (ref) on delete cascade,
  sweep_id integer not null references sweeps (id),
  at text not null,
  standing_before text not null check (standing_before in ('clear', 'closing', 'short', 'short from new')),
  standing_after text not null check (standing_after in ('clear', 'closing', 'short', 'short from new')),
  ends_before text check (ends_before in ('clear', 'closing', 'short', 'short from new')),
  ends_after text check (ends_after in ('clear', 'closing', 'short', 'short from new')),
  -- what it holds by the new forecast, and what it should [m/s]
  snap_mps real not null,
  design_gust_mps real not null,
  -- what changed since the forecast before, as a list of words in JSON
  causes text not null check (json_valid(causes)),
  unique (sweep_id, fence_ref)
) strict;

CREATE INDEX standing_changes_by_fence on standing_changes (fence_ref, id);

CREATE TABLE stopped_addresses (
  id integer primary key,
  address text not null check (address = lower(address)),
  since text not null,
  report_id integer not null references delivery_reports (id),
  resumed_at text
) strict;

CREATE UNIQUE INDEX stopped_addresses_now on stopped_addresses (address) where resumed_at is null;

CREATE TABLE storm_outcomes (
  ref text primary key not null check (length(ref) between 1 and 120),
  -- outcomes of one fence under the same name share the storm's wind
  storm text not null check (length(storm) > 0),
  fence_ref text not null references fences (ref) on delete cascade,
  day text not null check (day glob '[12][0-9][0-9][0-9]-[01][0-9]-[0-3][0-9]'),
  gust_mps real not null check (gust_mps between 5 and 120),
  -- standard deviation of ln gust
  gust_spread real not null check (gust_spread between 0.01 and 0.5),
  -- the word all, or post numbers parted by spaces
  posts text not null check (length(posts) > 0),
  result text not null check (result in ('stood', 'leaned', 'snapped')),
  gust_source text not null,
  reported_by text not null check (length(reported_by) > 0),
  notes text not null,
  created_at text not null,
  updated_at text not null
) strict;

CREATE INDEX storm_outcomes_by_fence on storm_outcomes (fence_ref, day);

CREATE TRIGGER storm_outcomes_delete_counted after delete on storm_outcomes begin update register_changes set count = count + 1; end;

CREATE TRIGGER storm_outcomes_insert_counted after insert on storm_outcomes begin update register_changes set count = count + 1; end;

CREATE TRIGGER storm_outcomes_update_counted after update on storm_outcomes begin update register_changes set count = count + 1; end;

CREATE TABLE storm_seasons (
  ref text primary key not null check (length(ref) between 1 and 40),
  name text not null check (length(name) > 0),
  -- may wrap the year end
  opens text not null check (opens glob '[01][0-9]-[0-3][0-9]'),
  closes text not null check (closes glob '[01][0-9]-[0-3][0-9]' and closes <> opens),
  share real not null check (share > 0 and share <= 1),
  source text not null check (length(source) > 0),
  created_at text not null,
  updated_at text not null
) strict;

CREATE TRIGGER storm_seasons_delete_counted after delete on storm_seasons begin update register_changes set count = count + 1; end;

CREATE TRIGGER storm_seasons_insert_counted after insert on storm_seasons begin update register_changes set count = count + 1; end;

CREATE TRIGGER storm_seasons_update_counted after update on storm_seasons begin update register_changes set count = count + 1; end;

CREATE TABLE sweep_claim (
  id integer primary key check (id = 1),
  token text not null,
  pid integer not null,
  expires_at text not null
, process_start text) strict;

CREATE TABLE sweep_failures (
  sweep_id integer not null references sweeps (id),
  fence_ref text not null,
  message text not null,
  primary key (sweep_id, fence_ref)
) strict, without rowid;

CREATE TABLE sweeps (
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
, change_count integer) strict;

CREATE TABLE visit_changes (
  id integer primary key,
  uid text not null references visits (uid),
  at text not null,
  -- state, days, crew and sequence after the change
  state text not null check (state in ('proposed', 'confirmed', 'done', 'missed', 'cancelled')),
  first_day text not null,
  last_day text not null,
  crew_ref text not null,
  sequence integer not null check (sequence >= 0),
  by text not null check (length(by) <= 200),
  because text not null check (length(because) <= 2000)
) strict;

CREATE INDEX visit_changes_by_visit on visit_changes (uid, id);

CREATE TRIGGER visit_changes_kept before update on visit_changes begin select raise(abort, 'what became of a visit is never edited'); end;

CREATE TRIGGER visit_changes_stay before delete on visit_changes begin select raise(abort, 'what became of a visit is never deleted'); end;

CREATE TABLE visit_entries (
  uid text not null,
  fence_ref text not null,
  kind text not null check (kind in ('works', 'inspection')),
  ref text not null check (length(ref) between 1 and 120),
  primary key (kind, ref),
  foreign key (uid, fence_ref) references visit_items (uid, fence_ref)
) strict;

CREATE INDEX visit_entries_by_visit on visit_entries (uid);

CREATE TABLE visit_hours (
  uid text not null,
  fence_ref text not null,
  person_hours real not null check (person_hours > 0 and person_hours <= 2000),
  primary key (uid, fence_ref),
  foreign key (uid, fence_ref) references visit_items (uid, fence_ref)
) strict;

CREATE TABLE visit_items (
  uid text not null references visits (uid),
  fence_ref text not null references fences (ref),
  option_key text not null check (length(option_key) > 0),
  -- kinds with their posts, as JSON; once done, what was done
  works text not null check (json_valid(works)),
  -- at the fence, without the way
  person_hours real not null check (person_hours >= 0),
  price real not null check (price >= 0),
  must_rank integer not null check (must_rank between 0 and 3),
  -- 'returned': the visit was done without it
  state text not null check (state in ('planned', 'done', 'returned')),
  primary key (uid, fence_ref)
) strict;

CREATE INDEX visit_items_by_fence on visit_items (fence_ref);

CREATE TABLE visit_photos (
  id integer primary key not null,
  uid text not null references visits (uid),
  fence_ref text not null references fences (ref),
  -- null: of the fence as a whole
  post integer check (post between 1 and 2000),
  -- by the phone's clock
  taken_at text not null,
  stored_at text not null,
  -- name of who took it, as it was then
  taken_by text not null check (length(taken_by) between 1 and 200),
  media_type text not null check (media_type in ('image/jpeg', 'image/png', 'image/webp')),
  sha256 text not null check (length(sha256) = 64),
  bytes blob not null check (length(bytes) between 1 and 8388608)
) strict;

CREATE INDEX visit_photos_by_fence on visit_photos (fence_ref, uid, id);

CREATE TRIGGER visit_photos_kept before update on visit_photos
  begin select raise(abort, 'a picture is never edited'); end;

CREATE TABLE visits (
  uid text primary key not null check (length(uid) between 1 and 30),
  site_ref text not null references sites (ref),
  crew_ref text not null references crews (ref),
  first_day text not null check (first_day glob '[12][0-9][0-9][0-9]-[01][0-9]-[0-3][0-9]'),
  last_day text not null check (last_day >= first_day and last_day glob '[12][0-9][0-9][0-9]-[01][0-9]-[0-3][0-9]'),
  -- local time at the site; null: some time that day
  starts_at text check (starts_at glob '[0-2][0-9]:[0-5][0-9]' and starts_at < '24:00'),
  state text not null check (state in ('proposed', 'confirmed', 'done', 'missed', 'cancelled')),
  -- grows with every change that a calendar must see
  sequence integer not null check (sequence >= 0),
  travel_person_hours real not null check (travel_person_hours >= 0),
  plan_number integer references season_plans (number),
  note text not null check (length(note) <= 2000),
  created_at text not null,
  changed_at text not null
) strict;

CREATE INDEX visits_by_day on visits (first_day, crew_ref, uid);

CREATE INDEX visits_by_site on visits (site_ref, first_day);

CREATE INDEX visits_by_state on visits (state, first_day);

CREATE TABLE withdrawals (
  id integer primary key,
  kind text not null check (kind in ('inspection', 'outcome')),
  ref text not null check (length(ref) between 1 and 120),
  fence_ref text not null,
  -- the record as it was, an inspection with its readings, as JSON
  record text not null,
  because text not null check (length(because) between 1 and 2000),
  -- empty where nobody was named
  by text not null check (length(by) <= 200),
  at text not null
) strict;

CREATE INDEX withdrawals_by_fence on withdrawals (fence_ref, id);

CREATE TRIGGER withdrawals_counted after insert on withdrawals begin update register_changes set count = count + 1; end;

CREATE TRIGGER withdrawals_kept before update on withdrawals begin select raise(abort, 'what was withdrawn is never edited'); end;

CREATE TRIGGER withdrawals_stay before delete on withdrawals begin select raise(abort, 'what was withdrawn is never deleted'); end;

CREATE TABLE works (
  ref text primary key not null check (length(ref) between 1 and 40),
  fence_ref text not null references fences (ref) on delete cascade,
  day text not null check (day glob '[12][0-9][0-9][0-9]-[01][0-9]-[0-3][0-9]'),
  kind text not null
    check (kind in ('groundline-treatment', 'liner', 'drainage', 'trimmer-guard', 'footing-reset', 'post-swap',
      'steel-sleeve', 'added-posts', 'rebuild')),
  -- the word all, or post numbers parted by spaces
  posts text not null check (length(posts) > 0),
  -- what this kind of works needs to say, as JSON checked by the program
  details text not null check (json_valid(details)),
  created_at text not null,
  updated_at text not null
) strict;

CREATE INDEX works_by_fence on works (fence_ref, day);

CREATE TRIGGER works_delete_counted after delete on works begin update register_changes set count = count + 1; end;

CREATE TRIGGER works_insert_counted after insert on works begin update register_changes set count = count + 1; end;

CREATE TRIGGER works_update_counted after update on works begin update register_changes set count = count + 1; end;

CREATE VIEW worst_by_fence as
select
  fences.ref as ref,
  case when forecasts.snap_mps < 2.01168 then 0 else floor(100 * forecasts.snap_mps / forecasts.design_gust_mps) end
    + 1
    - case when exists (
        select 1 from office_notices
        where office_notices.fence_ref = fences.ref and settled_at is null and matter = 'dangerous'
      ) then 1e6 else 0 end
    - case fences.consequence
        when 'pool-barrier' then 0.4 when 'other-high' then 0.3 when 'over-footpath' then 0.2 when 'livestock' then 0.1 else 0 end
    - 0.099 * fences.run_length_m / (fences.run_length_m + 100) as worst
from fences left join forecasts on forecasts.fence_ref = fences.ref;
