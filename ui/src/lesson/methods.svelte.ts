/** What the dishes of a lesson add to its plan: the short name of a step, its tag, and what the method puts before it. */
import { address, get, Refusal, type Schemas } from '../api/client';
import { dishes, loadDishes } from '../dishes/known.svelte';
import type { ShortNames } from './answer';
import type { Follows } from './picture/links';

interface Step {
  id: string;
  short?: string;
  follows?: (string | { step: string })[];
}

/** A variant is called "Fruit scones (oat drink and spread)"; its method is its dish's. */
export const baseName = (dish: string): string => dish.replace(/ \([^()]*\)$/, '');

export class Methods {
  #steps = $state.raw(new Map<string, Map<string, { short: string | undefined; follows: string[] }>>());

  readonly shortOf: ShortNames = (dish, step) =>
    dish === null || step === null ? undefined : this.#steps.get(baseName(dish))?.get(step)?.short;
  readonly follows: Follows = (dish, step) => this.#steps.get(baseName(dish))?.get(step)?.follows;
  readonly tagOf = (dish: string): string | undefined => dishes.rows.find((row) => row.name === baseName(dish))?.tag;
  readonly idOf = (dish: string): string | undefined => dishes.rows.find((row) => row.name === baseName(dish))?.id;

  /** Fetches the methods of these dishes. One that is not kept here (a lesson from a file) stays without. */
  async load(names: string[]): Promise<void> {
    if (!dishes.loaded) await loadDishes();
    const found = new Map(this.#steps);
    await Promise.all(
      [...new Set(names.map(baseName))].map(async (name) => {
        const id = this.idOf(name);
        if (!id || found.has(name)) return;
        try {
          const { body } = await get<Schemas['Document']>(address(['documents', 'dish', id]));
          const method = (body.body as { method?: Step[] }).method ?? [];
          const steps = method.map((step, i): [string, { short: string | undefined; follows: string[] }] => {
            const before = step.follows ?? method.slice(i - 1, i).map((one) => one.id);
            return [
              step.id,
              {
                short: step.short,
                follows:
                  i === 0 && !step.follows ? [] : before.map((one) => (typeof one === 'string' ? one : one.step)),
              },
            ];
          });
          found.set(name, new Map(steps));
        } catch (fault) {
          if (!(fault instanceof Refusal)) throw fault;
          // Without its method a step is named after its id and "waits for" knows only hands and kit: still true.
        }
      }),
    );
    this.#steps = found;
  }
}
