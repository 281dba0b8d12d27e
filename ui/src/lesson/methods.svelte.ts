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

interface Method {
  name: string;
  steps: Map<string, { short: string | undefined; follows: string[] }>;
}

/** A variant is called "Fruit scones (oat drink and spread)"; its method is its dish's. */
export const baseName = (dish: string): string => dish.replace(/ \([^()]*\)$/, '');

export class Methods {
  #steps = $state.raw(new Map<string, Method['steps']>());

  readonly shortOf: ShortNames = (dish, step) =>
    dish === null || step === null ? undefined : this.#steps.get(baseName(dish))?.get(step)?.short;
  readonly follows: Follows = (dish, step) => this.#steps.get(baseName(dish))?.get(step)?.follows;
  readonly tagOf = (dish: string): string | undefined => dishes.rows.find((row) => row.name === baseName(dish))?.tag;
  readonly idOf = (dish: string): string | undefined => dishes.rows.find((row) => row.name === baseName(dish))?.id;

  /** Fetches the methods of a kept lesson's dishes while its plan is on its way. What cannot be fetched is left to load(). */
  async begin(lesson: string): Promise<void> {
    try {
      const [{ body }] = await Promise.all([
        get<Schemas['Document']>(address(['documents', 'lesson', lesson])),
        dishes.loaded ? undefined : loadDishes(),
      ]);
      const named = Object.values((body.body as { dishes?: Record<string, unknown> }).dishes ?? {});
      // "../dish/fruit-scones.json"; a dish that stands in the lesson itself has no document.
      const ids = named.flatMap((one) => (typeof one === 'string' ? (/([^/]+)\.json$/.exec(one)?.[1] ?? []) : []));
      const kept = [...new Set(ids)].filter((id) => dishes.rows.some((row) => row.id === id));
      this.#add(await Promise.all(kept.map((id) => this.#read(id))));
    } catch (fault) {
      if (!(fault instanceof Refusal)) throw fault;
    }
  }

  /** Fetches the methods of these dishes. One that is not kept here (a lesson from a file) stays without. */
  async load(names: string[]): Promise<void> {
    if (!dishes.loaded) await loadDishes();
    const wanted = [...new Set(names.map(baseName))].filter((name) => !this.#steps.has(name));
    const ids = wanted.flatMap((name) => this.idOf(name) ?? []);
    this.#add(await Promise.all(ids.map((id) => this.#read(id))));
  }

  /** Only what is new: who shows a plan draws it again for every change. */
  #add(read: (Method | null)[]): void {
    const found = read.flatMap((one) => one ?? []).filter(({ name }) => !this.#steps.has(name));
    if (found.length > 0)
      this.#steps = new Map([...this.#steps, ...found.map((one) => [one.name, one.steps] as const)]);
  }

  /** A dish's name and steps; null without one. */
  async #read(id: string): Promise<Method | null> {
    try {
      const { body } = await get<Schemas['Document']>(address(['documents', 'dish', id]));
      const dish = body.body as { name?: string; method?: Step[] };
      const method = dish.method ?? [];
      const steps = method.map((step, i) => {
        const before = step.follows ?? method.slice(i - 1, i).map((one) => one.id);
        const follows = i === 0 && !step.follows ? [] : before.map((one) => (typeof one === 'string' ? one : one.step));
        return [step.id, { short: step.short, follows }] as const;
      });
      return { name: dish.name ?? body.title, steps: new Map(steps) };
    } catch (fault) {
      if (!(fault instanceof Refusal)) throw fault;
      // Without its method a step is named after its id and "waits for" knows only hands and kit: still true.
      return null;
    }
  }
}
