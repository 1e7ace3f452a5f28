-- Season plans as they were made, the visits that come of them, and what crews did. None of it changes a forecast: only the works
-- and inspections that a visit enters do, and those are counted where they are stored.

create table season_plans (
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
create unique index season_plans_in_force on season_plans (state) where state = 'accepted';
create trigger season_plans_content_kept before update of made_at, as_of, first_week, weeks, model_version, content on season_plans
  begin select raise(abort, 'a season plan is never edited'); end;

create table visits (
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
create index visits_by_day on visits (first_day, crew_ref, uid);
create index visits_by_site on visits (site_ref, first_day);
create index visits_by_state on visits (state, first_day);

create table visit_items (
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
create index visit_items_by_fence on visit_items (fence_ref);

-- Hours of a crew's people that a fence really took, without the way.
create table visit_hours (
  uid text not null,
  fence_ref text not null,
  person_hours real not null check (person_hours > 0 and person_hours <= 2000),
  primary key (uid, fence_ref),
  foreign key (uid, fence_ref) references visit_items (uid, fence_ref)
) strict;

-- Works that a visit entered, and inspections that were made on it.
create table visit_entries (
  uid text not null,
  fence_ref text not null,
  kind text not null check (kind in ('works', 'inspection')),
  ref text not null check (length(ref) between 1 and 120),
  primary key (kind, ref),
  foreign key (uid, fence_ref) references visit_items (uid, fence_ref)
) strict;
create index visit_entries_by_visit on visit_entries (uid);

-- What became of a visit, change by change; rows are written once.
create table visit_changes (
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
create index visit_changes_by_visit on visit_changes (uid, id);
create trigger visit_changes_kept before update on visit_changes begin select raise(abort, 'what became of a visit is never edited'); end;
create trigger visit_changes_stay before delete on visit_changes begin select raise(abort, 'what became of a visit is never deleted'); end;
