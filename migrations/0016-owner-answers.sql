-- What owners answer through their links, without an account: read, days chosen, quotes accepted, calls wanted, and what they want
-- to be written about. No forecast depends on any of it.

-- The links that a message carries: one for its pages, one for its header by which a mail program stops the list.
create table message_links (
  message_id text not null check (length(message_id) between 3 and 200),
  purpose text not null check (purpose in ('pages', 'unsubscribe')),
  link_id integer not null unique references owner_links (id),
  primary key (message_id, purpose)
) strict, without rowid;

-- How often a page was asked for by a link. A mail scanner opens pages too: a visit by GET or HEAD says nothing of a person.
create table link_visits (
  link_id integer not null references owner_links (id),
  page text not null check (length(page) between 1 and 40),
  way text not null check (way in ('head', 'get', 'post')),
  visits integer not null check (visits > 0),
  first_at text not null,
  last_at text not null,
  primary key (link_id, page, way)
) strict, without rowid;

-- Quotes that owners were offered, as they were drawn up.
create table offered_quotes (
  number text primary key not null check (length(number) between 5 and 40),
  fence_ref text not null check (length(fence_ref) between 1 and 40),
  content text not null check (json_valid(content)),
  -- of the content, letter by letter
  sha256 text not null check (length(sha256) = 64),
  valid_until text not null,
  offered_at text not null,
  withdrawn_at text check (withdrawn_at >= offered_at)
) strict;
create index offered_quotes_by_fence on offered_quotes (fence_ref);

create trigger offered_quotes_kept before update of number, fence_ref, content, sha256, valid_until, offered_at on offered_quotes
  begin select raise(abort, 'an offered quote is only ever withdrawn; offer another'); end;
create trigger offered_quotes_stay before delete on offered_quotes
  begin select raise(abort, 'an offered quote is withdrawn, never deleted'); end;

create table owner_answers (
  id integer primary key not null,
  owner_ref text not null check (length(owner_ref) between 1 and 40),
  link_id integer not null references owner_links (id),
  kind text not null check (kind in ('read', 'day chosen', 'quote accepted', 'call wanted', 'preferences', 'unsubscribed')),
  -- ref of the fence, uid of the visit, number of the quote; empty where it is about none
  subject text not null check (length(subject) <= 60),
  detail text not null check (json_valid(detail)),
  -- the same for the same answer given again
  once text not null unique,
  at text not null,
  -- null while the office has something to do about it
  settled_at text,
  -- empty where nobody was named
  settled_by text not null default '' check (length(settled_by) <= 200)
) strict;
create index owner_answers_by_owner on owner_answers (owner_ref, kind);
create index owner_answers_open on owner_answers (id) where settled_at is null;

create trigger owner_answers_kept before update of id, owner_ref, link_id, kind, subject, detail, once, at on owner_answers
  begin select raise(abort, 'what an owner answered stays as it is'); end;
create trigger owner_answers_stay before delete on owner_answers
  begin select raise(abort, 'what an owner answered is never deleted'); end;

-- What an owner does not want to be written about; owners who are not here want all of it.
create table owner_preferences (
  owner_ref text primary key not null references owners (ref) on delete cascade,
  -- names of groups of matters, as a JSON list
  muted text not null check (json_valid(muted)),
  -- last day of a pause, the danger excepted
  paused_until text check (paused_until glob '[12][0-9][0-9][0-9]-[01][0-9]-[0-3][0-9]'),
  changed_at text not null
) strict, without rowid;
