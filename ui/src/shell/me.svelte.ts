/** Who is using the pages, and what they may do. */
import { get, post, Refusal, setToken, whenSignedOut, whenTokenIsOld, type Schemas } from '../api/client';
import { lookForNewPages } from '../api/renewed.svelte';
import { hear, startStream } from '../api/stream';
import { router } from './router.svelte';

type Me = Schemas['Me'];

class Who {
  me = $state<Me | null>(null);

  /** May write at all: somebody signed in, or a machine that nobody has to sign in on. */
  get mayUse(): boolean {
    return this.me !== null && (this.me.signed_in || this.me.open);
  }
  get isHead(): boolean {
    return this.me?.person?.role === 'head' || this.me?.open === true;
  }

  async ask(): Promise<void> {
    this.take((await get<Me>('/api/me')).body);
  }

  take(me: Me): void {
    this.me = me;
    setToken(me.token);
    if (me.signed_in || me.open) startStream();
  }

  /** Signs out and makes the browser forget what it kept for times without a connection. */
  async signOut(): Promise<void> {
    await post('/api/sign-out');
    forget();
    await this.ask();
    router.go('/sign-in');
  }
}

export const who = new Who();

/** Drops every kept answer; they may name pupils. */
export function forget(): void {
  navigator.serviceWorker?.controller?.postMessage({ forget: true });
}

whenSignedOut(() => {
  forget();
  if (who.me) who.me = { ...who.me, signed_in: false };
  if (router.path !== '/sign-in') router.go(`/sign-in?then=${encodeURIComponent(router.path + router.search)}`);
});

/** Asks again, for instance because the day may be another. Without a connection the line of parts says so by itself. */
async function askAgain(): Promise<void> {
  try {
    await who.ask();
  } catch (fault) {
    if (!(fault instanceof Refusal)) throw fault;
  }
}

whenTokenIsOld(async () => {
  await who.ask();
  void lookForNewPages();
});
hear('stream', ({ up }) => {
  void askAgain();
  if (up) void lookForNewPages();
});

const lookEvery = 20_000; // ms

/** A page left open overnight, or on a machine whose clock is put right, must not go on with yesterday: when the hour is
 *  another than at the last look, the program is asked which day it is. Gives an end to it. */
export function watchClock(): () => void {
  const hour = (): string => new Date().toString().slice(0, 18); // "Sun Mar 28 2027 09"
  let last = hour();
  const look = (): void => {
    const now = hour();
    if (now === last) return;
    last = now;
    void askAgain();
  };
  const ticking = setInterval(look, lookEvery);
  document.addEventListener('visibilitychange', look);
  return () => {
    clearInterval(ticking);
    document.removeEventListener('visibilitychange', look);
  };
}
