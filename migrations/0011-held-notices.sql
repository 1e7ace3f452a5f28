-- Notices that wait for the office, what the office is told itself, and what findings and works a fence's owners know of.

-- What has been told, as JSON: findings as 'broken 4'; refs of works, null where that was not noted yet.
alter table forecasts add column told_findings text not null default '[]' check (json_valid(told_findings));
alter table forecasts add column told_works text check (json_valid(told_works));

-- Why a notice waits for the office: what a register's first sweep found; a matter that the office holds; or other first notices of its
-- owner were released before it.
alter table notices add column held text check (held in ('first sweep', 'matter', 'kept back'));
alter table notices add column released_at text check (released_at is null or held is not null);
-- the office's own sentence after the greeting
alter table notices add column covering text check (length(covering) between 1 and 600);
create index notices_held on notices (owner_ref) where held is not null and released_at is null;

-- Matters that the office wants to release itself.
create table held_matters (
  matter text primary key not null check (length(matter) between 1 and 40),
  since text not null
) strict;

-- What the office is told in its own list.
create table office_notices (
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
create index office_notices_open on office_notices (id) where settled_at is null;
