/** All dishes in short, fetched once and again when somebody changes one. */
import { get, type Schemas } from '../api/client';
import { hear } from '../api/stream';

export type DishRow = Schemas['DishRow'];

export const dishes = $state<{ rows: DishRow[]; loaded: boolean }>({ rows: [], loaded: false });
let listening = false;

export async function loadDishes(): Promise<void> {
  dishes.rows = (await get<{ dishes: DishRow[] }>('/api/dishes')).body.dishes;
  dishes.loaded = true;
  if (listening) return;
  listening = true;
  // A list that cannot be fetched just now stays as it is; the page that needs it next asks again and says so.
  hear('document', ({ kind }) => kind === 'dish' && void loadDishes().catch(() => undefined));
}
