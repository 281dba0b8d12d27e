/** Every page of the demo school: no fault that axe can find (WCAG 2.2 A and AA and its good practice; axe-core by Deque),
 *  nothing wider than the window at four sizes, nothing in the console. The pictures in build/browser/shots are for people to look at. */
import assert from 'node:assert/strict';
import { mkdir } from 'node:fs/promises';
import { join } from 'node:path';
import { after, before, test } from 'node:test';
import { none, open, person, planning, settled, violations, visit } from './support/browser.mjs';
import { places } from './support/places.mjs';
import { planned, read, root, start } from './support/program.mjs';

const shots = join(root, 'build/browser/shots');
// 640x400 is what a page has at 200 % on 1280x800 (WCAG 1.4.4, resize text).
const sizes = [
  { width: 1920, height: 1080 },
  { width: 1024, height: 768 },
  { width: 640, height: 400 },
  { width: 1280, height: 800 },
];

let program;
let browser;
let one;
before(async () => {
  await mkdir(shots, { recursive: true });
  program = await start({ demo: true });
  browser = await open();
  one = await person(browser, program);
});
after(async () => {
  await browser?.close();
  await program?.stop();
});

test('every page that there is, is looked at', async () => {
  const routes = await read('ui/src/routes.ts');
  const patterns = [...routes.matchAll(/pattern: '([^']+)'/g)].map((found) => found[1]);
  assert.ok(patterns.length > 5, 'routes.ts could not be read');
  assert.deepEqual([...new Set(places.map((place) => place.pattern))].sort(), patterns.sort());
});

for (const { path, name, lesson } of places) {
  test(`page: ${name}`, { timeout: 3 * planning }, async () => {
    if (lesson) await planned(program, lesson);
    const { page, complaints } = one;
    complaints.length = 0;
    await visit(page, path);
    none(await violations(page), 'axe');
    for (const size of sizes) {
      await page.setViewportSize(size);
      await settled(page);
      await page.screenshot({ path: join(shots, `${name.replaceAll(' ', '-')}-${size.width}.png`) });
      const { wide, window } = await page.evaluate(() => ({
        wide: document.scrollingElement.scrollWidth,
        window: innerWidth,
      }));
      assert.ok(wide <= window, `${wide} px wide in a window of ${window}`);
    }
    none(complaints, 'console');
  });
}

test('an address that there is no page for says so', async () => {
  const { page } = one;
  await visit(page, '/no-such-page');
  await page.getByRole('heading', { name: 'There is no such page.' }).waitFor();
  none(await violations(page), 'axe');
});
