/** A document while somebody changes it: the page edits a copy, keeps it or drops it. The copy outlives the page, so that
 *  going to another part and coming back loses nothing; closing the tab asks first. */
import { Refusal, type Problem } from '../api/client';
import { Kept, type Kind } from '../api/documents.svelte';
import { merge, same, type Json } from '../api/merge';
import { hear } from '../api/stream';
import { left } from './left';

const copyOf = <Body>(body: Body): Body => JSON.parse(JSON.stringify(body)) as Body;

export class Edited<Body> {
  kept = $state.raw<Kept<Body> | null>(null);
  /** The copy; fields of a page are bound to it. */
  body = $state<Body>() as Body;
  /** What the copy was taken from. */
  #base = $state.raw<Body>() as Body;
  /** Set while the document is not kept yet: where it will be. */
  #fresh = $state.raw<{ kind: Kind; id: string } | null>(null);
  problems = $state.raw<Problem[]>([]);
  loading = $state(true);
  keeping = $state(false);

  /** There is something to edit. */
  get ready(): boolean {
    return this.kept !== null || this.#fresh !== null;
  }

  get changed(): boolean {
    // Through text, so that a field that is not there and one that is undefined are the same.
    return this.ready && !same(copyOf($state.snapshot(this.body) as Json), this.#base as Json);
  }

  /** Runs something that the program may refuse; what it says is then shown. */
  async attempt(run: () => Promise<unknown>): Promise<boolean> {
    this.problems = [];
    try {
      await run();
      return true;
    } catch (fault) {
      if (!(fault instanceof Refusal)) throw fault;
      this.problems = fault.problems;
      return false;
    }
  }

  async read(kind: Kind, id: string): Promise<void> {
    this.loading = true;
    await this.attempt(async () => {
      this.take(await Kept.read<Body>(kind, id));
      const waiting = left.get(`${kind}/${id}`);
      if (!waiting) return;
      left.delete(`${kind}/${id}`);
      this.body = merge(waiting.base as Json, waiting.body as Json, this.#base as Json).body as Body;
    });
    this.loading = false;
  }

  /** Begins with a document just read or made. */
  take(kept: Kept<Body>): void {
    this.kept = kept;
    this.#base = kept.body;
    this.body = copyOf(kept.body);
    this.loading = false;
  }

  /** Begins with something that is kept only once it is changed. */
  begin(kind: Kind, id: string, body: Body): void {
    this.#fresh = { kind, id };
    this.#base = copyOf(body);
    this.body = copyOf(body);
    this.loading = false;
  }

  /** Follows the document after undo, or after a save from somewhere else; what was typed meanwhile is joined to it. */
  #follow(now: Body): void {
    if (same(now as Json, this.#base as Json)) return;
    const yours = $state.snapshot(this.body) as Json;
    this.body = copyOf(merge(this.#base as Json, yours, now as Json).body as Body);
    this.#base = now;
  }

  /** Keeps the copy. False when it was refused, or the person chose to look again first. */
  async keep(what: string): Promise<boolean> {
    if (!this.ready || this.keeping) return false;
    this.keeping = true;
    let done = false;
    await this.attempt(async () => {
      const body = copyOf($state.snapshot(this.body) as Body);
      if (this.kept) {
        done = await this.kept.save(body, what);
        this.#base = this.kept.body;
        this.body = copyOf(this.kept.body);
      } else if (this.#fresh) {
        this.take(await Kept.make<Body>(this.#fresh.kind, body, what, this.#fresh.id));
        this.#fresh = null;
        done = true;
      }
    });
    this.keeping = false;
    return done;
  }

  drop(): void {
    this.problems = [];
    this.body = copyOf(this.#base);
  }

  /** Call once while a component is made: follows the document for as long as the component is there. */
  watch(): void {
    $effect(() => {
      const now = this.kept?.body;
      if (now !== undefined && !this.keeping) this.#follow(now);
    });
    $effect(() =>
      hear('document', ({ kind, id, version }) => {
        const kept = this.kept;
        if (!kept || kind !== kept.kind || id !== kept.id) return;
        // Our own save tells of itself before its answer is here; a moment later the version is known.
        setTimeout(() => {
          if (this.keeping || this.kept !== kept || version <= kept.version || this.changed) return;
          void this.attempt(async () => this.take(await Kept.read<Body>(kept.kind, kept.id)));
        }, 400);
      }),
    );
    $effect(() => {
      const ask = (event: BeforeUnloadEvent): void => {
        if (this.changed) event.preventDefault();
      };
      addEventListener('beforeunload', ask);
      return () => {
        removeEventListener('beforeunload', ask);
        if (!this.kept) return;
        const key = `${this.kept.kind}/${this.kept.id}`;
        if (this.changed) left.set(key, { body: $state.snapshot(this.body), base: this.#base });
        else left.delete(key);
      };
    });
  }
}
