/** Opens one of the school's tables for editing, or says that nothing is kept of it yet. */
import { get, post, Refusal, type Problem, type Schemas } from '../api/client';
import { Kept } from '../api/documents.svelte';
import type { Edited } from '../parts/edited.svelte';
import { t } from '../words/words.svelte';
import { emptyTable, type TableBody, type TableName } from './tables';

/** True when there is such a table. What the program refuses is shown by `edited`. */
export async function openTable(edited: Edited<TableBody>, name: TableName): Promise<boolean> {
  let there = false;
  await edited.attempt(async () => {
    const all = (await get<{ documents: Schemas['Summary'][] }>('/api/documents/table')).body.documents;
    there = all.some((summary) => summary.id === name);
  });
  if (there) await edited.read('table', name);
  else edited.loading = false;
  return there;
}

/** Makes the table, empty, so that rows can be put into it. */
export function beginTable(edited: Edited<TableBody>, name: TableName): Promise<boolean> {
  return edited.attempt(async () => {
    const made = t('keep.made', { what: t(`table.name.${name}`) });
    edited.take(await Kept.make<TableBody>('table', emptyTable(name), made, name));
  });
}

/** What the program says of a table: why it cannot be kept, and its rows that would not be used. */
export async function checkTable(body: TableBody): Promise<Problem[]> {
  try {
    return (await post<Schemas['Problems']>('/api/check/table', { body: { body } })).body.problems;
  } catch (fault) {
    if (!(fault instanceof Refusal)) throw fault;
    return fault.problems;
  }
}
