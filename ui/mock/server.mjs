/** Stands in for the program while pages are made: the same addresses and shapes (api/openapi.yaml), with the documents
 *  of demo/ and answers of the real binary. Nothing is kept beyond its own run.
 *    node mock/server.mjs [port]         EMPTY=1 a first run, SIGN_IN=1 asks for a name (any password of ten letters) */
import { createReadStream, existsSync, statSync } from 'node:fs';
import { createServer } from 'node:http';
import { extname, join } from 'node:path';
import { documents, problem } from './documents.mjs';
import { all, document, etag, kept, make, newest, root, slug, today, write } from './kitchen.mjs';
import { draftOf, orderOf, planOf, quickPlan, rowOf, viewOf } from './program.mjs';
import { planned, plans, week } from './week.mjs';

const port = Number(process.argv[2] ?? 4180);
const empty = process.env.EMPTY === '1';
const streams = new Set();
const jobs = new Map();
let signedIn = process.env.SIGN_IN !== '1';

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
  if (a === 'stores')
    return [200, { from: '2026-11-16', to: '2026-11-22', order: await orderOf(), stock: [], unknown: [] }];
  if (a === 'people') return [200, { people: [{ id: 'hart', name: 'Ms Hart', role: 'head' }] }];
  if (a === 'backup') return [201, { name: 'school.backup', at: `${today}T08:00:00` }];
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
  if (a === 'documents') return documents({ method, kind: b, id: c, what: d, body, match, told });
  return [404, problem('page.none', `There is nothing at ${path}.`)];
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
