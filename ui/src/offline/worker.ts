/// <reference lib="webworker" />
/** Keeps the pages and the last answers, so that a lesson can be read when the wireless does not reach. Nothing is ever
 *  written from here: a change made without a connection would be a change nobody else can see.
 *  Kept answers carry the time they were fetched; signing out drops them all. */
declare const self: ServiceWorkerGlobalScope;

// The build puts the digest of the files here, so that a new build brings a new worker.
const shellName = 'benchbell-shell-__SHELL__';
const answersName = 'benchbell-answers';
const mostAnswers = 200;

async function keepShell(): Promise<void> {
  const listing = (await (await fetch('/shell.json', { cache: 'no-store' })).json()) as { files: string[] };
  const cache = await caches.open(shellName);
  await cache.addAll(listing.files);
}

async function dropOldShells(): Promise<void> {
  const names = await caches.keys();
  await Promise.all(
    names.filter((n) => n.startsWith('benchbell-shell-') && n !== shellName).map((n) => caches.delete(n)),
  );
  await self.clients.claim();
}

/** A copy of an answer that says when it was fetched. */
async function dated(response: Response): Promise<Response> {
  const headers = new Headers(response.headers);
  headers.set('X-Benchbell-Kept', new Date().toISOString());
  headers.delete('Content-Encoding'); // the body read here is already plain
  headers.delete('Content-Length');
  return new Response(await response.arrayBuffer(), { status: response.status, headers });
}

async function keep(request: Request, fresh: Response): Promise<void> {
  const cache = await caches.open(answersName);
  await cache.put(request.url, await dated(fresh));
  const kept = await cache.keys();
  await Promise.all(kept.slice(0, Math.max(0, kept.length - mostAnswers)).map((old) => cache.delete(old)));
}

async function answer(event: FetchEvent): Promise<Response> {
  try {
    const fresh = await fetch(event.request);
    // The page does not wait until its answer is written down as well.
    if (fresh.ok && fresh.headers.get('Content-Type')?.startsWith('application/json'))
      event.waitUntil(keep(event.request, fresh.clone()));
    return fresh;
  } catch (fault) {
    const kept = await (await caches.open(answersName)).match(event.request.url);
    if (kept) return kept;
    throw fault;
  }
}

/** Pages come from the network when it is there, so that a new build shows at once. */
async function page(request: Request): Promise<Response> {
  try {
    return await fetch(request);
  } catch (fault) {
    const kept = await caches.match('/');
    if (kept) return kept;
    throw fault;
  }
}

async function asset(request: Request): Promise<Response> {
  return (await caches.match(request)) ?? fetch(request);
}

self.addEventListener('install', (event) => {
  event.waitUntil(keepShell().then(() => self.skipWaiting()));
});
self.addEventListener('activate', (event) => event.waitUntil(dropOldShells()));
self.addEventListener('message', (event: ExtendableMessageEvent) => {
  if ((event.data as { forget?: boolean } | null)?.forget) event.waitUntil(caches.delete(answersName));
});
self.addEventListener('fetch', (event) => {
  const { request } = event;
  const url = new URL(request.url);
  if (request.method !== 'GET' || url.origin !== self.location.origin) return;
  if (url.pathname === '/api/events' || url.pathname.startsWith('/api/paper/')) return;
  if (url.pathname.startsWith('/api/')) event.respondWith(answer(event));
  else if (request.mode === 'navigate') event.respondWith(page(request));
  else event.respondWith(asset(request));
});

export {};
