/** A document of the school as a page holds it: read, written with the version it was read at, taken back. When somebody
 *  else was quicker, both versions are shown and joined; neither is lost. */
import { undo } from '../shell/undo.svelte';
import { t } from '../words/words.svelte';
import { address, get, post, put, Refusal, remove, type Answer, type Schemas } from './client';
import { askAboutClash } from './clash.svelte';
import type { Json } from './merge';

type Document = Schemas['Document'];
export type Kind = 'school' | 'class' | 'room' | 'house_rules' | 'dish' | 'lesson' | 'table' | 'scheme';

export class Kept<Body> {
  readonly kind: Kind;
  readonly id: string;
  title = $state('');
  version = $state(0);
  changedBy = $state('');
  changedAt = $state('');
  /** As the program has it. A page edits a copy and hands it to save(). */
  body = $state.raw<Body>({} as Body);
  etag: string | null = null;

  private constructor(answer: Answer<Document>) {
    this.kind = answer.body.kind as Kind;
    this.id = answer.body.id;
    this.#take(answer);
  }

  #take({ body, etag }: Answer<Document>): void {
    this.title = body.title;
    this.version = body.version;
    this.changedBy = body.changed_by;
    this.changedAt = body.changed_at;
    this.body = body.body as Body;
    this.etag = etag;
  }

  static async read<Body>(kind: Kind, id: string): Promise<Kept<Body>> {
    return new Kept<Body>(await get<Document>(address(['documents', kind, id])));
  }

  /** Makes a new one; the id is made from the title unless given. */
  static async make<Body>(kind: Kind, body: Body, what: string, id?: string): Promise<Kept<Body>> {
    const made = new Kept<Body>(await post<Document>(address(['documents', kind]), { body: { id, body, what } }));
    undo.did(what, () => made.remove(t('undo.undone', { what })));
    return made;
  }

  async #reread(): Promise<void> {
    this.#take(await get<Document>(address(['documents', this.kind, this.id])));
  }

  /** Writes a changed body. False when the person chose to look again before writing.
   *  @throws Refusal when it is refused for another reason than a clash. */
  async save(body: Body, what: string): Promise<boolean> {
    const before = this.body;
    let next = body;
    for (;;) {
      try {
        this.#take(await put<Document>(this.#address(), { body: { body: next, what }, match: this.etag }));
        undo.did(what, () => this.undo(what));
        return true;
      } catch (fault) {
        if (!(fault instanceof Refusal) || !fault.clash) throw fault;
        const settled = await askAboutClash(before as Json, next as Json, fault.clash.theirs);
        await this.#reread();
        if (settled === 'theirs') return true;
        if (settled === 'look again') return false;
        next = settled as Body;
      }
    }
  }

  /** Back to the version before; the program writes a new version, so this can be undone as well. */
  async undo(what: string): Promise<void> {
    this.#take(await post<Document>(`${this.#address()}/undo`, { match: this.etag, body: {} }));
    undo.did(t('undo.undone', { what }), () => this.undo(what));
  }

  async remove(what: string): Promise<void> {
    await remove(this.#address(), { match: this.etag });
    undo.did(what, async () => {
      await this.#reread().catch(() => undefined); // it is put away: only its version is wanted
      this.#take(await post<Document>(`${this.#address()}/undo`, { match: this.etag, body: {} }));
      undo.did(t('undo.undone', { what }));
    });
  }

  #address(): string {
    return address(['documents', this.kind, this.id]);
  }
}
