/** A tab stays open while the program is started anew, or while it is replaced by one with other pages: the tab says so,
 *  and what was typed into it is neither lost nor refused. */
import assert from 'node:assert/strict';
import { after, before, test } from 'node:test';
import { none, open, person, visit } from './support/browser.mjs';
import { startWithOneClass } from './support/program.mjs';

let program;
let browser;
before(async () => {
  program = await startWithOneClass();
  browser = await open();
});
after(async () => {
  await browser?.close();
  await program?.stop();
});

const name = (page) => page.getByLabel('Class', { exact: true });
const keep = (page) => page.getByRole('button', { name: 'Keep the changes' });

test('started anew: the tab says when it is away and when it is back, and keeps what was typed before', async () => {
  // While it is away the browser writes down every call that fails; the first one with the old token is refused.
  const allow = [/Failed to load resource/];
  const { context, page, complaints } = await person(browser, program, { allow });
  await visit(page, '/classes/7b');
  await name(page).fill('7B after the restart');
  await program.pause();
  await page.getByText(/^No connection/).waitFor();
  assert.ok(await keep(page).isDisabled());
  await program.resume();
  await page.getByText(/^No connection/).waitFor({ state: 'detached' });
  assert.equal(await name(page).inputValue(), '7B after the restart');
  await keep(page).click();
  await page.getByRole('heading', { level: 1, name: /^7B after the restart/ }).waitFor();
  assert.equal((await program.call('GET', '/api/documents/class/7b')).body.name, '7B after the restart');
  none(complaints, 'console');
  await context.close();
});

test('a token of before the restart is asked for again without a word', async () => {
  const { context, page } = await person(browser, program, { allow: [/status of 403/] });
  await visit(page, '/classes/7b');
  await name(page).fill('7B, token of before');
  // The stream must not tell the tab: a school's filter may swallow it.
  await context.route('**/api/events', (route) => route.abort());
  const answers = [];
  page.on('response', (answer) => answer.request().method() === 'PUT' && answers.push(answer.status()));
  await page.route('**/api/documents/class/7b', (route) => {
    const headers = route.request().headers();
    // As if the program had been started anew since the page asked for its token.
    if (route.request().method() === 'PUT' && answers.length === 0) headers['x-benchbell-token'] = 'of another start';
    return route.continue({ headers });
  });
  const written = page.waitForResponse((answer) => answer.request().method() === 'PUT' && answer.ok());
  await keep(page).click();
  await written;
  assert.equal((await program.call('GET', '/api/documents/class/7b')).body.name, '7B, token of before');
  assert.deepEqual(answers, [403, 200]);
  await context.close();
});

test('renewed: the tab says so, stays as it is when a page cannot be had, and loads the new pages when told', async () => {
  const { context, page } = await person(browser, program, {
    serviceWorkers: 'block',
    allow: [/status of 404/, /Failed to (load|fetch)/],
  });
  await visit(page, '/classes/7b');
  await name(page).fill('typed before');
  // The program has other pages by now; the files of these are gone.
  await context.route('**/shell.json', (route) =>
    route.fulfill({ json: { digest: 'another', files: ['/', '/assets/index-another.js'] } }),
  );
  await context.route('**/assets/HouseRules-*.js', (route) => route.fulfill({ status: 404, body: '' }));
  await page.getByRole('link', { name: 'House rules' }).click();
  await page.getByText(/^Benchbell was renewed while this page was open/).waitFor();
  assert.equal(await name(page).inputValue(), 'typed before');
  assert.equal(new URL(page.url()).pathname, '/classes/7b');
  await keep(page).click();
  await page.getByRole('heading', { level: 1, name: /^typed before/ }).waitFor();
  await context.unroute('**/shell.json');
  await context.unroute('**/assets/HouseRules-*.js');
  await page.getByRole('button', { name: 'load the new pages' }).click();
  await page.getByText(/^Benchbell was renewed/).waitFor({ state: 'detached' });
  await page.getByRole('heading', { level: 1, name: /^typed before/ }).waitFor();
  await context.close();
});
