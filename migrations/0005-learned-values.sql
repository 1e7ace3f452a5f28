-- What the office has accepted of what its register learned. Rows are written once: an acceptance is taken back by a row of its own.

create table learned_acts (
  number integer primary key not null check (number > 0),
  act text not null check (act in ('accepted', 'reverted')),
  -- the acceptance that was taken back
  reverted integer unique references learned_acts (number),
  at text not null,
  by text not null check (length(by) between 1 and 200),
  note text not null check (length(note) <= 2000),
  check ((act = 'reverted') = (reverted is not null))
) strict;

-- Every value that holds under an acceptance, also those it took over from the one before.
create table learned_values (
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

create trigger learned_acts_kept before update on learned_acts begin select raise(abort, 'what was accepted or taken back is never edited'); end;
create trigger learned_acts_stay before delete on learned_acts begin select raise(abort, 'what was accepted or taken back is never deleted'); end;
create trigger learned_values_kept before update on learned_values begin select raise(abort, 'what was accepted is never edited'); end;
create trigger learned_values_stay before delete on learned_values begin select raise(abort, 'what was accepted is never deleted'); end;
create trigger learned_acts_counted after insert on learned_acts begin update register_changes set count = count + 1; end;
