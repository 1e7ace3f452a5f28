-- Notices that come from a visit or a season plan and not from a sweep; fences whose first notices wait after a large import; who
-- posted a letter; mails to the office itself.

-- A notice comes from a sweep, or from a visit or a plan (a plan's may name the visit that it tells of).
create table notices_anew (
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
insert into notices_anew (id, fence_ref, owner_ref, matter, occasion, facts, sweep_id, outbox_id, void_reason, created_at, held, released_at, covering)
  select id, fence_ref, owner_ref, matter, occasion, facts, sweep_id, outbox_id, void_reason, created_at, held, released_at, covering from notices;
drop table notices;
alter table notices_anew rename to notices;
create unique index notices_once on notices (fence_ref, owner_ref, matter, occasion) where void_reason is null;
create index notices_without_message on notices (owner_ref) where outbox_id is null and void_reason is null;
create index notices_by_outbox on notices (outbox_id);
create index notices_held on notices (owner_ref) where held is not null and released_at is null;
create index notices_by_visit on notices (visit_uid) where visit_uid is not null;

-- Fences that came with a large import into a register that was swept before, until a sweep has looked at them.
create table large_import_fences (
  fence_ref text primary key not null references fences (ref) on delete cascade,
  imported_at text not null
) strict;

-- Who posted a letter, and on which day; empty and null where nobody said.
alter table outbox add column posted_by text not null default '' check (length(posted_by) <= 200);
alter table outbox add column posted_on text check (posted_on is null or posted_on glob '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]');

-- Null for a mail to the office itself. The column is made anew in place, so that whatever other columns the table has stay.
alter table outbox add column addressee text references owners (ref);
update outbox set addressee = owner_ref;
drop index outbox_by_owner;
alter table outbox drop column owner_ref;
alter table outbox rename column addressee to owner_ref;
create index outbox_by_owner on outbox (owner_ref);

-- What a mail to the office has named, so that it is named once: 'notice 12', 'parked 7', 'fence PR-01 sweep 9'.
create table office_told (
  what text primary key not null check (length(what) between 1 and 200),
  told_at text not null,
  outbox_id integer not null references outbox (id)
) strict;
