/** A browser, and pages that remember what they complained of.
 *
 *  CHROMIUM  the browser; left out, Debian's */
import assert from 'node:assert/strict';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { root } from './program.mjs';

// The packages lie beside the pages, not beside the tests.
const packages = createRequire(join(root, 'ui/package.json'));
const { chromium } = packages('playwright-core');
export const { AxeBuilder } = packages('@axe-core/playwright');

/** Milliseconds to wait for something to be seen; two busy cores are slow. */
export const patience = 20_000;
/** For a plan to be there. */
export const planning = 60_000;

export function open() {
  return chromium.launch({
    executablePath: process.env.CHROMIUM ?? '/usr/bin/chromium',
    args: [
      '--no-sandbox',
      '--disable-gpu',
      '--disable-quic',
      '--no-first-run',
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
      '--disable-dev-shm-usage',
    ],
  });
}

/** A person at a browser of their own: cookies and kept answers are theirs alone. `complaints` collects what the console
 *  called an error and what was thrown; `allow` are patterns of what a test brings about on purpose. */
export async function person(browser, program, { allow = [], ...how } = {}) {
  const context = await browser.newContext({
    baseURL: program.at,
    locale: 'en-GB',
    timezoneId: 'Europe/London',
    viewport: { width: 1280, height: 800 },
    reducedMotion: 'reduce',
    ...how,
  });
  context.setDefaultTimeout(patience);
  const complaints = [];
  const complain = (text) => {
    if (!allow.some((pattern) => pattern.test(text))) complaints.push(text);
  };
  context.on('page', (page) => {
    page.on('console', (message) => {
      if (message.type() === 'error') complain(`${message.text()} (${message.location().url})`);
    });
    page.on('pageerror', (fault) => complain(String(fault)));
  });
  const page = await context.newPage();
  return { context, page, complaints };
}

/** Goes to an address and waits until the page has something to say: its heading, and no waiting shape any more. */
export async function visit(page, path) {
  await page.goto(path);
  await settled(page);
}

export async function settled(page) {
  await page.getByRole('heading', { level: 1 }).waitFor();
  await page.waitForFunction(() => {
    const main = document.querySelector('main');
    return main && !main.querySelector('[role="status"][aria-label]') && !main.querySelector('.working');
  });
}

/** What axe finds, in lines that say where to look. */
export async function violations(page) {
  const found = await new AxeBuilder({ page }).options({ resultTypes: ['violations'] }).analyze();
  return found.violations.flatMap((one) =>
    one.nodes.map((node) => `${one.id}: ${one.help}\n    ${node.html.slice(0, 160)}\n    ${node.any.concat(node.all).map((why) => why.message).join('; ')}`),
  );
}

export function none(list, of) {
  assert.equal(list.length, 0, `${of}:\n  ${list.join('\n  ')}`);
}
