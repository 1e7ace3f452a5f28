-- Who may use the pages: accounts with their roles, sessions, tokens of programs, links of owners. No secret of theirs is
-- stored: passwords as salted scrypt, tokens as digests. The key that signs owner links is the one exception.

create table accounts (
  id integer primary key not null,
  -- folded: small letters
  name text not null unique check (length(name) between 2 and 80),
  display_name text not null check (length(display_name) between 1 and 200),
  role text not null check (role in ('office', 'crew', 'board')),
  crew_ref text references crews (ref),
  language text not null check (language in ('en', 'es')),
  -- scrypt with its parameters and salt; null for an account of the demo, which is entered by one click on this machine only
  password_hash text check (length(password_hash) between 60 and 200),
  demo integer not null check (demo in (0, 1)),
  created_at text not null,
  disabled_at text check (disabled_at >= created_at),
  check ((password_hash is null) = (demo = 1)),
  check (crew_ref is null or role = 'crew')
) strict;

create trigger accounts_kept before update of id, name, role, demo, created_at on accounts
  begin select raise(abort, 'name and role of an account stay; disable it and make another'); end;
create trigger accounts_stay before delete on accounts
  begin select raise(abort, 'an account is disabled, never deleted'); end;

-- The sites whose fences a board sees.
create table account_sites (
  account_id integer not null references accounts (id),
  site_ref text not null references sites (ref) on delete cascade,
  primary key (account_id, site_ref)
) strict, without rowid;

create table sessions (
  token_sha256 text primary key not null check (length(token_sha256) = 64),
  account_id integer not null references accounts (id),
  created_at text not null,
  last_seen_at text not null check (last_seen_at >= created_at),
  -- at the latest; a session that is not used ends before
  expires_at text not null check (expires_at > created_at)
) strict, without rowid;
create index sessions_by_account on sessions (account_id);

create table api_tokens (
  id integer primary key not null,
  name text not null check (length(name) between 1 and 100),
  token_sha256 text not null unique check (length(token_sha256) = 64),
  -- words parted by spaces
  scopes text not null check (length(scopes) > 0),
  created_at text not null,
  expires_at text not null check (expires_at > created_at),
  revoked_at text check (revoked_at >= created_at)
) strict;

create trigger api_tokens_kept before update of id, name, token_sha256, scopes, created_at, expires_at on api_tokens
  begin select raise(abort, 'a token is only ever revoked; make another'); end;
create trigger api_tokens_stay before delete on api_tokens
  begin select raise(abort, 'a token is revoked, never deleted'); end;
create trigger api_tokens_stay_revoked before update of revoked_at on api_tokens when old.revoked_at is not null
  begin select raise(abort, 'a revoked token never answers again'); end;

-- A link names its row and carries a signature over everything in it.
create table owner_links (
  id integer primary key not null,
  owner_ref text not null check (length(owner_ref) between 1 and 40),
  -- words parted by spaces
  scopes text not null check (length(scopes) > 0),
  created_at text not null,
  expires_at text not null check (expires_at > created_at),
  revoked_at text check (revoked_at >= created_at)
) strict;
create index owner_links_by_owner on owner_links (owner_ref);

create trigger owner_links_kept before update of id, owner_ref, scopes, created_at, expires_at on owner_links
  begin select raise(abort, 'an owner link is only ever revoked; make another'); end;
create trigger owner_links_stay before delete on owner_links
  begin select raise(abort, 'an owner link is revoked, never deleted'); end;
create trigger owner_links_stay_revoked before update of revoked_at on owner_links when old.revoked_at is not null
  begin select raise(abort, 'a revoked owner link never answers again'); end;

-- The one key that signs owner links, made when the first is.
create table link_key (
  id integer primary key not null check (id = 1),
  key blob not null check (length(key) = 32),
  created_at text not null
) strict;

-- Tries to sign in that failed: by account and address, and by address alone. A right password clears the first.
create table sign_in_failures (
  kind text not null check (kind in ('account', 'address')),
  key text not null check (length(key) between 1 and 200),
  count integer not null check (count > 0),
  last_at text not null,
  -- no try is looked at before
  wait_until text not null,
  primary key (kind, key)
) strict, without rowid;
