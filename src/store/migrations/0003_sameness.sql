-- To see that a dish is here already under another name: a fingerprint of what each document says,
-- whatever its layout. content_mark() is the program's own function, see migrate.cpp.

alter table documents add column mark text not null default '';

update documents set mark = content_mark(
  (select body from document_versions v
   where v.kind = documents.kind and v.id = documents.id and v.version = documents.version));

create index documents_by_mark on documents (kind, mark);
