/** The school's file cannot be written just now because another program holds it. The page says what is the matter and
 *  what to do, what was typed stays, and once the cause is gone the same button keeps it. */
import assert from 'node:assert/strict';
import { DatabaseSync } from 'node:sqlite';
import { after, before, test } from 'node:test';
import { open, person, visit } from './support/browser.mjs';
import { startWithOneClass } from './support/program.mjs';

let program;
let browser;
let page;
before(async () => {
  program = await startWithOneClass();
  browser = await open();
  ({ page } = await person(browser, program));
});
after(async () => {
  await browser?.close();
  await program?.stop();
});

const name = () => page.getByLabel('Class', { exact: true });
const keep = () => page.getByRole('button', { name: 'Keep the changes' });
const kept = async () => (await program.call('GET', '/api/documents/class/7b')).body.name;

test('another program holds the file', { timeout: 60_000 }, async () => {
  await visit(page, '/classes/7b');
  await name().fill('7B while it was held');
  const other = new DatabaseSync(program.file);
  other.exec('begin immediate');
  await keep().click();
  const fault = page.getByRole('alert').filter({ hasText: 'Another program is writing to' });
  await fault.waitFor();
  await fault.getByText(/Wait a moment and try again/).waitFor();
  assert.equal(await name().inputValue(), '7B while it was held');
  assert.equal(await kept(), '7B', 'reading goes on');
  other.exec('rollback');
  other.close();
  await keep().click();
  await page.getByRole('heading', { level: 1, name: /^7B while it was held/ }).waitFor();
  await fault.waitFor({ state: 'detached' });
  assert.equal(await kept(), '7B while it was held');
});
