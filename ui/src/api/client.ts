/** Talks to the program. Every call either gives an answer or throws a Refusal whose problems can be read aloud:
 *  what is wrong, where, how to mend it. */
import type { components } from './contract';
import { net } from './net.svelte';

export type Schemas = components['schemas'];
export type Problem = Schemas['Problem'];
export type Clash = Schemas['Clash'];

export interface Answer<T> {
  body: T;
  /** The version read, to be sent back when writing. */
  etag: string | null;
}

/** The program said no, or could not be reached (status 0). */
export class Refusal extends Error {
  constructor(
    readonly status: number,
    readonly problems: Problem[],
    /** Both versions, when somebody else was quicker (status 412). */
    readonly clash: Clash | null = null,
  ) {
    super(problems.map((problem) => problem.message).join(' ') || `answer ${status}`);
    this.name = 'Refusal';
  }
}

/** Told by /api/me; sent back with every writing request, so that no other site can write in this one's name. */
let token = '';
export function setToken(given: string): void {
  token = given;
}

let onSignedOut: () => void = () => undefined;
/** Called when the program says that nobody is signed in any more. */
export function whenSignedOut(then: () => void): void {
  onSignedOut = then;
}

let onOldToken: () => Promise<void> = () => Promise.resolve();
/** Called when the program was started anew and knows this page's token no more; what was being written is then sent again. */
export function whenTokenIsOld(then: () => Promise<void>): void {
  onOldToken = then;
}

/** A problem of the connection itself, in the same form as the program's own. The words are looked up when shown. */
export function noConnection(): Problem {
  return { code: 'page.no_connection', message: '', remedy: '', where: '' };
}

async function problemsOf(response: Response): Promise<{ problems: Problem[]; clash: Clash | null }> {
  try {
    const body = (await response.json()) as Partial<Clash>;
    if (Array.isArray(body.problems)) {
      return { problems: body.problems, clash: body.theirs ? (body as Clash) : null };
    }
  } catch {
    // not JSON: a proxy's page, or the connection broke half-way; said below
  }
  return {
    problems: [{ code: 'page.unreadable', message: '', remedy: '', where: String(response.status) }],
    clash: null,
  };
}

export interface Sending {
  body?: unknown;
  /** A file sent as it is, instead of a body. */
  file?: File;
  /** ETag for If-Match. */
  match?: string | null;
  signal?: AbortSignal;
}

async function call<T>(method: string, path: string, sending: Sending = {}, again = false): Promise<Answer<T>> {
  const writing = method !== 'GET';
  const headers: Record<string, string> = { Accept: 'application/json' };
  if (sending.file) headers['Content-Type'] = sending.file.type || 'application/octet-stream';
  else if (sending.body !== undefined) headers['Content-Type'] = 'application/json';
  if (sending.match) headers['If-Match'] = sending.match;
  if (writing) headers['X-Benchbell-Token'] = token;
  let response: Response;
  try {
    response = await fetch(path, {
      method,
      headers,
      body: sending.file ?? (sending.body === undefined ? null : JSON.stringify(sending.body)),
      signal: sending.signal ?? null,
      credentials: 'same-origin',
    });
  } catch (fault) {
    if (fault instanceof DOMException && fault.name === 'AbortError') throw fault;
    net.lost();
    throw new Refusal(0, [noConnection()]);
  }
  const keptAt = response.headers.get('X-Benchbell-Kept');
  if (keptAt) net.lost(keptAt);
  else net.found();
  if (!response.ok) {
    if (response.status === 401 && path !== '/api/sign-in') onSignedOut();
    const { problems, clash } = await problemsOf(response);
    if (!again && problems[0]?.code === 'sign_in.token') {
      await onOldToken();
      return call(method, path, sending, true);
    }
    throw new Refusal(response.status, problems, clash);
  }
  const body = response.status === 204 ? undefined : await response.json();
  return { body: body as T, etag: response.headers.get('ETag') };
}

export function get<T>(path: string, signal?: AbortSignal): Promise<Answer<T>> {
  return call<T>('GET', path, signal ? { signal } : {});
}
export function post<T>(path: string, sending?: Sending): Promise<Answer<T>> {
  return call<T>('POST', path, sending);
}
export function put<T>(path: string, sending?: Sending): Promise<Answer<T>> {
  return call<T>('PUT', path, sending);
}
export function patch<T>(path: string, sending?: Sending): Promise<Answer<T>> {
  return call<T>('PATCH', path, sending);
}
export function remove<T>(path: string, sending?: Sending): Promise<Answer<T>> {
  return call<T>('DELETE', path, sending);
}

/** Sends a file as it is, for instance a zip. */
export function sendFile<T>(path: string, file: File): Promise<Answer<T>> {
  return call<T>('POST', path, { file });
}

/** "/api/documents/dish/fruit-scones?version=3": parts are escaped, empty query values left out. */
export function address(parts: string[], query: Record<string, string | number | null | undefined> = {}): string {
  const path = '/api/' + parts.map(encodeURIComponent).join('/');
  const asked = Object.entries(query).filter(([, value]) => value !== null && value !== undefined && value !== '');
  if (asked.length === 0) return path;
  return path + '?' + new URLSearchParams(asked.map(([key, value]) => [key, String(value)])).toString();
}
