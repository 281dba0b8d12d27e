/** Which page is shown, after the address bar. Links are plain <a href>: one listener turns clicks into moves, so that
 *  opening in a new tab, copying an address and going back all work as everywhere. */
import type { Component } from 'svelte';
import type { Key } from '../words/words.svelte';

export interface Route {
  /** "/lesson/:id"; a part with a colon is handed to the page as a prop. */
  pattern: string;
  /** Its word in the line of parts; pages below a part name the part in `under`. */
  nav?: Key;
  under?: string;
  // Pages take different props; what a pattern names is what its page asks for.
  load: () => Promise<{ default: Component<Record<string, string>> }>;
}

export interface Found {
  route: Route;
  values: Record<string, string>;
}

/** The first route that fits a path. */
export function find(routes: Route[], path: string): Found | null {
  const parts = path.split('/').filter(Boolean);
  for (const route of routes) {
    const wanted = route.pattern.split('/').filter(Boolean);
    if (wanted.length !== parts.length) continue;
    const values: Record<string, string> = {};
    const fits = wanted.every((part, i) => {
      const given = parts[i] ?? '';
      if (!part.startsWith(':')) return part === given;
      try {
        values[part.slice(1)] = decodeURIComponent(given);
        return true;
      } catch {
        return false; // a broken escape in a typed address
      }
    });
    if (fits) return { route, values };
  }
  return null;
}

class Router {
  path = $state(location.pathname);
  search = $state(location.search);
  /** Counts moves, so that going to the page one is on still loads it again. */
  moves = $state(0);

  go(href: string, how: { replace?: boolean } = {}): void {
    if (how.replace) history.replaceState(null, '', href);
    else history.pushState(null, '', href);
    this.#read();
    this.moves += 1;
    scrollTo(0, 0);
  }

  /** Puts an address back whose page is still shown: the one gone to could not be loaded. */
  stay(href: string): void {
    history.replaceState(null, '', href);
    this.#read();
  }

  /** A value after the question mark. */
  query(name: string): string | null {
    return new URLSearchParams(this.search).get(name);
  }

  /** Sets or drops values after the question mark without a move in the history: filters, the week shown. */
  setQuery(values: Record<string, string | null>): void {
    const query = new URLSearchParams(this.search);
    for (const [name, value] of Object.entries(values)) {
      if (value) query.set(name, value);
      else query.delete(name);
    }
    const text = query.toString();
    history.replaceState(null, '', this.path + (text ? `?${text}` : ''));
    this.#read();
  }

  #read(): void {
    this.path = location.pathname;
    this.search = location.search;
  }

  listen(): () => void {
    const back = () => {
      this.#read();
      this.moves += 1;
    };
    const click = (event: MouseEvent) => {
      if (event.defaultPrevented || event.button !== 0) return;
      if (event.metaKey || event.ctrlKey || event.shiftKey || event.altKey) return;
      const link = event.target instanceof Element ? event.target.closest('a') : null;
      if (!link || link.target || link.hasAttribute('download') || link.origin !== location.origin) return;
      if (link.pathname.startsWith('/api/') || link.getAttribute('href')?.startsWith('#')) return;
      event.preventDefault();
      this.go(link.pathname + link.search);
    };
    addEventListener('popstate', back);
    document.addEventListener('click', click);
    return () => {
      removeEventListener('popstate', back);
      document.removeEventListener('click', click);
    };
  }
}

export const router = new Router();
