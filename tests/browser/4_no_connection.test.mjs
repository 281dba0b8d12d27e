/** The wireless drops: pages seen before open as they were and say since when, writing is off; then it comes back. */
import assert from 'node:assert/strict';
import { after, before, test } from 'node:test';
import { open, person, settled, visit } from './support/browser.mjs';
import { start } from './support/program.mjs';

let program;
let browser;
let context;
let page;
before(async () => {
  program = await start({ demo: true });
  browser = await open();
  ({ context, page } = await person(browser, program));
});
after(async () => {
  await browser?.close();
  await program?.stop();
});
const said = /^No connection: what you see is from \d/;

test('pages seen before open from what was kept', async () => {
  await visit(page, '/classes/7b');
  await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
  await page.waitForFunction(() => navigator.serviceWorker.controller !== null);
  // What was asked for before the worker stood ready is asked for again.
  await page.reload();
  await settled(page);
  await visit(page, '/house-rules');

  await context.setOffline(true);
  await page.goto('/classes/7b');
  await settled(page);
  await page.getByRole('heading', { level: 1, name: /^7B: \d+ pupils/ }).waitFor();
  await page.getByText(said).waitFor();
});

test('writing is off, and nothing typed is lost', async () => {
  await page.getByLabel('Class', { exact: true }).fill('7B after lunch');
  const keep = page.getByRole('button', { name: 'Keep the changes' });
  await keep.waitFor();
  assert.ok(await keep.isDisabled());
});

test('a page never seen says what is the matter', async () => {
  const other = await context.newPage();
  await other.goto('/lesson/b-two-dishes');
  await other.getByText('Benchbell cannot be reached from here.').first().waitFor();
  await other.close();
});

test('it comes back by itself at the next look', async () => {
  await context.setOffline(false);
  page.once('dialog', (dialog) => void dialog.accept()); // "changed, not kept yet"
  await page.getByRole('link', { name: 'House rules' }).click();
  await page.getByRole('heading', { level: 1, name: /rying/ }).waitFor();
  await page.getByText(said).waitFor({ state: 'detached' });
  await page.getByRole('link', { name: 'Classes' }).click();
  await page.getByRole('link', { name: '7B', exact: true }).click();
  const keep = page.getByRole('button', { name: 'Keep the changes' });
  await keep.waitFor();
  await page.getByLabel('Class', { exact: true }).fill('7B in the end');
  assert.ok(await keep.isEnabled());
  await keep.click();
  await page.getByRole('heading', { level: 1, name: /^7B in the end/ }).waitFor();
  assert.equal((await program.call('GET', '/api/documents/class/7b')).body.name, '7B in the end');
});
