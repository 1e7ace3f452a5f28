-- Where somebody has confirmed a reading that leaves almost nothing of a post.
alter table readings add column sure integer not null default 0 check (sure in (0, 1));

-- Inspections and storm outcomes that were taken back: what they said, who took them back, when and why. Rows are written once;
-- they outlive the fence.
create table withdrawals (
  id integer primary key,
  kind text not null check (kind in ('inspection', 'outcome')),
  ref text not null check (length(ref) between 1 and 120),
  fence_ref text not null,
  -- the record as it was, an inspection with its readings, as JSON
  record text not null,
  because text not null check (length(because) between 1 and 2000),
  -- empty where nobody was named
  by text not null check (length(by) <= 200),
  at text not null
) strict;

create index withdrawals_by_fence on withdrawals (fence_ref, id);

create trigger withdrawals_kept before update on withdrawals begin select raise(abort, 'what was withdrawn is never edited'); end;
create trigger withdrawals_stay before delete on withdrawals begin select raise(abort, 'what was withdrawn is never deleted'); end;
create trigger withdrawals_counted after insert on withdrawals begin update register_changes set count = count + 1; end;
