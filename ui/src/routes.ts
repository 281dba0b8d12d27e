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
  { pattern: '/classes', nav: 'nav.classes', load: page(() => import('./classes/ClassesPage.svelte')) },
  { pattern: '/room', nav: 'nav.room', load: page(() => import('./room/RoomPage.svelte')) },
  { pattern: '/stores', nav: 'nav.stores', load: page(() => import('./stores/StoresPage.svelte')) },
  { pattern: '/house-rules', nav: 'nav.house_rules', load: page(() => import('./rules/RulesPage.svelte')) },
  { pattern: '/setup', nav: 'nav.setup', load: page(() => import('./setup/SetupPage.svelte')) },
  { pattern: '/sign-in', load: page(() => import('./people/SignIn.svelte')) },
];
