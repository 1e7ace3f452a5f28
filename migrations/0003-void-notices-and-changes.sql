-- A notice that the forecast no longer supports is not told: it stays, with the reason, and makes room for a later one
-- about the same matter. Whether a notice is the owner's first follows from the notices told before it.
create table notices_anew (
  id integer primary key,
  fence_ref text not null references fences (ref),
  owner_ref text not null references owners (ref),
  matter text not null,
  occasion text not null,
  facts text not null,
  sweep_id integer not null references sweeps (id),
  outbox_id integer references outbox (id),
  void_reason text,
  created_at text not null,
  check (outbox_id is null or void_reason is null)
) strict;
insert into notices_anew (id, fence_ref, owner_ref, matter, occasion, facts, sweep_id, outbox_id, created_at)
  select id, fence_ref, owner_ref, matter, occasion, facts, sweep_id, outbox_id, created_at from notices;
drop table notices;
alter table notices_anew rename to notices;
create unique index notices_once on notices (fence_ref, owner_ref, matter, occasion) where void_reason is null;
create index notices_without_message on notices (owner_ref) where outbox_id is null and void_reason is null;
create index notices_by_outbox on notices (outbox_id);

-- When the process that sweeps was started, as the system tells it: process numbers repeat.
alter table sweep_claim add column process_start text;

-- Counts every change of a record or setting, deletions too, whatever the clock says.
create table register_changes (
  id integer primary key check (id = 1),
  count integer not null
) strict;
insert into register_changes values (1, 0);
-- How many changes there were when a sweep began; null for sweeps before this was counted.
alter table sweeps add column change_count integer;
create trigger owners_insert_counted after insert on owners begin update register_changes set count = count + 1; end;
create trigger owners_update_counted after update on owners begin update register_changes set count = count + 1; end;
create trigger owners_delete_counted after delete on owners begin update register_changes set count = count + 1; end;
create trigger climate_zones_insert_counted after insert on climate_zones begin update register_changes set count = count + 1; end;
create trigger climate_zones_update_counted after update on climate_zones begin update register_changes set count = count + 1; end;
create trigger climate_zones_delete_counted after delete on climate_zones begin update register_changes set count = count + 1; end;
create trigger sites_insert_counted after insert on sites begin update register_changes set count = count + 1; end;
create trigger sites_update_counted after update on sites begin update register_changes set count = count + 1; end;
create trigger sites_delete_counted after delete on sites begin update register_changes set count = count + 1; end;
create trigger fences_insert_counted after insert on fences begin update register_changes set count = count + 1; end;
create trigger fences_update_counted after update on fences begin update register_changes set count = count + 1; end;
create trigger fences_delete_counted after delete on fences begin update register_changes set count = count + 1; end;
create trigger posts_insert_counted after insert on posts begin update register_changes set count = count + 1; end;
create trigger posts_update_counted after update on posts begin update register_changes set count = count + 1; end;
create trigger posts_delete_counted after delete on posts begin update register_changes set count = count + 1; end;
create trigger works_insert_counted after insert on works begin update register_changes set count = count + 1; end;
create trigger works_update_counted after update on works begin update register_changes set count = count + 1; end;
create trigger works_delete_counted after delete on works begin update register_changes set count = count + 1; end;
create trigger settings_insert_counted after insert on settings begin update register_changes set count = count + 1; end;
create trigger settings_update_counted after update on settings begin update register_changes set count = count + 1; end;
create trigger settings_delete_counted after delete on settings begin update register_changes set count = count + 1; end;
