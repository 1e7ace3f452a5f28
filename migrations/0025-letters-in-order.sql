-- Letters are listed apart from mails, the newest first, however few of them there are.
create index outbox_letters on outbox (id) where channel = 'letter';
