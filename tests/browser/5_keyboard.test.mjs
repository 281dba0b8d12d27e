/** From the first page to a plan without a mouse (WCAG 2.1.1, 2.4.3, 2.4.7: keyboard, focus order, focus visible). */
import assert from 'node:assert/strict';
import { after, before, test } from 'node:test';
import { none, open, person, planning, visit } from './support/browser.mjs';
import { start } from './support/program.mjs';

let program;
let browser;
let page;
let complaints;
before(async () => {
  program = await start();
  browser = await open();
  ({ page, complaints } = await person(browser, program));
});
after(async () => {
  await browser?.close();
  await program?.stop();
});

/** What has the focus: its words, and whether the eye can tell. */
const focused = () =>
  page.evaluate(() => {
    const here = document.activeElement;
    const style = getComputedStyle(here);
    const outlined = style.outlineStyle !== 'none' && parseFloat(style.outlineWidth) > 0;
    return {
      tag: here.tagName,
      says: here.getAttribute('aria-label') ?? here.labels?.[0]?.textContent.trim() ?? here.textContent.trim(),
      task: here.getAttribute('data-task'),
      seen: outlined || style.boxShadow !== 'none',
    };
  });

/** Presses Tab until something with these words has the focus; every stop on the way must be seen. */
async function tabTo(says, most = 60) {
  for (let presses = 0; presses < most; presses += 1) {
    await page.keyboard.press('Tab');
    const here = await focused();
    if (here.tag === 'BODY') continue; // past the last one; the browser begins again
    assert.ok(here.seen, `the focus cannot be seen on ${here.tag} "${here.says}"`);
    if (says.test(here.says)) return here;
  }
  assert.fail(`Tab never reached ${says}`);
}

test('Tab and Enter go from the first page to a plan', { timeout: 2 * planning }, async () => {
  await visit(page, '/');
  await page.getByRole('option', { name: 'Tomato and bean soup' }).waitFor({ state: 'attached' });
  await page.getByRole('heading', { level: 1, name: 'Plan your own lesson' }).waitFor();
  await tabTo(/^Which dish/);
  await page.keyboard.type('Tomato');
  await tabTo(/^How many pupils/);
  await page.keyboard.press('ArrowUp');
  await page.keyboard.press('ArrowDown');
  await tabTo(/^Plan the lesson/);
  await page.keyboard.press('Enter');
  const verdict = page.getByRole('heading', { level: 1, name: /fit/ });
  await verdict.waitFor({ timeout: planning });
  await page.waitForFunction(() => document.activeElement.tagName === 'H1');
  await tabTo(/^Keep this lesson/);
  await page.keyboard.press('Enter');
  await page.getByRole('link', { name: 'Open the lesson' }).waitFor({ timeout: planning });
  await tabTo(/^Open the lesson/);
  await page.keyboard.press('Enter');
  await page.getByRole('heading', { name: 'Where to stand' }).waitFor();
  assert.match(page.url(), /\/lesson\//);
  await page.waitForFunction(() => document.activeElement.tagName === 'H1');
  assert.equal((await focused()).tag, 'H1', 'the focus goes to the heading of the new page');
});

test('arrows go through the time plan, Escape lets go', async () => {
  await tabTo(/, (hands|watch|leave|grown-up|clean|hands off)/, 80);
  const first = await focused();
  assert.ok(first.task !== null);
  await page.keyboard.press('ArrowRight');
  await page.waitForFunction((task) => document.activeElement.getAttribute('data-task') !== task, first.task);
  const next = await focused();
  assert.ok(next.task !== null, 'the focus is on a step');
  await page.keyboard.press('ArrowDown');
  await page.waitForFunction((task) => document.activeElement.getAttribute('data-task') !== task, next.task);
  await page.getByRole('heading', { name: 'It waits for' }).waitFor();
  await page.keyboard.press('Escape');
  await page.getByText('Choose a step in the picture to see what it waits for.').waitFor();
});

test('the first Tab leads past the line of parts', async () => {
  await visit(page, '/dishes');
  await page.keyboard.press('Tab');
  assert.equal((await focused()).says, 'Go to the page itself');
  await page.keyboard.press('Enter');
  await page.keyboard.press('Tab');
  assert.ok(await page.evaluate(() => document.querySelector('main').contains(document.activeElement)));
});

test('number keys go to a part and the heading has the focus', async () => {
  await page.evaluate(() => document.activeElement.blur());
  await page.keyboard.press('2');
  await page.getByRole('heading', { level: 1, name: /dishes/i }).waitFor();
  await page.waitForFunction(() => document.activeElement.tagName === 'H1');
  await page.keyboard.press('?');
  const keys = page.getByRole('dialog', { name: 'Keys on this page' });
  await keys.waitFor();
  await page.keyboard.press('Escape');
  await keys.waitFor({ state: 'hidden' });
  none(complaints, 'console');
});
