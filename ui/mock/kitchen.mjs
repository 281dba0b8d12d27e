/** The documents of the invented school, read from demo/, with versions and history, as the program keeps them. */
import { readdirSync, readFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { fileURLToPath } from 'node:url';

export const root = fileURLToPath(new URL('../..', import.meta.url));
export const today = '2026-11-17';

/** The demo lessons lie all over the year; here they make one week. */
const days = {
  'a-first-hob': '2026-11-16',
  'c-frying-in-turns': '2026-11-17',
  'e-does-not-fit': '2026-11-18',
  'h-stop-gate-demonstration': '2026-11-19',
  'f-three-dish-practical': '2026-11-20',
};

function read(folder, kind) {
  return readdirSync(join(root, 'demo', folder))
    .filter((name) => name.endsWith('.json'))
    .map((name) => {
      const body = JSON.parse(readFileSync(join(root, 'demo', folder, name), 'utf8'));
      const id = basename(name, '.json');
      if (days[id]) body.date = days[id];
      return { kind, id, title: body.name ?? body.title, body };
    });
}

const stores = new Map();
const one = (file, kind, id) => ({
  kind,
  id,
  body: JSON.parse(readFileSync(join(root, 'demo', file), 'utf8')),
});
const table = (id) => ({
  kind: 'table',
  id,
  body: { kind: 'table', version: 1, name: id, text: readFileSync(join(root, 'demo/stores', `${id}.csv`), 'utf8') },
});
for (const found of [
  ...read('dishes', 'dish'),
  ...read('lessons', 'lesson'),
  ...read('rooms', 'room'),
  ...read('classes', 'class'),
  one('house-rules.json', 'house_rules', 'house-rules'),
  one('school.json', 'school', 'school'),
  table('prices'),
  table('stock'),
]) {
  const versions = [{ body: found.body, at: '2026-11-12T16:20:00', by: 'Ms Hart', what: 'Brought in', removed: false }];
  stores.set(`${found.kind}/${found.id}`, { kind: found.kind, id: found.id, versions });
}

export const etag = (kept) => `"${kept.versions.length}"`;
export const kept = (kind, id) => stores.get(`${kind}/${id}`);
export const newest = (one) => one.versions.at(-1);
export const all = (kind) => [...stores.values()].filter((one) => one.kind === kind && !newest(one).removed);

export function document(one, version = one.versions.length) {
  const found = one.versions[version - 1];
  const title = found.body?.name ?? found.body?.title ?? one.id;
  return {
    kind: one.kind,
    id: one.id,
    title,
    version,
    changed_at: found.at,
    changed_by: found.by,
    body: found.body,
  };
}

export function write(one, body, what, by = 'Ms Hart', removed = false) {
  one.versions.push({ body, at: new Date().toISOString().slice(0, 19), by, what, removed });
}

export function make(kind, id, body, what) {
  const one = { kind, id, versions: [] };
  write(one, body, what);
  stores.set(`${kind}/${id}`, one);
  return one;
}

export const slug = (text) =>
  text
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '');
