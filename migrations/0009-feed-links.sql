-- Secret links to calendar feeds: one crew's visits, or one site's. The secret itself is shown once and never stored.

create table feed_links (
  id integer primary key not null,
  kind text not null check (kind in ('crew', 'site')),
  ref text not null check (length(ref) between 1 and 40),
  token_sha256 text not null unique check (length(token_sha256) = 64),
  created_at text not null,
  -- null while it answers
  revoked_at text check (revoked_at >= created_at)
) strict;
create index feed_links_by_ref on feed_links (kind, ref);

create trigger feed_links_kept before update of id, kind, ref, token_sha256, created_at on feed_links
  begin select raise(abort, 'a feed link is only ever revoked; make another'); end;
create trigger feed_links_stay before delete on feed_links
  begin select raise(abort, 'a feed link is revoked, never deleted'); end;
create trigger feed_links_stay_revoked before update of revoked_at on feed_links when old.revoked_at is not null
  begin select raise(abort, 'a revoked feed link never answers again'); end;
