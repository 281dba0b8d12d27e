/** Two people at one document: what did not clash is joined, what did is asked, and nothing of either is lost. */
import assert from 'node:assert/strict';
import { after, before, test } from 'node:test';
import { none, open, person, visit } from './support/browser.mjs';
import { start } from './support/program.mjs';

let program;
let browser;
let first;
let second;
before(async () => {
  program = await start({ demo: true });
  browser = await open();
  // The second writer is told 412: that is what this is about.
  const allow = [/status of 412/];
  first = await person(browser, program, { allow });
  second = await person(browser, program, { allow });
});
after(async () => {
  await browser?.close();
  await program?.stop();
});

const name = (page) => page.getByLabel('What it is called');
const keep = (page) => page.getByRole('button', { name: 'Keep the changes' });
const kept = async () => (await program.call('GET', '/api/documents/room/food-room-2')).body;

test('the second writer sees both versions and chooses', async () => {
  await visit(first.page, '/room/food-room-2');
  await visit(second.page, '/room/food-room-2');
  const basins = await second.page.getByLabel('Basins kept for hands').inputValue();
  // Both have begun to type before either keeps it.
  await second.page.getByLabel('Basins kept for hands').fill(String(Number(basins) + 1));
  await name(second.page).fill('The long room');
  await name(first.page).fill('The room with the windows');
  await keep(first.page).click();
  await first.page.getByText(/^Kept: |^The room with the windows/).first().waitFor();
  assert.equal((await kept()).name, 'The room with the windows');

  await keep(second.page).click();
  const both = second.page.getByRole('dialog', { name: /changed the same thing meanwhile/ });
  await both.getByRole('radio', { name: 'The long room' }).waitFor();
  assert.ok(await both.getByRole('radio', { name: 'The room with the windows' }).isVisible());
  await both.getByRole('radio', { name: 'The room with the windows' }).check();
  const written = second.page.waitForResponse((answer) => answer.request().method() === 'PUT' && answer.ok());
  await both.getByRole('button', { name: 'Keep what is chosen' }).click();
  await both.waitFor({ state: 'hidden' });
  await written;

  const now = await kept();
  assert.equal(now.name, 'The room with the windows');
  assert.equal(now.hand_basins, Number(basins) + 1, 'what did not clash is joined');
  const { history } = await program.call('GET', '/api/documents/room/food-room-2/history');
  assert.equal(history.length, 3);
});

test('the first writer sees the outcome without asking', async () => {
  await first.page
    .getByLabel('Basins kept for hands')
    .and(first.page.locator(`:valid`))
    .waitFor();
  const now = await kept();
  await first.page.waitForFunction(
    (wanted) => [...document.querySelectorAll('label')].some((label) => label.textContent.includes('Basins') && label.querySelector('input')?.value === wanted),
    String(now.hand_basins),
  );
});

test('a change is taken back, and the taking back too', async () => {
  const { page } = first;
  await visit(page, '/room/food-room-3');
  const before = await name(page).inputValue();
  await name(page).fill('Another name');
  await keep(page).click();
  await page.getByRole('heading', { level: 1, name: /^Another name/ }).waitFor();
  await page.getByRole('button', { name: 'Undo', exact: true }).click();
  await page.getByText(/^Undone: /).waitFor();
  await page.getByRole('heading', { level: 1, name: new RegExp(`^${before}`) }).waitFor();
  await page.getByRole('button', { name: 'Undo', exact: true }).click();
  await page.getByRole('heading', { level: 1, name: /^Another name/ }).waitFor();
  none(first.complaints.concat(second.complaints), 'console');
});
