-- What became of each mail: every try with the server's words, the delivery reports that came back, and addresses that are left alone.

-- Whether it goes out at any hour, ahead of the others; and why a waiting mail is not tried before it is due.
alter table outbox add column urgent integer not null default 0 check (urgent in (0, 1));
alter table outbox add column waits_for text check (waits_for in ('quiet hours', 'sending rate'));
alter table outbox add column domain text generated always as (lower(substr(envelope_to, instr(envelope_to, '@') + 1))) virtual;
create index outbox_waiting on outbox (waits_for, domain) where waits_for is not null;
-- everything that the choice of the next mails asks, in their order: the mails themselves are large and are not read for it
create index outbox_queue on outbox (urgent desc, id, state, due_at, waits_for, lease_until, channel, envelope_to)
  where state in ('queued', 'leased');
create index outbox_by_sender on outbox (envelope_from) where envelope_from is not null;

create table mail_tries (
  id integer primary key,
  outbox_id integer not null references outbox (id),
  at text not null,
  -- 'lost': the service ended while the mail was its turn or under way, and nobody knows what came of that try
  outcome text not null check (outcome in ('sent', 'again', 'parked', 'lost')),
  -- 1 where the server may have taken the mail and its answer never came
  may_have_arrived integer not null check (may_have_arrived in (0, 1)),
  envelope_from text not null,
  envelope_to text not null,
  domain text not null,
  reply text not null
) strict;
create index mail_tries_of_mail on mail_tries (outbox_id);
create index mail_tries_of_domain on mail_tries (domain, at);

create table delivery_reports (
  id integer primary key,
  -- of the report's bytes: the same report is noted once
  sha256 text not null unique,
  raw blob not null,
  outbox_id integer not null references outbox (id),
  received_at text not null,
  found_by text not null check (found_by in ('signed address', 'message id')),
  action text not null check (action in ('failed', 'delayed', 'delivered', 'relayed', 'expanded')),
  status text not null,
  recipient text not null,
  diagnostic text not null
) strict;
create index delivery_reports_of_mail on delivery_reports (outbox_id);

-- Addresses that get no mail until the office says so.
create table stopped_addresses (
  id integer primary key,
  address text not null check (address = lower(address)),
  since text not null,
  report_id integer not null references delivery_reports (id),
  resumed_at text
) strict;
create unique index stopped_addresses_now on stopped_addresses (address) where resumed_at is null;

-- The secret by which return addresses and exported histories are known to be this register's own.
create table mail_secret (
  id integer primary key check (id = 1),
  secret text not null
) strict;
