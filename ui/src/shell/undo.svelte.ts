/** The last thing done, and how to take it back. One at a time: the history of a document has the rest. */
class Undo {
  says = $state('');
  #run: (() => Promise<void>) | null = $state(null);

  get possible(): boolean {
    return this.#run !== null;
  }

  /** Says what was done; `run` takes it back, and may offer the way forward again by calling this. */
  did(says: string, run: (() => Promise<void>) | null = null): void {
    this.says = says;
    this.#run = run;
  }

  async back(): Promise<void> {
    const run = this.#run;
    this.#run = null;
    if (run) await run();
  }

  clear(): void {
    this.says = '';
    this.#run = null;
  }
}

export const undo = new Undo();
