-- What a list shows, filters and orders of each fence, kept beside the records by the database itself, so that a page of a
-- large register costs a step along an index; and how many fences of each site have each standing.

create table fence_lines (
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
  share real,
  tie real not null default 1e9
) strict;

create view fence_lines_now as
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
  forecasts.snap_mps / forecasts.design_gust_mps as share,
  coalesce(forecasts.snap_mps / forecasts.design_gust_mps, 1e9) as tie
from fences
join sites on sites.ref = fences.site_ref
join owners on owners.ref = fences.owner_ref
left join owners as second on second.ref = fences.second_owner_ref
left join forecasts on forecasts.fence_ref = fences.ref;

insert into fence_lines (
  ref, ref_key, site_ref, site_key, owner_ref, second_owner_ref, owner_key, folded, treatment_class, installed_earliest,
  built_from, built_to, standing_rank, ends_rank, short_season, short_year, snap_mps, lean_mps, design_gust_mps,
  once_in_years, share, tie
)
select
  ref, ref_key, site_ref, site_key, owner_ref, second_owner_ref, owner_key, folded, treatment_class, installed_earliest,
  built_from, built_to, standing_rank, ends_rank, short_season, short_year, snap_mps, lean_mps, design_gust_mps,
  once_in_years, share, tie
from fence_lines_now;

-- Finds a text of three letters or more anywhere in a line without reading the others.
create virtual table fence_text using fts5(
  folded, content = 'fence_lines', content_rowid = 'id', tokenize = 'trigram case_sensitive 1'
);
insert into fence_text (rowid, folded) select id, folded from fence_lines;

create trigger fence_lines_text_in after insert on fence_lines begin
  insert into fence_text (rowid, folded) values (new.id, new.folded);
end;
create trigger fence_lines_text_out after delete on fence_lines begin
  insert into fence_text (fence_text, rowid, folded) values ('delete', old.id, old.folded);
end;
create trigger fence_lines_text_anew after update on fence_lines when old.folded <> new.folded begin
  insert into fence_text (fence_text, rowid, folded) values ('delete', old.id, old.folded);
  insert into fence_text (rowid, folded) values (new.id, new.folded);
end;

create table site_standings (
  site_ref text not null,
  -- as in fence_lines; 4 until the fence is swept
  standing_rank integer not null check (standing_rank between 0 and 4),
  fences integer not null check (fences >= 0),
  primary key (site_ref, standing_rank)
) strict, without rowid;

insert into site_standings (site_ref, standing_rank, fences)
select site_ref, coalesce(standing_rank, 4), count(*) from fence_lines group by 1, 2;

-- Each index ends with what lists filter by, so that a filter is judged without reading the line.
create index fence_lines_by_worst on fence_lines
  (share, ref_key, id, standing_rank, ends_rank, built_from, built_to, short_year, treatment_class);
create index fence_lines_by_standing on fence_lines
  (standing_rank, tie, ref_key, id, ends_rank, built_from, built_to, short_year, treatment_class);
create index fence_lines_by_ref on fence_lines
  (ref_key, id, standing_rank, ends_rank, built_from, built_to, short_year, treatment_class);
create index fence_lines_by_site on fence_lines
  (site_key, tie, ref_key, id, standing_rank, ends_rank, built_from, built_to, short_year, treatment_class);
create index fence_lines_by_owner on fence_lines
  (owner_key, tie, ref_key, id, standing_rank, ends_rank, built_from, built_to, short_year, treatment_class);
create index fence_lines_by_ends on fence_lines
  (ends_rank, tie, ref_key, id, standing_rank, built_from, built_to, short_year, treatment_class);
create index fence_lines_by_short on fence_lines
  (short_season, tie, ref_key, id, standing_rank, ends_rank, built_from, built_to, short_year, treatment_class);
create index fence_lines_by_snap on fence_lines
  (snap_mps, tie, ref_key, id, standing_rank, ends_rank, built_from, built_to, short_year, treatment_class);
create index fence_lines_by_lean on fence_lines
  (lean_mps, tie, ref_key, id, standing_rank, ends_rank, built_from, built_to, short_year, treatment_class);
create index fence_lines_by_gust on fence_lines
  (design_gust_mps, tie, ref_key, id, standing_rank, ends_rank, built_from, built_to, short_year, treatment_class);
create index fence_lines_by_once on fence_lines
  (once_in_years, tie, ref_key, id, standing_rank, ends_rank, built_from, built_to, short_year, treatment_class);
create index fence_lines_by_installed on fence_lines
  (installed_earliest, tie, ref_key, id, standing_rank, ends_rank, built_from, built_to, short_year, treatment_class);
create index fence_lines_by_treatment on fence_lines
  (treatment_class, tie, ref_key, id, standing_rank, ends_rank, built_from, built_to, short_year);
create index fence_lines_of_site on fence_lines (site_ref);
create index fence_lines_of_owner on fence_lines (owner_ref);
create index fence_lines_of_second_owner on fence_lines (second_owner_ref) where second_owner_ref is not null;

create trigger fence_lines_counted_in after insert on fence_lines begin
  insert into site_standings (site_ref, standing_rank, fences) values (new.site_ref, coalesce(new.standing_rank, 4), 1)
    on conflict do update set fences = fences + 1;
end;
create trigger fence_lines_counted_out after delete on fence_lines begin
  update site_standings set fences = fences - 1
    where site_ref = old.site_ref and standing_rank = coalesce(old.standing_rank, 4);
end;
create trigger fence_lines_counted_anew after update on fence_lines
  when old.site_ref <> new.site_ref or old.standing_rank is not new.standing_rank begin
  update site_standings set fences = fences - 1
    where site_ref = old.site_ref and standing_rank = coalesce(old.standing_rank, 4);
  insert into site_standings (site_ref, standing_rank, fences) values (new.site_ref, coalesce(new.standing_rank, 4), 1)
    on conflict do update set fences = fences + 1;
end;

create trigger fences_insert_lined after insert on fences begin
  insert into fence_lines (
    ref, ref_key, site_ref, site_key, owner_ref, second_owner_ref, owner_key, folded, treatment_class,
    installed_earliest, built_from, built_to
  )
  select
    ref, ref_key, site_ref, site_key, owner_ref, second_owner_ref, owner_key, folded, treatment_class,
    installed_earliest, built_from, built_to
  from fence_lines_now where ref = new.ref;
end;
create trigger fences_update_lined after update on fences begin
  update fence_lines set
    ref_key = fresh.ref_key, site_ref = fresh.site_ref, site_key = fresh.site_key, owner_ref = fresh.owner_ref,
    second_owner_ref = fresh.second_owner_ref, owner_key = fresh.owner_key, folded = fresh.folded,
    treatment_class = fresh.treatment_class, installed_earliest = fresh.installed_earliest,
    built_from = fresh.built_from, built_to = fresh.built_to
  from (select * from fence_lines_now where ref = new.ref) as fresh
  where fence_lines.ref = new.ref;
end;
create trigger sites_update_lined after update of name on sites when old.name <> new.name begin
  update fence_lines set site_key = fresh.site_key, folded = fresh.folded
  from (select ref, site_key, folded from fence_lines_now where site_ref = new.ref) as fresh
  where fence_lines.ref = fresh.ref;
end;
create trigger owners_update_lined after update of name on owners when old.name <> new.name begin
  update fence_lines set owner_key = fresh.owner_key, folded = fresh.folded
  from (select ref, owner_key, folded from fence_lines_now where owner_ref = new.ref or second_owner_ref = new.ref) as fresh
  where fence_lines.ref = fresh.ref;
end;
create trigger forecasts_insert_lined after insert on forecasts begin
  update fence_lines set
    standing_rank = fresh.standing_rank, ends_rank = fresh.ends_rank, short_season = fresh.short_season,
    short_year = fresh.short_year, snap_mps = fresh.snap_mps, lean_mps = fresh.lean_mps,
    design_gust_mps = fresh.design_gust_mps, once_in_years = fresh.once_in_years, share = fresh.share,
    tie = fresh.tie
  from (select * from fence_lines_now where ref = new.fence_ref) as fresh
  where fence_lines.ref = new.fence_ref;
end;
create trigger forecasts_update_lined after update on forecasts
  when old.standing <> new.standing or old.ends_standing is not new.ends_standing
    or old.short_season is not new.short_season or old.snap_mps <> new.snap_mps or old.lean_mps <> new.lean_mps
    or old.design_gust_mps <> new.design_gust_mps or old.once_in_years is not new.once_in_years begin
  update fence_lines set
    standing_rank = fresh.standing_rank, ends_rank = fresh.ends_rank, short_season = fresh.short_season,
    short_year = fresh.short_year, snap_mps = fresh.snap_mps, lean_mps = fresh.lean_mps,
    design_gust_mps = fresh.design_gust_mps, once_in_years = fresh.once_in_years, share = fresh.share,
    tie = fresh.tie
  from (select * from fence_lines_now where ref = new.fence_ref) as fresh
  where fence_lines.ref = new.fence_ref;
end;
create trigger forecasts_delete_lined after delete on forecasts begin
  update fence_lines set
    standing_rank = null, ends_rank = null, short_season = null, short_year = null, snap_mps = null, lean_mps = null,
    design_gust_mps = null, once_in_years = null, share = null, tie = 1e9
  where ref = old.fence_ref;
end;

-- The notices that wait for the office and the messages of one state, in the order in which the outbox shows them.
create index notices_waiting on notices (owner_ref, fence_ref, id, matter)
  where held is not null and released_at is null and outbox_id is null and void_reason is null;
create index outbox_by_state on outbox (state, id);
