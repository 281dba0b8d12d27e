/** Stands in for the program while pages are made: the same addresses and shapes (api/openapi.yaml), with the documents
 *  of demo/ and answers of the real binary. Nothing is kept beyond its own run.
 *    node mock/server.mjs [port]         EMPTY=1 a first run, SIGN_IN=1 asks for a name (any password of ten letters) */
import { createReadStream, existsSync, statSync } from 'node:fs';
import { createServer } from 'node:http';
import { extname, join } from 'node:path';
import { addDays, mondayOf } from './days.mjs';
import { all, document, etag, kept, make, newest, root, slug, today, write } from './kitchen.mjs';
import { draftOf, planOf, quickPlan, rowOf, viewOf } from './program.mjs';

const port = Number(process.argv[2] ?? 4180);
const empty = process.env.EMPTY === '1';
const streams = new Set();
const plans = new Map(); // lesson id -> { answer, version, changed, versions }
const jobs = new Map();
let signedIn = process.env.SIGN_IN !== '1';

const problem = (code, message, remedy = '', where = '') => ({ problems: [{ code, message, remedy, where }] });
const tell = (name, event) => streams.forEach((s) => s.write(`event: ${name}\ndata: ${JSON.stringify(event)}\n\n`));
const told = (one) =>
  tell('document', { kind: one.kind, id: one.id, version: one.versions.length, title: document(one).title });

const me = () => ({
  signed_in: signedIn,
  first_run: empty,
  open: false,
  demo: true,
  person: signedIn ? { id: 'hart', name: 'Ms Hart', role: 'head' } : null,
  token: 'mock',
  school: empty ? '' : 'Quillbridge School, Food Room 1',
  today,
  version: '0.1.0',
});

async function planned(id) {
  if (!plans.has(id)) {
    plans.set(id, {
      answer: await planOf(id),
      version: 1,
      changed: [],
      moved: 0,
      versions: [{ version: 1, at: '2026-11-12T16:21:00', says: 'first plan' }],
    });
  }
  const found = plans.get(id);
  const lesson = kept('lesson', id);
  return {
    lesson: id,
    lesson_version: lesson.versions.length,
    answer: found.answer,
    body: newest(lesson).body,
    changed: found.changed,
    lines_moved: found.moved,
    versions: found.versions,
    stale: false,
  };
}

const minute = (at) => Number(at.slice(-8, -6)) * 60 + Number(at.slice(-5, -3)) + Number(at.slice(-2)) / 60;

function notPlanned(one) {
  const { body, version } = document(one);
  return {
    id: one.id,
    title: body.title,
    class: body.title.split(',')[0],
    date: body.date,
    from: body.from,
    to: body.to,
    room: 'Food Room 1',
    dishes: Object.keys(body.dishes ?? {}),
    cooks: body.cooks?.length ?? 0,
    pupils: (body.cooks ?? []).reduce((sum, cook) => sum + (cook.people ?? 1), 0),
    verdict: 'not planned',
    says: 'Not planned yet',
    chance: null,
    reason: '',
    remedy: null,
    allergies: [{ allergen: 'milk', says: 'Daisy M.: the stock’s label is not read' }],
    prepare: [],
    stale: false,
    version,
  };
}

async function weekLesson(one) {
  const { body, version } = document(one);
  // A lesson the program cannot plan as it stands (a pupil's allergy is not settled) is in the week, not planned.
  const { answer } = await planned(one.id).catch(() => ({ answer: null }));
  if (!answer) return notPlanned(one);
  const fits = answer.verdict === 'fits';
  const marks = answer.chance
    ? answer.chance.last_finish_twentieths.map((at) => minute(at) - minute(answer.lesson.bell))
    : [];
  const first = answer.remedies[0];
  return {
    id: one.id,
    title: body.title,
    class: body.title.split(',')[0],
    date: body.date,
    from: body.from,
    to: body.to,
    room: answer.lesson.room.split(',')[0],
    dishes: [...new Set(answer.plan.tasks.map((task) => task.dish).filter(Boolean))].slice(0, 4),
    cooks: answer.plan.cooks.length,
    pupils: answer.plan.cooks.reduce((sum, cook) => sum + cook.people, 0),
    verdict: answer.verdict,
    says: fits ? `It fits: ${answer.spare_minutes} min spare` : `Does not fit: ${answer.over_minutes} min over`,
    chance: answer.chance
      ? {
          word: answer.chance.word,
          about: answer.chance.about,
          in_100: Math.round(answer.chance.in_time_share * 100),
          marks,
        }
      : null,
    reason: answer.causes[0]?.says ?? '',
    remedy: first ? { code: first.code, says: first.says, buys: first.buys } : null,
    allergies: one.id.startsWith('f-') ? [{ allergen: 'milk', says: 'Seren G.: no-milk variants' }] : [],
    prepare: one.id.startsWith('a-')
      ? ['Trays at the places, 12 sets']
      : one.id.startsWith('f-')
        ? ['Read two labels: burger buns, stock']
        : [],
    stale: false,
    version,
  };
}

async function week(from) {
  const monday = mondayOf(from ?? today);
  const lessons = empty
    ? []
    : all('lesson').filter((one) => mondayOf(newest(one).body.date ?? '2000-01-03') === monday);
  lessons.sort((a, b) => (newest(a).body.date < newest(b).body.date ? -1 : 1));
  const rows = [];
  for (const one of lessons) rows.push(await weekLesson(one));
  const bad = rows.find((row) => row.verdict !== 'fits');
  return {
    from: monday,
    to: addDays(monday, 6),
    today,
    headline:
      rows.length === 0
        ? ''
        : bad
          ? 'Wednesday’s scones do not fit yet. The other four lessons do.'
          : 'All lessons of this week fit.',
    lessons: rows,
    dates: [monday],
    order:
      rows.length === 0
        ? null
        : {
            says: 'Two vans before the week begins; 14 lines.',
            order_by: '2026-11-19',
            days_left: 2,
            total: '£86.40',
            lines: [
              ['self-raising flour', '6 × 1.5 kg'],
              ['butter', '10 × 250 g'],
              ['caster sugar', '2 × 1 kg'],
              ['sultanas', '3 × 500 g'],
              ['milk', '4 × 2.27 l'],
              ['carrots', '3 kg'],
              ['celery', '5 heads'],
              ['tinned chopped tomatoes', '24 × 400 g'],
              ['white beans', '24 × 400 g'],
              ['eggs', '4 × 15'],
              ['chicken breast', '2.4 kg'],
              ['peppers', '18'],
              ['onions', '5 kg'],
              ['soft wraps', '4 × 8'],
            ].map(([food, buy]) => ({ food, buy })),
            not_settled: ['10F, practice: no dishes chosen'],
          },
  };
}

function change(id, wanted) {
  const lesson = kept('lesson', id);
  const found = plans.get(id);
  write(lesson, structuredClone(newest(lesson).body), wanted.change);
  found.version += 1;
  found.changed = [
    `${wanted.cook ?? wanted.window ?? wanted.cooker ?? 'The lesson'}: ${wanted.change}`,
    'Bay C: “Soften veg” 09:26 instead of 09:25',
  ];
  found.moved = 2;
  found.versions.push({ version: found.version, at: '2026-11-17T08:05:00', says: wanted.change });
  told(lesson);
}

function startJob(work, lesson) {
  const id = `job-${jobs.size + 1}`;
  const job = {
    job: id,
    state: 'working',
    says: 'looking for a plan in one wave',
    seconds: 0,
    lesson: null,
    result: null,
  };
  jobs.set(id, job);
  const began = Date.now();
  const clock = setInterval(() => {
    job.seconds = (Date.now() - began) / 1000;
    tell('job', job);
  }, 400);
  work()
    .then((done) => Object.assign(job, { state: 'done', says: 'done', lesson: lesson ?? done }))
    .catch((fault) =>
      Object.assign(job, {
        state: 'failed',
        problems: problem('mock.failed', String(fault.message).split('\n')[0]).problems,
      }),
    )
    .finally(() => {
      clearInterval(clock);
      tell('job', job);
    });
  return job;
}

async function quick(wanted) {
  const answer = await quickPlan(wanted);
  const name = document(kept('dish', wanted.dishes[0])).title;
  const id = slug(`${name} ${wanted.from} ${plans.size}`);
  make(
    'lesson',
    id,
    { kind: 'lesson', version: 1, title: `${name}, ${wanted.pupils} pupils`, from: wanted.from, to: wanted.to },
    'A plan from four answers',
  );
  plans.set(id, {
    answer,
    version: 1,
    changed: [],
    moved: 0,
    versions: [{ version: 1, at: `${today}T08:00:00`, says: 'first plan' }],
  });
  return id;
}

/** Gives [status, body, headers]. */
async function answer(method, path, query, body, match) {
  const [, a, b, c, d] = path.split('/').slice(1).map(decodeURIComponent);
  if (a === 'me') return [200, me()];
  if (a === 'sign-in') {
    if ((body.password ?? '').length < 10)
      return [
        401,
        problem(
          'people.wrong',
          'Name and password do not go together.',
          'Try again, or ask your head of department for a new password.',
        ),
      ];
    signedIn = true;
    return [200, me()];
  }
  if (!signedIn) return [401, problem('people.nobody', 'Nobody is signed in.', 'Sign in first.')];
  if (a === 'sign-out') {
    signedIn = false;
    return [204];
  }
  if (a === 'week') return [200, await week(query.get('from'))];
  if (a === 'dishes' && !b) return [200, { dishes: empty ? [] : all('dish').map(rowOf) }];
  if (a === 'dishes' && c === 'view') {
    const one = kept('dish', b);
    return one
      ? [200, await viewOf(newest(one).body, one)]
      : [404, problem('documents.none', `There is no dish '${b}'.`, 'Look for it under Dishes.')];
  }
  if (a === 'dish-view') return [200, await viewOf(body.body)];
  if (a === 'read')
    return body.text.trim()
      ? [200, await draftOf(body.text)]
      : [400, problem('read.empty', 'There is no text to read.', 'Paste the ingredients and the method.')];
  if (a === 'paper')
    return [
      200,
      {
        sheets: [
          {
            name: 'teacher',
            title: 'One page for you',
            says: 'waves, checkpoints, where to stand',
            formats: ['pdf', 'odt'],
            needs_allergies: false,
          },
          {
            name: 'wall',
            title: 'A page for the wall',
            says: 'the checkpoints in large figures',
            formats: ['pdf'],
            needs_allergies: false,
          },
          {
            name: 'bay-cards',
            title: 'A card for each bay',
            says: 'what to do and when',
            formats: ['pdf'],
            needs_allergies: false,
          },
          {
            name: 'trays',
            title: 'Tray list',
            says: 'what is weighed out for each place',
            formats: ['pdf', 'csv'],
            needs_allergies: true,
          },
        ],
      },
    ];
  if (a === 'plan') {
    if (body.quick) return [202, startJob(() => quick(body.quick))];
    return [202, startJob(async () => planned(body.lesson), body.lesson)];
  }
  if (a === 'jobs') {
    const job = jobs.get(b);
    if (method === 'DELETE' && job) job.state = 'stopped';
    return job ? [200, job] : [404, problem('jobs.none', 'That piece of work is gone.')];
  }
  if (a === 'lessons' && b === 'same-again') {
    const one = kept('lesson', body.lesson);
    const copy = make('lesson', `${body.lesson}-${body.date}`, { ...newest(one).body, date: body.date }, 'Made again');
    plans.set(copy.id, { answer: await planOf(body.lesson), version: 1, changed: [], moved: 0, versions: [] });
    return [201, { lesson: document(copy), differs: [] }];
  }
  if (a === 'lessons' && c === 'plan') {
    const one = kept('lesson', b);
    if (!one) return [404, problem('documents.none', `There is no lesson '${b}'.`, 'Look for it under This week.')];
    return [200, await planned(b), { ETag: etag(one) }];
  }
  if (a === 'lessons' && c === 'change') {
    const one = kept('lesson', b);
    if (match !== etag(one))
      return [
        412,
        { ...problem('documents.changed', 'Somebody else changed the lesson.'), yours: body, theirs: document(one) },
      ];
    change(b, body);
    return [200, await planned(b), { ETag: etag(one) }];
  }
  if (a === 'documents') return documents(method, b, c, d, query, body, match);
  return [404, problem('page.none', `There is nothing at ${path}.`)];
}

function documents(method, kind, id, what, query, body, match) {
  if (!id && method === 'GET') {
    const found = empty
      ? []
      : all(kind).map((one) => ({ ...document(one), body: undefined, day: newest(one).body.date ?? null }));
    return [200, { documents: found.sort((x, y) => ((x.day ?? '') < (y.day ?? '') ? -1 : 1)) }];
  }
  if (!id) {
    const one = make(kind, body.id ?? slug(body.body.name ?? body.body.title), body.body, body.what);
    told(one);
    return [201, document(one), { ETag: etag(one) }];
  }
  const one = kept(kind, id);
  if (!one) return [404, problem('documents.none', `There is no ${kind} '${id}'.`, 'It may have been put away.')];
  if (what === 'history')
    return [
      200,
      {
        history: one.versions
          .map((v, i) => ({ version: i + 1, at: v.at, by: v.by, what: v.what, removed: v.removed }))
          .reverse(),
      },
    ];
  if (method === 'GET') return [200, document(one), { ETag: etag(one) }];
  if (match !== etag(one))
    return [
      412,
      {
        ...problem('documents.changed', 'Somebody else was quicker.'),
        yours: body?.body ?? null,
        theirs: document(one),
      },
    ];
  if (what === 'undo') write(one, one.versions.at(body?.to_version ? body.to_version - 1 : -2).body, 'Undone');
  else if (method === 'PUT') {
    if (!body.body.name && kind === 'dish')
      return [400, problem('dish.name', 'The dish has no name.', 'Give it one.', '/name')];
    write(one, body.body, body.what);
  } else if (method === 'DELETE') {
    write(one, newest(one).body, 'Put away', 'Ms Hart', true);
    told(one);
    return [204];
  }
  told(one);
  return [200, document(one), { ETag: etag(one) }];
}

const types = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript',
  '.css': 'text/css',
  '.json': 'application/json',
  '.svg': 'image/svg+xml',
  '.woff2': 'font/woff2',
};

function page(path, response) {
  const built = join(root, 'build/ui');
  let file = join(built, path);
  if (!file.startsWith(built) || !existsSync(file) || statSync(file).isDirectory()) file = join(built, 'index.html');
  response.writeHead(200, { 'Content-Type': types[extname(file)] ?? 'application/octet-stream' });
  createReadStream(file).pipe(response);
}

createServer((request, response) => {
  const url = new URL(request.url, 'http://mock');
  if (!url.pathname.startsWith('/api/')) return page(url.pathname, response);
  if (url.pathname === '/api/events') {
    response.writeHead(200, { 'Content-Type': 'text/event-stream', 'Cache-Control': 'no-store' });
    response.write(': here\n\n');
    streams.add(response);
    return request.on('close', () => streams.delete(response));
  }
  if (/^\/api\/paper\/./.test(url.pathname)) {
    response.writeHead(200, { 'Content-Type': 'text/plain' });
    return response.end('A sheet would be here.');
  }
  let text = '';
  request.on('data', (part) => (text += part));
  request.on('end', async () => {
    let found;
    try {
      if (
        request.method !== 'GET' &&
        !['/api/sign-in'].includes(url.pathname) &&
        request.headers['x-benchbell-token'] !== 'mock'
      )
        found = [
          403,
          problem('people.token', 'This request did not come from a page of ours.', 'Load the page again.'),
        ];
      else
        found = await answer(
          request.method,
          url.pathname,
          url.searchParams,
          text ? JSON.parse(text) : null,
          request.headers['if-match'],
        );
    } catch (fault) {
      found = [500, problem('mock.fault', String(fault.message))];
    }
    const [status, body, headers = {}] = found;
    response.writeHead(status, { 'Content-Type': 'application/json', 'Cache-Control': 'no-store', ...headers });
    response.end(status === 204 ? undefined : JSON.stringify(body));
  });
  return undefined;
}).listen(port, '127.0.0.1', () => console.log(`mock: http://127.0.0.1:${port}`));
