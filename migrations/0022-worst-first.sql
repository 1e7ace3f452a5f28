-- "Worst first" by what is at stake among fences that hold the same share of their gust, and the fences that are short at the
-- line or at the ends, counted and found at once.

create index office_notices_dangerous on office_notices (fence_ref) where settled_at is null and matter = 'dangerous';

-- the place among the worst; no share of a gust any more
alter table fence_lines rename column share to worst;

drop trigger fences_update_lined;
drop trigger forecasts_insert_lined;
drop trigger forecasts_update_lined;
drop trigger forecasts_delete_lined;
drop view fence_lines_now;

-- The lower, the worse; null until the fence is swept. The whole part is the per cent of the design gust that the fence still
-- holds, as lists show it, 0 where the speed rounds to less than 5 mph, where nothing sound is left to tell fences apart by. Fences of the same per cent come
-- by what is at stake, the more the sooner: recorded dangerous and not settled, then what stands beside the fence by the loss
-- stated for it, then the length of the run, by which a rebuild is priced.
create view worst_by_fence as
select
  fences.ref as ref,
  case when forecasts.snap_mps < 2.01168 then 0 else floor(100 * forecasts.snap_mps / forecasts.design_gust_mps) end
    + 1
    - case when exists (
        select 1 from office_notices
        where office_notices.fence_ref = fences.ref and settled_at is null and matter = 'dangerous'
      ) then 0.5 else 0 end
    - case fences.consequence
        when 'pool-barrier' then 0.4 when 'other-high' then 0.3 when 'over-footpath' then 0.2 when 'livestock' then 0.1 else 0 end
    - 0.099 * fences.run_length_m / (fences.run_length_m + 100) as worst
from fences left join forecasts on forecasts.fence_ref = fences.ref;

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
  worst_by_fence.worst as worst,
  coalesce(worst_by_fence.worst, 1e9) as tie
from fences
join sites on sites.ref = fences.site_ref
join owners on owners.ref = fences.owner_ref
left join owners as second on second.ref = fences.second_owner_ref
left join forecasts on forecasts.fence_ref = fences.ref
join worst_by_fence on worst_by_fence.ref = fences.ref;

update fence_lines set worst = worst_by_fence.worst, tie = coalesce(worst_by_fence.worst, 1e9)
from worst_by_fence where worst_by_fence.ref = fence_lines.ref;

-- the worse of the standings at the line and at the ends, by which short fences are counted wherever they are short
alter table fence_lines add column stands_rank integer
  generated always as (min(standing_rank, coalesce(ends_rank, standing_rank))) virtual;
create index fence_lines_by_stands on fence_lines (stands_rank, site_ref, standing_rank);

create trigger fences_update_lined after update on fences begin
  update fence_lines set
    ref_key = fresh.ref_key, site_ref = fresh.site_ref, site_key = fresh.site_key, owner_ref = fresh.owner_ref,
    second_owner_ref = fresh.second_owner_ref, owner_key = fresh.owner_key, folded = fresh.folded,
    treatment_class = fresh.treatment_class, installed_earliest = fresh.installed_earliest,
    built_from = fresh.built_from, built_to = fresh.built_to, worst = fresh.worst, tie = fresh.tie
  from (select * from fence_lines_now where ref = new.ref) as fresh
  where fence_lines.ref = new.ref;
end;
create trigger forecasts_insert_lined after insert on forecasts begin
  update fence_lines set
    standing_rank = fresh.standing_rank, ends_rank = fresh.ends_rank, short_season = fresh.short_season,
    short_year = fresh.short_year, snap_mps = fresh.snap_mps, lean_mps = fresh.lean_mps,
    design_gust_mps = fresh.design_gust_mps, once_in_years = fresh.once_in_years, worst = fresh.worst,
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
    design_gust_mps = fresh.design_gust_mps, once_in_years = fresh.once_in_years, worst = fresh.worst,
    tie = fresh.tie
  from (select * from fence_lines_now where ref = new.fence_ref) as fresh
  where fence_lines.ref = new.fence_ref;
end;
create trigger forecasts_delete_lined after delete on forecasts begin
  update fence_lines set
    standing_rank = null, ends_rank = null, short_season = null, short_year = null, snap_mps = null, lean_mps = null,
    design_gust_mps = null, once_in_years = null, worst = null, tie = 1e9
  where ref = old.fence_ref;
end;

create trigger office_notices_insert_lined after insert on office_notices when new.matter = 'dangerous' begin
  update fence_lines set worst = fresh.worst, tie = coalesce(fresh.worst, 1e9)
  from (select * from worst_by_fence where ref = new.fence_ref) as fresh
  where fence_lines.ref = new.fence_ref;
end;
create trigger office_notices_update_lined after update of settled_at on office_notices when new.matter = 'dangerous' begin
  update fence_lines set worst = fresh.worst, tie = coalesce(fresh.worst, 1e9)
  from (select * from worst_by_fence where ref = new.fence_ref) as fresh
  where fence_lines.ref = new.fence_ref;
end;
