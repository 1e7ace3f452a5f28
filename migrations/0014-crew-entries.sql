-- What phones and programs sent, once and only once, and pictures from the field.

-- The answer of each entry, stored with what it changed: an entry that comes again is answered from here and changes nothing.
create table entry_receipts (
  -- who sent it: `account:4`, `token:2`; ids of one sender mean nothing to another
  holder text not null check (length(holder) between 3 and 60),
  -- made by whoever sent it
  id text not null check (length(id) between 8 and 100),
  -- what kind of entry, and a digest of what it says: the same id with something else in it is refused
  kind text not null check (length(kind) between 1 and 60),
  content_sha256 text not null check (length(content_sha256) = 64),
  answer text not null check (json_valid(answer)),
  stored_at text not null,
  primary key (holder, id)
) strict, without rowid;
create trigger entry_receipts_kept before update on entry_receipts
  begin select raise(abort, 'a receipt is never edited'); end;

-- Pictures that a crew took on a visit.
create table visit_photos (
  id integer primary key not null,
  uid text not null references visits (uid),
  fence_ref text not null references fences (ref),
  -- null: of the fence as a whole
  post integer check (post between 1 and 2000),
  -- by the phone's clock
  taken_at text not null,
  stored_at text not null,
  -- name of who took it, as it was then
  taken_by text not null check (length(taken_by) between 1 and 200),
  media_type text not null check (media_type in ('image/jpeg', 'image/png', 'image/webp')),
  sha256 text not null check (length(sha256) = 64),
  bytes blob not null check (length(bytes) between 1 and 8388608)
) strict;
create index visit_photos_by_fence on visit_photos (fence_ref, uid, id);
create trigger visit_photos_kept before update on visit_photos
  begin select raise(abort, 'a picture is never edited'); end;
