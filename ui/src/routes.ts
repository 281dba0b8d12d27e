/** All pages. To add one: a component, a row here, and its word in words/en.ts. */
import type { Route } from './shell/router.svelte';

// A page's props are the names in its pattern; the loaders are widened once here instead of in every row.
type Load = Route['load'];
const page = (load: () => Promise<{ default: unknown }>): Load => load as unknown as Load;

export const routes: Route[] = [
  { pattern: '/', nav: 'nav.week', load: page(() => import('./week/Week.svelte')) },
  { pattern: '/lesson/:id', under: '/', load: page(() => import('./lesson/Lesson.svelte')) },
  { pattern: '/dishes', nav: 'nav.dishes', load: page(() => import('./dishes/DishList.svelte')) },
  { pattern: '/dishes/new', under: '/dishes', load: page(() => import('./dishes/NewDish.svelte')) },
  { pattern: '/dishes/:id', under: '/dishes', load: page(() => import('./dishes/Dish.svelte')) },
  { pattern: '/sign-in', load: page(() => import('./people/SignIn.svelte')) },
];
