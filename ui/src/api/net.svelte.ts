/** Whether the program can be reached. While it cannot, pages show what was kept and writing is switched off. */
class Net {
  /** No connection at the last call. */
  offline = $state(false);
  /** When what is on the page was fetched (ISO date-time), while offline; null when nothing was kept. */
  keptAt = $state<string | null>(null);

  lost(keptAt: string | null = null): void {
    this.offline = true;
    // The oldest part of a page is what its reader must know.
    if (keptAt && (this.keptAt === null || keptAt < this.keptAt)) this.keptAt = keptAt;
  }

  found(): void {
    this.offline = false;
    this.keptAt = null;
  }
}

export const net = new Net();
