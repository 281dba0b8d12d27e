/** The program under test: started on a throw-away file or on the demo school, at any free port, and stopped again.
 *
 *  BENCHBELL  the program; left out, build/release/bin/benchbell
 *  PAGES      a folder of built pages, such as build/ui, shown instead of those the program carries: pages can then be tested
 *             without compiling. Everything under /api goes to the program. */
import { spawn } from 'node:child_process';
import { createReadStream } from 'node:fs';
import { mkdtemp, readFile, rm, stat } from 'node:fs/promises';
import { createServer, request } from 'node:http';
import { tmpdir } from 'node:os';
import { dirname, extname, join, normalize } from 'node:path';
import { fileURLToPath } from 'node:url';

export const root = join(dirname(fileURLToPath(import.meta.url)), '..', '..', '..');
const binary = process.env.BENCHBELL ?? join(root, 'build/release/bin/benchbell');
const pages = process.env.PAGES;

const kinds = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json',
  '.svg': 'image/svg+xml',
  '.woff2': 'font/woff2',
};

/** The address the program prints. @throws with what it said, when it stops first. */
function addressOf(child) {
  return new Promise((resolve, reject) => {
    let said = '';
    const hear = (bytes) => {
      said += bytes;
      const found = /https?:\/\/[^\s/]+:\d+/.exec(said);
      if (found) resolve(found[0]);
    };
    child.stdout.on('data', hear);
    child.stderr.on('data', hear);
    child.once('error', reject);
    child.once('exit', (code) => reject(new Error(`The program stopped with code ${code}: ${said}`)));
  });
}

/** Pages from a folder, all else from the program, whose address may be another after it was started anew. */
async function inFrontOf(program) {
  const server = createServer(async (asked, answer) => {
    if (asked.url.startsWith('/api/')) {
      const { hostname, port } = new URL(program());
      const onward = request({ hostname, port, path: asked.url, method: asked.method, headers: asked.headers });
      onward.on('response', (told) => {
        answer.writeHead(told.statusCode, told.headers).flushHeaders();
        told.pipe(answer);
      });
      onward.on('error', () => answer.destroy());
      answer.on('close', () => onward.destroy());
      asked.pipe(onward);
      return;
    }
    const path = normalize(new URL(asked.url, program()).pathname);
    let file = join(pages, path);
    if (!(await stat(file).catch(() => null))?.isFile()) file = join(pages, 'index.html');
    answer.writeHead(200, { 'Content-Type': kinds[extname(file)] ?? 'application/octet-stream' });
    createReadStream(file).pipe(answer);
  });
  await new Promise((listening) => server.listen(0, '127.0.0.1', listening));
  return server;
}

/** Starts it. `demo`: the invented school; else an empty file of its own. `env`: what it finds in its environment.
 *  Gives { at, file, call, pause, resume, stop }: its address, where its file is, one call of the API that throws on a
 *  refusal, the program taken away and started anew on the same file and address, and an end to it. */
export async function start({ demo = false, env = {} } = {}) {
  const folder = await mkdtemp(join(tmpdir(), 'benchbell-'));
  const file = join(folder, 'school.benchbell');
  const what = demo ? ['--demo'] : ['--file', file];
  let child;
  let gone;
  let program;
  async function run(port) {
    child = spawn(binary, ['serve', ...what, '--port', port], {
      env: { ...process.env, HOME: folder, XDG_DATA_HOME: folder, ...env },
      stdio: ['ignore', 'pipe', 'pipe'],
    });
    const running = child;
    gone = new Promise((resolve) => running.once('exit', resolve));
    program = await addressOf(child);
  }
  await run('0');
  const front = pages ? await inFrontOf(() => program) : null;
  const at = front ? `http://localhost:${front.address().port}` : program;

  let { token } = await (await fetch(`${at}/api/me`)).json();
  async function call(method, path, body, headers = {}) {
    const answer = await fetch(at + path, {
      method,
      headers: { 'Content-Type': 'application/json', 'X-Benchbell-Token': token, ...headers },
      body: body === undefined ? undefined : JSON.stringify(body),
    });
    const said = await answer.text();
    if (!answer.ok) throw new Error(`${method} ${path}: ${answer.status} ${said}`);
    return said ? JSON.parse(said) : undefined;
  }
  async function pause() {
    child.kill('SIGTERM');
    const late = setTimeout(() => child.kill('SIGKILL'), 5000);
    await gone;
    clearTimeout(late);
  }
  async function resume() {
    await run(new URL(program).port);
    ({ token } = await (await fetch(`${at}/api/me`)).json());
  }
  async function stop() {
    front?.closeAllConnections();
    front?.close();
    await pause();
    await rm(folder, { recursive: true, force: true });
  }
  return { at, file, call, pause, resume, stop };
}

/** An empty file with the class 7B in it, id "7b": enough to type into and to keep. */
export async function startWithOneClass() {
  const program = await start();
  await program.call('POST', '/api/documents/class', {
    what: 'made for a test',
    id: '7b',
    body: { kind: 'class', version: 1, name: '7B', year: 7, in: 'pairs', pupils: [{ name: 'Ada B.' }, { name: 'Bilal C.' }] },
  });
  return program;
}

/** Plans a kept lesson or a body and waits for the job. */
export async function plan(program, wanted) {
  let job = await program.call('POST', '/api/plan', wanted);
  while (!['done', 'stopped', 'failed'].includes(job.state)) {
    await new Promise((later) => setTimeout(later, 200));
    job = await program.call('GET', `/api/jobs/${job.job}`);
  }
  if (job.state === 'failed') throw new Error(`Planning failed: ${JSON.stringify(job.problems)}`);
  return job;
}

/** Waits for a plan that the program makes by itself: those of the demo school come one after the other. */
export async function planned(program, lesson) {
  while (!(await fetch(`${program.at}/api/lessons/${lesson}/plan`)).ok) {
    await new Promise((later) => setTimeout(later, 500));
  }
}

/** A file of the repository as text. */
export const read = (path) => readFile(join(root, path), 'utf8');
