/** A step of a plan pinned to a time: the plan follows and says what changed; with the pin off again the old times are back. */
import assert from 'node:assert/strict';
import { after, before, test } from 'node:test';
import { none, open, person, planning, visit } from './support/browser.mjs';
import { plan, start } from './support/program.mjs';

let program;
let browser;
let page;
let complaints;
let lesson;
before(async () => {
  program = await start();
  browser = await open();
  ({ page, complaints } = await person(browser, program));
  // Minutes to spare, so that a step can start later.
  const quick = { dishes: ['tomato-bean-soup'], pupils: 12, cookers: 6, in: 'pairs', from: '09:05', to: '10:25' };
  ({ lesson } = await plan(program, { quick, keep: true, date: '2026-12-01', seconds: 2 }));
});
after(async () => {
  await browser?.close();
  await program?.stop();
});

/** What each bar says: "A1: Turn the ring down ..., 09:36 to 09:44, watch". */
const bars = () =>
  page.locator('[role="button"][data-task]').evaluateAll((all) => all.map((one) => one.getAttribute('aria-label')).sort());
const simmering = async () => (await bars()).filter((says) => says.includes('soup bubble gently'));
const begins = (says) => /, (\d\d:\d\d) to /.exec(says)[1];
const choose = () => page.getByRole('button', { name: /soup bubble gently/ }).first().click();

test('a step is pinned for its wave, the plan follows, and the pin comes off again', { timeout: 2 * planning }, async () => {
  await visit(page, `/lesson/${lesson}`);
  await page.getByRole('button', { name: /soup bubble gently/ }).first().waitFor();
  const old = await bars();
  const [first] = await simmering();
  const [hour, minute] = begins(first).split(':').map(Number);
  assert.equal(new Set((await simmering()).map(begins)).size, 1, 'one wave starts it together');
  const later = new Date(Date.UTC(2026, 0, 1, hour, minute + 5)).toISOString().slice(11, 16);

  await choose();
  assert.ok(await page.getByLabel('For all 6 of the wave who do it').isChecked());
  await page.getByLabel('Starts at').fill(later.replace(':', '.'));
  await page.getByRole('button', { name: 'Pin the step' }).click();
  await page.getByText(`Changed: Simmer soup starts at ${later}.`).waitFor({ timeout: planning });
  await page.getByRole('heading', { name: 'What changed' }).waitFor();
  await page.getByRole('listitem').filter({ hasText: `${later} Simmer soup` }).first().waitFor();
  await page.getByRole('heading', { level: 1, name: /^It fits/ }).waitFor();
  const pinned = await simmering();
  assert.equal(pinned.length, 6);
  for (const says of pinned) {
    assert.equal(begins(says), later);
    assert.match(says, /, pinned$/);
  }

  await choose();
  await page.getByText(`Pinned: it starts at ${later}.`).waitFor();
  await page.getByRole('button', { name: 'Take the pin off' }).click();
  await page.getByText('Changed: Simmer soup starts when it can.').waitFor({ timeout: planning });
  await page.getByRole('listitem').filter({ hasText: `${begins(first)} Simmer soup` }).first().waitFor();
  assert.deepEqual(await bars(), old, 'the old times are back');
  await choose();
  await page.getByRole('button', { name: 'Pin the step' }).waitFor();
  assert.equal(await page.getByRole('button', { name: 'Take the pin off' }).count(), 0);
});

test('a pin that leaves no time to wash up is said not to fit, and Undo takes it back', { timeout: 2 * planning }, async () => {
  await visit(page, `/lesson/${lesson}`);
  await page.getByRole('button', { name: /soup bubble gently/ }).first().waitFor();
  const old = await bars();
  await choose();
  await page.getByLabel('Starts at').fill('10:20');
  await page.getByRole('button', { name: 'Pin the step' }).click();
  await page.getByRole('heading', { level: 1, name: /It does not fit|No plan was found/ }).waitFor({ timeout: planning });
  await page.getByRole('button', { name: 'Undo', exact: true }).click();
  await page.getByRole('heading', { level: 1, name: /^It fits/ }).waitFor({ timeout: planning });
  assert.deepEqual((await simmering()).map(begins), old.filter((says) => says.includes('soup bubble gently')).map(begins));
  none(complaints, 'console');
});
