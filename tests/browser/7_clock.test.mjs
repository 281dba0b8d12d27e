/** The days on which clocks go forward and back, and a machine whose clock is put right while a page stands open. In the
 *  United Kingdom that is 01:00 UTC on the last Sunday of March and of October (Summer Time Order 2002): 28 March and 31
 *  October 2027. */
import assert from 'node:assert/strict';
import { after, before, test } from 'node:test';
import { none, open, person, planning, settled, visit } from './support/browser.mjs';
import { plan, start } from './support/program.mjs';

let program;
let browser;
before(async () => {
  program = await start({ env: { TZ: 'Europe/London' } });
  browser = await open();
});
after(async () => {
  await browser?.close();
  await program?.stop();
});

const changes = [
  // Half past nine at school, as the world counts: summer time in March, none in October.
  { says: 'forward', date: '2027-03-28', shown: 'Sun 28 Mar', now: '2027-03-28T08:30:00Z', weeks: ['Mon 22 Mar', 'Mon 29 Mar'] },
  { says: 'back', date: '2027-10-31', shown: 'Sun 31 Oct', now: '2027-10-31T09:30:00Z', weeks: ['Mon 25 Oct', 'Mon 1 Nov'] },
];
for (const { says, date, shown, now, weeks } of changes) {
  test(`clocks go ${says}: a lesson is at the school's clock times`, { timeout: 2 * planning }, async () => {
    const quick = { dishes: ['lentil-dhal'], pupils: 12, cookers: 6, in: 'pairs', from: '09:05', to: '10:35' };
    const { lesson } = await plan(program, { quick, keep: true, date, seconds: 2 });
    const { context, page, complaints } = await person(browser, program);
    await page.clock.setFixedTime(new Date(now));
    await visit(page, `/lesson/${lesson}`);
    await page.getByText(`${shown}, 09:05 to the bell at 10:35`).waitFor();
    await page.getByText('65 min to the bell').waitFor();
    await page.getByText('now 09:30').waitFor();

    await visit(page, `/?from=${date}`);
    await page.getByRole('heading', { name: new RegExp(weeks[0]) }).waitFor();
    await page.getByRole('link', { name: /^09:05/ }).waitFor();
    await page.getByRole('button', { name: 'Week after' }).click();
    await page.getByRole('heading', { name: new RegExp(weeks[1]) }).waitFor();
    assert.match(page.url(), /from=2027-(03-29|11-01)/);
    none(complaints, 'console');
    await context.close();
  });
}

test('the day becomes another while the week is open: the new week, and nothing typed is lost', async () => {
  let today = null;
  // The worker would ask behind the test's back.
  const { context, page, complaints } = await person(browser, program, { serviceWorkers: 'block' });
  await page.clock.install({ time: new Date('2027-03-26T14:59:00Z') });
  const answered = async (route, address) => {
    const answer = await route.fetch(address ? { url: address } : {});
    await route.fulfill({ response: answer, json: { ...(await answer.json()), today } });
  };
  await context.route('**/api/me', (route) => answered(route));
  await context.route('**/api/week*', (route) => answered(route, `${program.at}/api/week?from=${today}`));

  today = '2027-03-26';
  await visit(page, '/');
  await page.getByRole('heading', { name: /Mon 22 Mar/ }).waitFor();
  await page.getByLabel('Pupils', { exact: true }).fill('17');

  // Over the weekend on which clocks go forward; the page is looked at again on Monday morning.
  today = '2027-03-29';
  await page.clock.fastForward(65 * 60 * 60 * 1000);
  await page.getByRole('heading', { name: /Mon 29 Mar/ }).waitFor();
  assert.equal(await page.getByLabel('Pupils', { exact: true }).inputValue(), '17');

  // Somebody puts the machine's clock back to the week before.
  today = '2027-03-24';
  await page.clock.setSystemTime(new Date('2027-03-24T10:00:00Z'));
  await page.clock.runFor(30_000);
  await page.getByRole('heading', { name: /Mon 22 Mar/ }).waitFor();
  assert.equal(await page.getByLabel('Pupils', { exact: true }).inputValue(), '17');
  await settled(page);
  none(complaints, 'console');
  await context.close();
});
