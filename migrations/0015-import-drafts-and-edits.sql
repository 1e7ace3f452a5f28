-- Files that wait between their preview and their import, and what was edited on the pages by whom.

create table import_drafts (
  -- drawn at random
  id text primary key not null check (length(id) between 20 and 64),
  made_at text not null,
  -- name of the account that brought the files
  made_by text not null check (length(made_by) between 1 and 200),
  expires_at text not null check (expires_at > made_at),
  -- names and texts as JSON; gone once they are imported, put away or too old
  files text check (json_valid(files)),
  imported_at text,
  imported_by text check ((imported_by is null) = (imported_at is null)),
  -- what the import did: files and counts by kind, as JSON
  done text check (json_valid(done) and (done is null) = (imported_at is null)),
  check (files is null or imported_at is null)
) strict;
create index import_drafts_by_age on import_drafts (made_at);

create table record_edits (
  id integer primary key,
  at text not null,
  -- name of the account
  by text not null check (length(by) between 1 and 200),
  kind text not null check (length(kind) between 1 and 40),
  -- the record's name within its kind
  ref text not null check (length(ref) between 1 and 240),
  -- the record before (null: it was made) and after, as JSON
  before text check (json_valid(before)),
  after text not null check (json_valid(after))
) strict;
create index record_edits_by_record on record_edits (kind, ref, id);
create trigger record_edits_kept before update on record_edits begin select raise(abort, 'what was edited is never edited again'); end;
create trigger record_edits_stay before delete on record_edits begin select raise(abort, 'what was edited is never deleted'); end;

-- lists of messages by state, newest first, and by what they are about
create index notices_by_matter on notices (matter, outbox_id);
