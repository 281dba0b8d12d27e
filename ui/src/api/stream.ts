/** One event stream for the whole browser: the tab that holds the lock listens to the program and tells the others.
 *  When it is closed, the browser hands the lock to another. Where there are no locks (plain HTTP from another machine)
 *  every tab listens for itself. */
import type { Schemas } from './client';

export interface Events {
  document: { kind: string; id: string; version: number; title: string };
  job: Schemas['Job'];
  /** The stream broke, or is there again after it broke: the program may have been started anew. */
  stream: { up: boolean };
}

type Name = keyof Events;
type Heard = { [N in Name]: { name: N; event: Events[N] } }[Name];
const told: Name[] = ['document', 'job'];

const listeners: { [N in Name]: Set<(event: Events[N]) => void> } = {
  document: new Set(),
  job: new Set(),
  stream: new Set(),
};

function tell(heard: Heard): void {
  if (heard.name === 'job') for (const listener of listeners.job) listener(heard.event);
  else if (heard.name === 'stream') for (const listener of listeners.stream) listener(heard.event);
  else for (const listener of listeners.document) listener(heard.event);
}

function listen(pass: (heard: Heard) => void): void {
  const source = new EventSource('/api/events');
  for (const name of told) {
    source.addEventListener(name, (message: MessageEvent<string>) => {
      pass({ name, event: JSON.parse(message.data) } as Heard);
    });
  }
  let broken = false;
  source.onerror = () => {
    broken = true;
    pass({ name: 'stream', event: { up: false } });
  };
  source.onopen = () => {
    if (broken) pass({ name: 'stream', event: { up: true } });
    broken = false;
  };
}

let started = false;

/** Begins to listen; calling it again does nothing. Lost connections are taken up again by the browser itself. */
export function startStream(): void {
  if (started || typeof EventSource === 'undefined') return;
  started = true;
  if (!('locks' in navigator) || typeof BroadcastChannel === 'undefined') {
    listen(tell);
    return;
  }
  const channel = new BroadcastChannel('benchbell.events');
  channel.onmessage = (message: MessageEvent<Heard>) => tell(message.data);
  void navigator.locks.request('benchbell.events', () => {
    listen((heard) => {
      channel.postMessage(heard);
      tell(heard);
    });
    return new Promise(() => undefined); // held until the tab is closed
  });
}

/** Calls back on each event until the function it returns is called. */
export function hear<N extends Name>(name: N, then: (event: Events[N]) => void): () => void {
  listeners[name].add(then);
  return () => listeners[name].delete(then);
}
