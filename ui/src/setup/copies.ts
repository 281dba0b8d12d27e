/** A zip sent to the program. The client sends JSON; a copy is bytes, so it has a call of its own. */
import { noConnection, Refusal, type Problem, type Schemas } from '../api/client';
import { net } from '../api/net.svelte';
import { who } from '../shell/me.svelte';
import { t } from '../words/words.svelte';

/** Says what bringing the copy in would do, or with `sure` does it. @throws Refusal */
export async function bringIn(zip: Blob, sure: boolean): Promise<Schemas['ImportReport']> {
  let response: Response;
  try {
    response = await fetch(`/api/copy?sure=${sure}`, {
      method: 'POST',
      headers: { 'Content-Type': 'application/zip', 'X-Benchbell-Token': who.me?.token ?? '' },
      body: zip,
      credentials: 'same-origin',
    });
  } catch {
    // fetch() fails for one reason only here: nobody answered
    net.lost();
    throw new Refusal(0, [noConnection()]);
  }
  net.found();
  if (response.ok) return (await response.json()) as Schemas['ImportReport'];
  throw new Refusal(response.status, await problemsOf(response));
}

async function problemsOf(response: Response): Promise<Problem[]> {
  if (response.status === 413) return [{ code: 'page.too_big', message: t('copies.too_big'), remedy: '', where: '' }];
  try {
    const body = (await response.json()) as Partial<Schemas['Problems']>;
    if (Array.isArray(body.problems)) return body.problems;
  } catch {
    // not JSON: said below
  }
  return [{ code: 'page.unreadable', message: '', remedy: '', where: String(response.status) }];
}
