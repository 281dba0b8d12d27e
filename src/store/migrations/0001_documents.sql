-- Documents of a school: the head of each, every version it ever had, and which uses which.
-- The body stands with its version only, so that lists never touch it.

create table kinds (
  kind text primary key
) strict;

create table documents (
  kind       text    not null references kinds (kind),
  id         text    not null check (length(id) between 1 and 80),
  version    integer not null check (version >= 1),
  title      text    not null check (title <> ''),
  search     text    not null,  -- the title's words, folded, each with a space before it
  day        text    check (day is null or length(day) = 10),
  changed_at text    not null,
  changed_by text    not null,
  deleted    integer not null check (deleted in (0, 1)),
  primary key (kind, id),
  foreign key (kind, id, version) references document_versions (kind, id, version)
    deferrable initially deferred
) strict;

create index documents_by_day on documents (kind, deleted, day);

create table document_versions (
  kind       text    not null,
  id         text    not null,
  version    integer not null check (version >= 1),
  title      text    not null check (title <> ''),
  day        text    check (day is null or length(day) = 10),
  changed_at text    not null,
  changed_by text    not null,
  what       text    not null,
  deleted    integer not null check (deleted in (0, 1)),
  links      text    not null,  -- "dish/fruit-scones room/food-room-1"
  body       text    not null,
  primary key (kind, id, version),
  foreign key (kind, id) references documents (kind, id) on delete cascade
    deferrable initially deferred
) strict;

-- Only of documents that stand, as they stand now.
create table document_links (
  from_kind text not null,
  from_id   text not null,
  to_kind   text not null,
  to_id     text not null,
  primary key (from_kind, from_id, to_kind, to_id),
  foreign key (from_kind, from_id) references documents (kind, id) on delete cascade,
  foreign key (to_kind, to_id) references documents (kind, id)
) strict;

create index document_links_to on document_links (to_kind, to_id);
