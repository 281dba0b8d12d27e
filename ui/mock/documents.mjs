/** Reading and writing documents with versions: the answers of /api/documents. */
import { all, document, etag, kept, make, newest, slug, write } from './kitchen.mjs';

const empty = process.env.EMPTY === '1';
export const problem = (code, message, remedy = '', where = '') => ({ problems: [{ code, message, remedy, where }] });

/** Gives [status, body, headers]; `told` is called with every document that changed. */
export function documents({ method, kind, id, what, body, match, told }) {
  if (!id && method === 'GET') {
    const found = empty
      ? []
      : all(kind).map((one) => ({ ...document(one), body: undefined, day: newest(one).body.date ?? null }));
    return [200, { documents: found.sort((x, y) => ((x.day ?? '') < (y.day ?? '') ? -1 : 1)) }];
  }
  if (!id) {
    const one = make(kind, body.id ?? slug(body.body.name ?? body.body.title), body.body, body.what);
    told(one);
    return [201, document(one), { ETag: etag(one) }];
  }
  const one = kept(kind, id);
  if (!one) return [404, problem('documents.none', `There is no ${kind} '${id}'.`, 'It may have been put away.')];
  if (what === 'history')
    return [
      200,
      {
        history: one.versions
          .map((v, i) => ({ version: i + 1, at: v.at, by: v.by, what: v.what, removed: v.removed }))
          .reverse(),
      },
    ];
  if (method === 'GET') return [200, document(one), { ETag: etag(one) }];
  if (match !== etag(one))
    return [
      412,
      {
        ...problem('documents.changed', 'Somebody else was quicker.'),
        yours: body?.body ?? null,
        theirs: document(one),
      },
    ];
  if (what === 'undo') write(one, one.versions.at(body?.to_version ? body.to_version - 1 : -2).body, 'Undone');
  else if (method === 'PUT') {
    if (!body.body.name && kind === 'dish')
      return [400, problem('dish.name', 'The dish has no name.', 'Give it one.', '/name')];
    write(one, body.body, body.what);
  } else if (method === 'DELETE') {
    write(one, newest(one).body, 'Put away', 'Ms Hart', true);
    told(one);
    return [204];
  }
  told(one);
  return [200, document(one), { ETag: etag(one) }];
}
