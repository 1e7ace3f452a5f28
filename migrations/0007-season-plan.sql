-- What a season plan needs to know: storm seasons, the works catalogue, crews.

create table storm_seasons (
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

insert into storm_seasons (ref, name, opens, closes, share, source, created_at, updated_at) values
  ('atlantic-hurricane', 'Atlantic hurricane season', '06-01', '11-30', 0.9, 'days: NOAA, official dates of the basin; share: judgement', '2026-11-25T00:00:00.000Z', '2026-11-25T00:00:00.000Z'),
  ('eastern-pacific-hurricane', 'Eastern Pacific hurricane season', '05-15', '11-30', 0.8, 'days: NOAA, official dates of the basin; share: judgement', '2026-11-25T00:00:00.000Z', '2026-11-25T00:00:00.000Z'),
  ('pacific-windstorm', 'Pacific Northwest windstorm season', '10-01', '03-31', 0.9, 'days and share: judgement', '2026-11-25T00:00:00.000Z', '2026-11-25T00:00:00.000Z'),
  ('noreaster', 'Nor''easter season', '10-01', '04-30', 0.75, 'days and share: judgement', '2026-11-25T00:00:00.000Z', '2026-11-25T00:00:00.000Z'),
  ('plains-convective', 'Plains thunderstorm season', '03-15', '09-30', 0.8, 'days and share: judgement', '2026-11-25T00:00:00.000Z', '2026-11-25T00:00:00.000Z'),
  ('year-round', 'No storm season: the whole year', '01-01', '12-31', 1, 'by definition', '2026-11-25T00:00:00.000Z', '2026-11-25T00:00:00.000Z');

-- Where set, the window and share are those of the storm season, and the site's own three columns stand for the whole year.
alter table sites add column storm_season_ref text references storm_seasons (ref);
alter table sites add column latitude real check (latitude between -90 and 90);
alter table sites add column longitude real check ((latitude is null) = (longitude is null) and (longitude is null or longitude between -180 and 180));
-- days of the year between which the ground counts as frozen; may wrap the year end
alter table sites add column frozen_from text check (frozen_from glob '[01][0-9]-[0-3][0-9]');
alter table sites add column frozen_to text
  check ((frozen_from is null) = (frozen_to is null) and (frozen_to is null or frozen_to glob '[01][0-9]-[0-3][0-9]'));

-- Lines that stand in the place of those that come with the program.
create table catalogue_lines (
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

-- Where a kind has any here, they stand in the place of all that come with the program for it.
create table catalogue_materials (
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

create table crews (
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

create table crew_members (
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
create index crew_members_by_crew on crew_members (crew_ref);

create table days_off (
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
create index days_off_by_crew on days_off (crew_ref, first_day);

create trigger storm_seasons_insert_counted after insert on storm_seasons begin update register_changes set count = count + 1; end;
create trigger storm_seasons_update_counted after update on storm_seasons begin update register_changes set count = count + 1; end;
create trigger storm_seasons_delete_counted after delete on storm_seasons begin update register_changes set count = count + 1; end;
