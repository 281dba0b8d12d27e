/** Who is using the pages, and what they may do. */
import { get, post, setToken, whenSignedOut, type Schemas } from '../api/client';
import { startStream } from '../api/stream';
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
