/** A teacher's first day with an empty file, from four answers to signing in. One browser, one step after the other: when a
 *  step fails, those after it fail as well, and the first is the one to look at. */
import assert from 'node:assert/strict';
import { after, before, test } from 'node:test';
import { none, open, person, planning, settled, visit } from './support/browser.mjs';
import { plan, start } from './support/program.mjs';

let program;
let browser;
let page;
let complaints;
before(async () => {
  program = await start();
  browser = await open();
  // That nobody is signed in and that a lesson has no plan yet are answers the pages ask for, but the browser writes them down.
  ({ page, complaints } = await person(browser, program, { allow: [/status of 401/, /status of 404 .*\/plan\)/] }));
});
after(async () => {
  await browser?.close();
  await program?.stop();
});
const heading = (name) => page.getByRole('heading', { level: 1, name });
let lesson = '';

test('four answers show a plan within a minute', { timeout: planning }, async () => {
  await visit(page, '/start');
  await page.getByLabel('Which dish?').selectOption({ label: 'Lentil dhal with flatbread' });
  await page.getByLabel('How many pupils?').fill('24');
  await page.getByLabel('How many cookers work?').fill('6');
  await page.getByLabel('How many minutes to the bell?').fill('70');
  await page.getByRole('button', { name: 'Plan the lesson' }).click();
  await heading(/fits|does not fit/).waitFor({ timeout: planning });
  await page.getByRole('heading', { name: 'What next? Each of these can wait.' }).waitFor();
});

test('the plan is kept for a day and opened', { timeout: 2 * planning }, async () => {
  await page.getByLabel('Day').fill('2026-12-01');
  await page.getByLabel('Begins at').fill('9.05');
  await page.getByRole('button', { name: 'Keep this lesson' }).click();
  await page.getByText('Kept for Tue 1 Dec at').waitFor({ timeout: planning });
  await page.getByRole('link', { name: 'Open the lesson' }).click();
  await heading(/fit/).waitFor();
  lesson = decodeURIComponent(new URL(page.url()).pathname.split('/').pop());
  await page.getByRole('heading', { name: 'Where to stand' }).waitFor();
});

test('three numbers make a room', async () => {
  await visit(page, '/room');
  await page.getByLabel('What it is called').fill('Room by the Yard');
  await page.getByLabel('Cookers', { exact: true }).fill('6');
  await page.getByLabel('Sinks', { exact: true }).fill('4');
  await page.getByLabel('Pupils', { exact: true }).fill('24');
  await page.getByRole('button', { name: 'Make the room' }).click();
  await heading(/Room by the Yard: 6 cookers, 4 sinks, \d+ places/).waitFor();
});

test('a class comes from a list with odd columns', async () => {
  await visit(page, '/classes/new');
  await page
    .getByLabel('or paste its lines here')
    .fill(
      [
        'Locker;Surname;Form;Forename;Dietary;Bus',
        '12;Okoro;8C;Ada;nut allergy;yes',
        '13;Brandt;8C;Bilal;;no',
        '14;Lindqvist;8C;Cara;vegetarian;no',
        '15;Moreau;8C;Dev;;yes',
      ].join('\n'),
    );
  await page.getByRole('button', { name: 'Read these lines' }).click();
  await heading('4 pupils were understood.').waitFor();
  assert.equal(await page.getByLabel('Forename', { exact: true }).inputValue(), 'first name');
  assert.equal(await page.getByLabel('Locker', { exact: true }).inputValue(), 'leave out');
  await page.getByLabel('Class', { exact: true }).fill('8C');
  await page.getByRole('button', { name: 'Keep this class' }).click();
  await heading(/8C: 4 pupils/).waitFor();
  await page.getByText('Ada').first().waitFor();
});

test('a pasted dish is read with at most three questions and kept', async () => {
  await visit(page, '/dishes/new');
  await page
    .getByLabel('The text')
    .fill(
      [
        'Corner-shop flapjacks',
        'Makes 12',
        '150 g butter',
        '100 g golden syrup',
        '100 g brown sugar',
        '300 g porridge oats',
        'a handful of raisins',
        '1. Heat the oven to 180 C. Line a tin.',
        '2. Melt the butter, syrup and sugar in a pan, about 5 minutes.',
        '3. Stir in the oats and raisins.',
        '4. Press into the tin and bake for 20 minutes until golden.',
        '5. Cool for 10 minutes, then cut into squares.',
      ].join('\n'),
    );
  await page.getByRole('button', { name: 'Read it', exact: true }).click();
  await heading('This is how it was read.').waitFor();
  const questions = await page.locator('main').getByRole('group').count();
  assert.ok(questions <= 3, `${questions} questions`);
  await page.getByRole('button', { name: 'Keep this dish' }).click();
  await heading(/flapjacks/i).waitFor();
  assert.match(page.url(), /\/dishes\/(?!new)/);
});

test('a lesson with the class and the room is planned and shown', { timeout: 2 * planning }, async () => {
  const dish = 'lentil-dhal';
  const [room] = (await program.call('GET', '/api/documents/room')).documents;
  const [group] = (await program.call('GET', '/api/documents/class')).documents;
  const { cooks } = await program.call('POST', '/api/seating', { class: group.id, room: room.id, dishes: [dish] });
  const kept = await program.call('POST', '/api/documents/lesson', {
    what: 'made for a test',
    body: {
      kind: 'lesson',
      version: 1,
      title: '8C, dhal in our own room',
      date: '2026-12-02',
      from: '10:00',
      to: '11:30',
      year: 8,
      purpose: 'take home',
      room: `../room/${room.id}.json`,
      dishes: { [dish]: `../dish/${dish}.json` },
      cooks,
      adults: [{ name: 'Teacher', leads: true }],
    },
  });
  await visit(page, `/lesson/${kept.id}`);
  await heading(/fit/).waitFor({ timeout: planning });
  await page.getByText('8C, dhal in our own room').first().waitFor();
});

test('a remedy is taken on a lesson that does not fit, and undone', { timeout: 3 * planning }, async () => {
  const tight = await plan(program, {
    quick: { dishes: ['lentil-dhal'], pupils: 24, cookers: 6, in: 'pairs', from: '09:00', to: '09:40' },
    keep: true,
    date: '2026-12-03',
  });
  await visit(page, `/lesson/${tight.lesson}`);
  await heading(/It does not fit|No plan was found/).waitFor();
  const first = page.getByRole('button', { name: /^Do this: / }).first();
  const says = (await first.getAttribute('aria-label')).replace('Do this: ', '');
  await first.click();
  await page.getByText(`Changed: ${says}`).waitFor({ timeout: planning });
  await page.getByRole('button', { name: 'Undo', exact: true }).click();
  await heading(/It does not fit|No plan was found/).waitFor({ timeout: planning });
});

test('the sheets open as PDF, labels among them', async () => {
  await visit(page, `/lesson/${lesson}`);
  await page.getByRole('button', { name: 'Print', exact: true }).click();
  const sheets = page.getByRole('dialog', { name: 'Choose what to print' });
  for (const name of ["Open Teacher's page (PDF)", 'Open Labels (PDF)']) {
    const href = await sheets.getByRole('link', { name }).first().getAttribute('href');
    const answer = await page.request.get(href);
    assert.equal(answer.status(), 200);
    assert.equal(answer.headers()['content-type'], 'application/pdf');
    assert.equal((await answer.body()).subarray(0, 5).toString(), '%PDF-');
  }
  await page.keyboard.press('Escape');
  await sheets.waitFor({ state: 'hidden' });
});

test('the same lesson again on another day', { timeout: 2 * planning }, async () => {
  await visit(page, '/');
  const again = page.getByRole('form', { name: 'Same again' });
  await again.getByLabel('Lesson').selectOption(lesson);
  await again.getByLabel('On', { exact: true }).fill('2026-12-08');
  await again.getByRole('button', { name: 'Make it again' }).click();
  await page.getByText(/^Made again: /).waitFor();
  await heading(/fit/).waitFor({ timeout: planning });
  assert.notEqual(new URL(page.url()).pathname, `/lesson/${lesson}`);
  await page.getByText(/Tue 8 Dec/).first().waitFor();
});

test('the first person is added, signs in, signs out and in again', async () => {
  async function signIn() {
    await heading('Who is cooking today?').waitFor();
    await page.getByLabel('Name').fill('Ms Hart');
    await page.getByLabel('Password', { exact: true }).fill('nine copper pans');
    await page.getByRole('button', { name: 'Sign in' }).click();
    await page.getByRole('banner').getByRole('button', { name: 'Sign out' }).waitFor();
  }
  await visit(page, '/setup/people');
  await page.getByLabel('Name').fill('Ms Hart');
  await page.getByLabel('Password, ten letters or more').fill('nine copper pans');
  await page.getByRole('button', { name: 'Add the first person' }).click();
  await signIn();
  await heading('One person signs in.').waitFor();
  await page.getByRole('banner').getByRole('button', { name: 'Sign out' }).click();
  await page.getByRole('button', { name: 'Sign in' }).waitFor();
  await page.goto('/classes');
  await signIn();
  await heading('One class is written down.').waitFor();
  await settled(page);
});

test('nothing was complained of all day', () => none(complaints, 'console'));
