-- Which of the days offered for a visit to the fences of several owners suit one of them. The newest row of an owner counts, as long as the visit
-- is proposed for that week; none is edited or deleted.
create table day_wishes (
  id integer primary key not null,
  visit_uid text not null check (length(visit_uid) between 1 and 60),
  owner_ref text not null check (length(owner_ref) between 1 and 40),
  link_id integer not null references owner_links (id),
  -- Monday of the week that was offered
  week text not null check (week glob '[12][0-9][0-9][0-9]-[01][0-9]-[0-3][0-9]'),
  -- days, as JSON lists; none that suits: an empty one
  offered text not null check (json_valid(offered)),
  suits text not null check (json_valid(suits)),
  at text not null
) strict;
create index day_wishes_by_visit on day_wishes (visit_uid, id);

create trigger day_wishes_kept before update on day_wishes
  begin select raise(abort, 'what an owner answered stays as it is'); end;
create trigger day_wishes_stay before delete on day_wishes
  begin select raise(abort, 'what an owner answered is never deleted'); end;
