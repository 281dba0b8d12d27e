/** The largest lesson: thirty cooks, three dishes each. How long is it from the data being there to bars that answer?
 *  The house asks for 100 ms on a machine with nothing else to do (docs/ui.md); here only 1000 ms is asserted. */
import assert from 'node:assert/strict';
import { after, before, test } from 'node:test';
import { none, open, person, planning, visit } from './support/browser.mjs';
import { plan, start } from './support/program.mjs';

let program;
let browser;
before(async () => {
  program = await start();
  browser = await open();
});
after(async () => {
  await browser?.close();
  await program?.stop();
});

test('thirty cooks with three dishes each are drawn and answer', { timeout: 3 * planning }, async (t) => {
  const done = await plan(program, {
    quick: {
      dishes: ['fruit-scones', 'lentil-dhal', 'tomato-bean-soup'],
      pupils: 30,
      cookers: 20,
      sinks: 20,
      in: 'singles',
      from: '09:00',
      to: '12:50',
    },
    keep: true,
    date: '2026-12-04',
    seconds: 5,
  });
  const { page, complaints } = await person(browser, program);
  await page.addInitScript(() => {
    // From the plan's answer read to the first bars in the page, and to the frame after.
    const told = Response.prototype.json;
    Response.prototype.json = async function json() {
      const body = await told.call(this);
      if (/\/api\/lessons\/[^/]+\/plan$/.test(this.url)) performance.mark('data');
      return body;
    };
    new MutationObserver((changes, watching) => {
      if (!document.querySelector('[role="button"][data-task]')) return;
      watching.disconnect();
      performance.measure('drawn', 'data');
      requestAnimationFrame(() => setTimeout(() => performance.measure('seen', 'data')));
    }).observe(document, { childList: true, subtree: true });
  });
  await visit(page, `/lesson/${done.lesson}`);
  await page.getByRole('heading', { level: 1, name: /fit/ }).waitFor();
  const step = page.locator('[role="button"][data-task]');
  await step.first().waitFor();
  await page.waitForFunction(() => performance.getEntriesByName('seen').length > 0);
  const { drawn, seen } = await page.evaluate(() => ({
    drawn: performance.getEntriesByName('drawn')[0].duration,
    seen: performance.getEntriesByName('seen')[0].duration,
  }));
  const choosing = await page.evaluate(async () => {
    const bars = document.querySelectorAll('[role="button"][data-task]');
    const bar = bars[Math.floor(bars.length / 2)];
    const from = performance.now();
    bar.dispatchEvent(new MouseEvent('click', { bubbles: true }));
    await new Promise((frame) => requestAnimationFrame(() => setTimeout(frame)));
    return performance.now() - from;
  });
  await page.getByRole('heading', { name: 'It waits for' }).waitFor();
  t.diagnostic(`${await step.count()} steps: drawn after ${drawn.toFixed(0)} ms, on the screen after ${seen.toFixed(0)} ms`);
  t.diagnostic(`a step answers after ${choosing.toFixed(0)} ms`);
  assert.ok(drawn < 1000, `drawn after ${drawn} ms`);
  assert.ok(choosing < 1000, `a step answers after ${choosing} ms`);
  none(complaints, 'console');
});
