-- What was seen at the posts of a fence, and what storms did to them.

create table inspections (
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

create index inspections_by_fence on inspections (fence_ref, day);

create table readings (
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
  updated_at text not null,
  primary key (inspection_ref, post),
  check ((groundline_mm is null) = (groundline_kind is null or groundline_kind = 'broken'))
) strict;

create table storm_outcomes (
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

create index storm_outcomes_by_fence on storm_outcomes (fence_ref, day);

create trigger inspections_insert_counted after insert on inspections begin update register_changes set count = count + 1; end;
create trigger inspections_update_counted after update on inspections begin update register_changes set count = count + 1; end;
create trigger inspections_delete_counted after delete on inspections begin update register_changes set count = count + 1; end;
create trigger readings_insert_counted after insert on readings begin update register_changes set count = count + 1; end;
create trigger readings_update_counted after update on readings begin update register_changes set count = count + 1; end;
create trigger readings_delete_counted after delete on readings begin update register_changes set count = count + 1; end;
create trigger storm_outcomes_insert_counted after insert on storm_outcomes begin update register_changes set count = count + 1; end;
create trigger storm_outcomes_update_counted after update on storm_outcomes begin update register_changes set count = count + 1; end;
create trigger storm_outcomes_delete_counted after delete on storm_outcomes begin update register_changes set count = count + 1; end;
