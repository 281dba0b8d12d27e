-- Who may sign in, who is signed in, and the school's small settings.

create table users (
  id            text    primary key,
  name          text    not null check (name <> ''),
  name_key      text    not null unique,  -- folded: "Ms Hart" and "MS  HART" are one
  role          text    not null check (role in ('teacher', 'technician', 'head')),
  password_hash text    not null,
  failed        integer not null default 0 check (failed >= 0),
  failed_at     text    not null default '',
  created_at    text    not null
) strict;

create table sessions (
  token_hash text primary key check (length(token_hash) = 64),
  user_id    text not null references users (id) on delete cascade,
  csrf       text not null,
  created_at text not null,
  seen_at    text not null,
  expires_at text not null
) strict;

create index sessions_of_user on sessions (user_id);

create table settings (
  key   text primary key check (length(key) between 1 and 80),
  value text not null
) strict;
