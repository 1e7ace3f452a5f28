-- What programs were answered to writes that carried a key of their own: a repeat is answered the same and does nothing.

create table api_answers (
  token_id integer not null references api_tokens (id),
  -- made up by the program
  key text not null check (length(key) between 1 and 200),
  -- over method, path and body, in hexadecimal
  request_sha256 text not null check (length(request_sha256) = 64),
  begun_at text not null,
  -- null while it is at work, as all that follow
  status integer check (status between 200 and 499),
  content_type text,
  body text,
  primary key (token_id, key),
  check ((status is null) = (body is null))
) strict, without rowid;
create index api_answers_by_age on api_answers (begun_at);
