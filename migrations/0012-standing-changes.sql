-- What the office reads in the season brief: which fences changed their standing in which sweep, and out of what.

create table standing_changes (
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
create index standing_changes_by_fence on standing_changes (fence_ref, id);

-- counting fences by site and standing reads these two alone, never the forecasts themselves
create index fences_by_site_and_ref on fences (site_ref, ref);
create index forecasts_standing_of_fence on forecasts (fence_ref, standing, ends_standing);
