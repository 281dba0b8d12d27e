/** A document being changed on a page: what is kept, what is changed so far, what was wrong. */
import { hear } from './stream';
import { address, get, Refusal, type Problem, type Schemas } from './client';
import { Kept, type Kind } from './documents.svelte';
import { same, type Json } from './merge';

export type Summary = Schemas['Summary'];

export class Editing<Body> {
  readonly kind: Kind;
  kept = $state.raw<Kept<Body> | null>(null);
  /** With the changes made so far; null until it is loaded. */
  draft = $state.raw<Body | null>(null);
  problems = $state.raw<Problem[]>([]);
  busy = $state(false);

  constructor(kind: Kind) {
    this.kind = kind;
  }

  get changed(): boolean {
    return this.kept !== null && !same(this.kept.body as Json, this.draft as Json);
  }

  /** Runs something that may be refused; what was wrong is shown by the page. */
  async attempt(run: () => Promise<void>): Promise<void> {
    this.busy = true;
    this.problems = [];
    try {
      await run();
    } catch (fault) {
      if (!(fault instanceof Refusal)) throw fault;
      this.problems = fault.problems;
    } finally {
      this.busy = false;
    }
  }

  load(id: string): Promise<void> {
    return this.attempt(async () => {
      this.kept = await Kept.read<Body>(this.kind, id);
      this.draft = this.kept.body;
    });
  }

  edit(change: Partial<Body>): void {
    if (this.draft !== null) this.draft = { ...this.draft, ...change };
  }

  drop(): void {
    this.draft = this.kept?.body ?? null;
    this.problems = [];
  }

  save(what: string): Promise<void> {
    return this.attempt(async () => {
      const { kept, draft } = this;
      if (!kept || draft === null) return;
      if (await kept.save(draft, what)) this.draft = kept.body;
    });
  }

  make(body: Body, what: string): Promise<void> {
    return this.attempt(async () => {
      this.kept = await Kept.make<Body>(this.kind, body, what);
      this.draft = this.kept.body;
    });
  }

  /** Shows what somebody else kept, unless there are changes of one's own: saving joins those. Call in an $effect. */
  follow(): () => void {
    return hear('document', ({ kind, id, version }) => {
      const { kept } = this;
      if (kind !== this.kind || !kept || id !== kept.id || version === kept.version) return;
      if (!this.changed && !this.busy) void this.load(id);
    });
  }
}

/** All documents of a kind, by title. @throws Refusal */
export async function summaries(kind: Kind): Promise<Summary[]> {
  const { body } = await get<{ documents: Summary[] }>(address(['documents', kind]));
  return body.documents.sort((a, b) => a.title.localeCompare(b.title, undefined, { numeric: true }));
}
