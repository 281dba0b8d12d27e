/** Monday morning: the whole week is planned with one click, and can be stopped half way. */
import assert from 'node:assert/strict';
import { after, afterEach, before, beforeEach, test } from 'node:test';
import { none, open, person, planning, visit } from './support/browser.mjs';
import { start } from './support/program.mjs';

let program;
let browser;
before(async () => {
  browser = await open();
});
after(() => browser?.close());
beforeEach(async () => {
  program = await start({ demo: true });
});
afterEach(() => program?.stop());

const planAll = (page) => page.getByRole('button', { name: /^Plan the \d+ lessons? without a plan$/ });

test('one click plans every lesson of the week that has no plan', { timeout: 8 * planning }, async () => {
  const { page, complaints } = await person(browser, program);
  await visit(page, '/');
  await planAll(page).waitFor();
  const unplanned = await page.getByText('Not planned yet', { exact: true }).count();
  assert.ok(unplanned > 1);
  assert.match(await planAll(page).textContent(), new RegExp(`the ${unplanned} lessons`));
  await planAll(page).click();
  await page.getByText(`lesson 1 of ${unplanned}`).waitFor();
  // As each is done the ledger says so, and the button goes with the last.
  await page.getByText(/^Planning .*lesson \d/).waitFor({ state: 'detached', timeout: 7 * planning });
  assert.equal(await page.getByText('Not planned yet', { exact: true }).count(), 0);
  assert.equal(await planAll(page).count(), 0);
  none(complaints);
});

test('whoever stops it keeps what is planned and may go on later', { timeout: 4 * planning }, async () => {
  const { page, complaints } = await person(browser, program);
  await visit(page, '/');
  await planAll(page).click();
  const unplanned = Number(/of (\d+)/.exec(await page.getByText(/lesson 1 of \d+/).textContent())[1]);
  await page.getByText(`lesson 2 of ${unplanned}`).waitFor({ timeout: planning });
  await page.getByRole('button', { name: /^Stop/ }).click();
  await planAll(page).waitFor({ timeout: planning });
  const left = await page.getByText('Not planned yet', { exact: true }).count();
  assert.ok(left > 0 && left < unplanned, `${left} of ${unplanned} are left`);
  const { lessons } = await program.call('GET', '/api/week');
  assert.equal(lessons.filter((lesson) => lesson.verdict === 'not planned').length, left);
  none(complaints);
});
