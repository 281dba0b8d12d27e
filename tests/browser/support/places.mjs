/** Every page of the demo school. A page that is added to ui/src/routes.ts and not named here fails a test. */
export const places = [
  { pattern: '/', path: '/', name: 'this week' },
  { pattern: '/dishes', path: '/dishes', name: 'dishes' },
  { pattern: '/dishes/new', path: '/dishes/new', name: 'new dish' },
  { pattern: '/dishes/:id', path: '/dishes/fruit-scones', name: 'dish' },
  { pattern: '/start', path: '/start', name: 'first lesson' },
  { pattern: '/classes', path: '/classes', name: 'classes' },
  { pattern: '/classes/new', path: '/classes/new', name: 'new class' },
  { pattern: '/classes/:id', path: '/classes/7b', name: 'class' },
  { pattern: '/room', path: '/room', name: 'rooms' },
  { pattern: '/room/:id', path: '/room/food-room-1', name: 'room' },
  { pattern: '/stores', path: '/stores', name: 'stores' },
  { pattern: '/stores/stock', path: '/stores/stock', name: 'stock' },
  { pattern: '/stores/:name', path: '/stores/prices', name: 'prices' },
  { pattern: '/house-rules', path: '/house-rules', name: 'house rules' },
  { pattern: '/setup', path: '/setup', name: 'setup' },
  ...['school', 'bells', 'timetable', 'adults', 'suppliers', 'people', 'copies', 'looks'].map((part) => ({
    pattern: '/setup/:part',
    path: `/setup/${part}`,
    name: `setup ${part}`,
  })),
  { pattern: '/sign-in', path: '/sign-in', name: 'sign in' },
  // Last, as their plans are still being made when the program has just started.
  { pattern: '/lesson/:id', path: '/lesson/a-first-hob', name: 'lesson that fits', lesson: 'a-first-hob' },
  { pattern: '/lesson/:id', path: '/lesson/e-does-not-fit', name: 'lesson that does not fit', lesson: 'e-does-not-fit' },
];
