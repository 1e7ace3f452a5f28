-- The standing of the ends counts too in what the season brief says of a site: it is kept beside that of the line posts. What
-- the whole register holds is kept as well, so that no list adds up its sites.
drop trigger if exists fence_lines_counted_in;
drop trigger if exists fence_lines_counted_out;
drop trigger if exists fence_lines_counted_anew;
drop table site_standings;

create table site_standings (
  site_ref text not null,
  -- as in fence_lines; 4 until the fence is swept
  standing_rank integer not null check (standing_rank between 0 and 4),
  -- 4 where the ends have no standing of their own
  ends_rank integer not null check (ends_rank between 0 and 4),
  fences integer not null check (fences >= 0),
  primary key (site_ref, standing_rank, ends_rank)
) strict, without rowid;

insert into site_standings (site_ref, standing_rank, ends_rank, fences)
select site_ref, coalesce(standing_rank, 4), coalesce(ends_rank, 4), count(*) from fence_lines group by 1, 2, 3;

create table register_standings (
  standing_rank integer not null check (standing_rank between 0 and 4),
  ends_rank integer not null check (ends_rank between 0 and 4),
  fences integer not null check (fences >= 0),
  primary key (standing_rank, ends_rank)
) strict, without rowid;

insert into register_standings (standing_rank, ends_rank, fences)
select standing_rank, ends_rank, sum(fences) from site_standings group by 1, 2;

create trigger fence_lines_counted_in after insert on fence_lines begin
  insert into register_standings (standing_rank, ends_rank, fences)
    values (coalesce(new.standing_rank, 4), coalesce(new.ends_rank, 4), 1)
    on conflict do update set fences = fences + 1;
  insert into site_standings (site_ref, standing_rank, ends_rank, fences)
    values (new.site_ref, coalesce(new.standing_rank, 4), coalesce(new.ends_rank, 4), 1)
    on conflict do update set fences = fences + 1;
end;
create trigger fence_lines_counted_out after delete on fence_lines begin
  update register_standings set fences = fences - 1
    where standing_rank = coalesce(old.standing_rank, 4) and ends_rank = coalesce(old.ends_rank, 4);
  update site_standings set fences = fences - 1
    where site_ref = old.site_ref and standing_rank = coalesce(old.standing_rank, 4) and ends_rank = coalesce(old.ends_rank, 4);
end;
create trigger fence_lines_counted_anew after update on fence_lines
  when old.site_ref <> new.site_ref or old.standing_rank is not new.standing_rank or old.ends_rank is not new.ends_rank begin
  update register_standings set fences = fences - 1
    where standing_rank = coalesce(old.standing_rank, 4) and ends_rank = coalesce(old.ends_rank, 4);
  insert into register_standings (standing_rank, ends_rank, fences)
    values (coalesce(new.standing_rank, 4), coalesce(new.ends_rank, 4), 1)
    on conflict do update set fences = fences + 1;
  update site_standings set fences = fences - 1
    where site_ref = old.site_ref and standing_rank = coalesce(old.standing_rank, 4) and ends_rank = coalesce(old.ends_rank, 4);
  insert into site_standings (site_ref, standing_rank, ends_rank, fences)
    values (new.site_ref, coalesce(new.standing_rank, 4), coalesce(new.ends_rank, 4), 1)
    on conflict do update set fences = fences + 1;
end;
