/** What is written into the timetable under Setup stands in the four answers of the first page: the class, how many pupils it
 *  has, and the bells of the lesson that is on or next. */
import assert from 'node:assert/strict';
import { after, before, test } from 'node:test';
import { none, open, person, planning, visit } from './support/browser.mjs';
import { startWithOneClass } from './support/program.mjs';

// A Tuesday, before school begins.
const today = '2027-02-02';
let program;
let browser;
let page;
let complaints;
before(async () => {
  program = await startWithOneClass();
  // A file with a room in it is not at its first run: it opens with the week.
  const bay = { name: 'A', sinks: 1, cookers: [{ name: 'A1' }], places: [{ name: 'A1', cookers: ['A1'] }] };
  await program.call('POST', '/api/documents/room', {
    what: 'made for a test',
    body: { kind: 'room', version: 1, name: 'Room by the Yard', bays: [bay] },
  });
  browser = await open();
  // The worker would ask behind the test's back.
  ({ page, complaints } = await person(browser, program, { serviceWorkers: 'block' }));
  await page.clock.setFixedTime(new Date(`${today}T08:00:00Z`));
  await page.context().route('**/api/me', async (route) => {
    const answer = await route.fetch();
    await route.fulfill({ response: answer, json: { ...(await answer.json()), today } });
  });
});
after(async () => {
  await browser?.close();
  await program?.stop();
});

const heading = (name) => page.getByRole('heading', { level: 1, name });
const form = () => page.getByRole('form', { name: 'A plan from four answers' });
const field = (name) => form().getByLabel(name, { exact: true });
/** Waits until these answers stand there: how many pupils is read off the class list after the bells. */
async function stand(answers) {
  for (const [name, value] of Object.entries(answers)) {
    const input = await field(name).elementHandle();
    await page.waitForFunction(([here, wanted]) => here.value === wanted, [input, value]);
  }
}
/** Keeps what was changed on a page of Setup and waits until there is nothing left to keep. */
async function keep() {
  const written = page.waitForResponse((answer) => /^(POST|PUT)$/.test(answer.request().method()) && answer.ok());
  await page.getByRole('button', { name: 'Keep the changes' }).click();
  await written;
  await page.getByText('Changed, not kept yet.').waitFor({ state: 'detached' });
}

test('a school has a name first', async () => {
  await visit(page, '/setup/school');
  await page.getByLabel('Name of the school').fill('Quillbridge School');
  await keep();
  await heading('Quillbridge School').waitFor();
});

test('without bells the timetable asks for them first', async () => {
  await visit(page, '/setup/timetable');
  await heading('Which class cooks when?').waitFor();
  await page.getByText('Write down the bells first').waitFor();
});

test('bells are written down', async () => {
  await visit(page, '/setup/bells');
  await page.getByRole('button', { name: 'Add a set of bells' }).click();
  await page.getByLabel('Bell, Lesson 1').fill('10.10');
  await page.getByRole('button', { name: 'Add a lesson' }).click();
  await page.getByLabel('Begins, Lesson 2').fill('11:05');
  await page.getByLabel('Bell, Lesson 2').fill('12:35');
  await page.getByLabel('Bell, Lesson 2').blur();
  await keep();
});

test('a timetable of two weeks is written on them, and which week this one is', async () => {
  await visit(page, '/setup/timetable');
  await page.getByLabel('two weeks').check();
  await page.getByLabel('This week is').selectOption('Week 2');
  await page.getByLabel('Tue, lesson 2, week 2: class').fill('7B');
  await page.getByLabel('Wed, lesson 1, week 2: class').fill('8C');
  // The week after: not the next lesson, though its day comes first in the week.
  await page.getByLabel('Mon, lesson 1, week 1: class').fill('9K');
  await page.getByLabel('Mon, lesson 1, week 1: class').blur();
  await heading('3 cooking lessons in the timetable.').waitFor();
  await keep();
  await visit(page, '/setup/timetable');
  assert.equal(await page.getByLabel('This week is').inputValue(), '2');
  assert.equal(await page.getByLabel('Tue, lesson 2, week 2: class').inputValue(), '7B');
});

test('the four answers begin with the next lesson of the timetable', async () => {
  await visit(page, '/');
  await page.getByRole('option', { name: '7B, Tue 2 Feb, 11:05' }).waitFor({ state: 'attached' });
  const which = form().getByRole('combobox', { name: 'For', exact: true });
  assert.deepEqual(await which.getByRole('option').allTextContents(), [
    '7B, Tue 2 Feb, 11:05',
    '8C, Wed 3 Feb, 09:00',
    '9K, Mon 8 Feb, 09:00',
    'no class of the timetable',
  ]);
  await stand({ Pupils: '2', From: '11:05', 'To the bell': '12:35' });
  await which.selectOption('8C, Wed 3 Feb, 09:00');
  await stand({ From: '09:00', 'To the bell': '10:10' });
});

test('a lesson that has ended is not the next one any more', async () => {
  await page.clock.setFixedTime(new Date(`${today}T12:34:00Z`));
  await visit(page, '/');
  await page.getByRole('option', { name: '7B, Tue 2 Feb, 11:05' }).waitFor({ state: 'attached' });
  await page.clock.setFixedTime(new Date(`${today}T12:36:00Z`));
  await visit(page, '/');
  await page.getByRole('option', { name: '8C, Wed 3 Feb, 09:00' }).waitFor({ state: 'attached' });
  assert.equal(await page.getByRole('option', { name: /^7B/ }).count(), 0);
});

test('planned, it is a lesson of that class, on that day, at those bells', { timeout: 2 * planning }, async () => {
  await page.clock.setFixedTime(new Date(`${today}T08:00:00Z`));
  await visit(page, '/');
  await page.getByRole('option', { name: '7B, Tue 2 Feb, 11:05' }).waitFor({ state: 'attached' });
  await stand({ Pupils: '2', From: '11:05', 'To the bell': '12:35' });
  await form().getByRole('combobox', { name: 'Dish', exact: true }).selectOption('Tomato and bean soup');
  await page.getByRole('button', { name: 'Plan the lesson' }).click();
  await heading(/^It fits/).waitFor({ timeout: planning });
  await page.getByText('Tue 2 Feb, 11:05 to the bell at 12:35').waitFor();
  const lesson = decodeURIComponent(new URL(page.url()).pathname.split('/').pop());
  const { body } = await program.call('GET', `/api/documents/lesson/${lesson}`);
  assert.equal(body.about.class, '7b');
  assert.deepEqual([body.date, body.from, body.to], [today, '11:05', '12:35']);
  none(complaints, 'console');
});
