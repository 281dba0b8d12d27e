/** Asks the real program for plans and figures, so that the pages are tried on true answers. Plans are kept in
 *  build/ui-mock, because a plan takes some seconds. */
import { execFile } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { root, kept, newest, document } from './kitchen.mjs';

const program = process.env.BENCHBELL ?? join(root, 'build/release/bin/benchbell');
const store = join(root, 'build/ui-mock');
mkdirSync(store, { recursive: true });

/** Runs the program; exit code 1 is an answer ("does not fit"), not a fault. */
export function run(...words) {
  return new Promise((resolve, reject) => {
    execFile(program, words, { cwd: root, maxBuffer: 64e6 }, (fault, out, err) => {
      if (fault && fault.code !== 1) reject(new Error(err || fault.message));
      else resolve(out);
    });
  });
}

async function remembered(name, make) {
  const file = join(store, `${name}.json`);
  if (!existsSync(file)) writeFileSync(file, await make());
  return JSON.parse(readFileSync(file, 'utf8'));
}

/** The answer for a demo lesson, on the day this week gives it. */
export async function planOf(id) {
  const answer = await remembered(id, () => run('plan', `demo/lessons/${id}.json`, '--json'));
  const date = newest(kept('lesson', id)).body.date;
  const was = answer.lesson.opens.slice(0, 10);
  return JSON.parse(JSON.stringify(answer).replaceAll(was, date));
}

/** What the demo week has to buy. */
export const orderOf = () =>
  remembered('order', () =>
    run(
      'order',
      'demo/weeks/week-47.json',
      '--prices',
      'demo/stores/prices.csv',
      '--stock',
      'demo/stores/stock.csv',
      '--today',
      '2026-11-12',
      '--format',
      'json',
    ),
  );

export async function quickPlan({ dishes, pupils, cookers, from, to }) {
  const words = ['plan', '--json', '--seconds', '2', '--pupils', String(pupils), '--cookers', String(cookers)];
  for (const dish of dishes) words.push('--dish', dish);
  return JSON.parse(await run(...words, '--from', from, '--to', to));
}

/** A dish in a file of its own, for the commands that read files. */
function fileOf(body) {
  const file = join(tmpdir(), `benchbell-mock-${process.pid}.json`);
  writeFileSync(file, JSON.stringify(body));
  return file;
}

const attention = { hands: 'hands', 'stand by': 'hands', glance: 'watch', watch: 'watch', leave: 'leave' };
const follows = (step, i, method) =>
  (step.follows ?? (i > 0 ? [method[i - 1].id] : [])).map((one) => (typeof one === 'string' ? one : one.step));
const minutesOf = (step) => Math.round(typeof step.minutes === 'number' ? step.minutes : (step.minutes?.least ?? 5));
const heatOf = ({ heat }) =>
  !heat ? '' : heat.ring ? 'ring' : heat.grill !== undefined ? 'grill' : `oven ${heat.celsius ?? ''} °C`.trim();

export function strandsOf(body) {
  const ends = new Map();
  const lanes = new Map();
  const taken = new Map(); // lane -> last end
  let busyUntil = 0;
  return body.method.map((step, i) => {
    const before = follows(step, i, body.method);
    const kind = attention[step.attention ?? 'hands'] ?? 'hands';
    let from = Math.max(0, ...before.map((id) => ends.get(id) ?? 0));
    if (kind === 'hands') from = Math.max(from, busyUntil);
    const to = from + minutesOf(step);
    if (kind === 'hands') busyUntil = to;
    ends.set(step.id, to);
    let lane = before.length > 0 ? (lanes.get(before[0]) ?? 0) : taken.size;
    if ((taken.get(lane) ?? 0) > from) lane = taken.size;
    taken.set(lane, to);
    lanes.set(step.id, lane);
    const short = step.short ?? step.id.replaceAll('-', ' ');
    return {
      step: step.id,
      says: step.do,
      short,
      lane,
      from,
      to,
      attention: kind,
      follows: before,
      heat: heatOf(step),
      hazard: step.hazard ?? null,
    };
  });
}

export function rowOf(one) {
  const { body, version } = document(one);
  const strands = strandsOf(body);
  const contains = new Set(body.ingredients.flatMap((line) => line.contains ?? []));
  const pence = 40 + ((body.name.length * 7) % 90);
  return {
    id: one.id,
    name: body.name,
    tag: body.tag ?? body.name.slice(0, 2).toUpperCase(),
    portions: body.portions ?? 1,
    minutes: Math.max(...strands.map((s) => s.to)),
    hands_minutes: strands.filter((s) => s.attention === 'hands').reduce((sum, s) => sum + s.to - s.from, 0),
    hazards: [...new Set(body.method.map((s) => s.hazard).filter(Boolean))],
    skills: [...new Set(body.method.flatMap((s) => s.skills ?? []))],
    allergens: [...contains],
    check_label: /stock/.test(JSON.stringify(body.ingredients)) ? ['celery'] : [],
    cost_per_portion: one.id === 'polenta-cake' ? null : `£${(pence / 100).toFixed(2)}`,
    heat: [...new Set(strands.map((s) => s.heat.split(' ')[0]).filter(Boolean))],
    variants: (body.variants ?? []).map((v) => v.name),
    version,
  };
}

export async function viewOf(body, one) {
  const file = fileOf(body);
  const label = await run('label', file, '--json').then(JSON.parse, () => null);
  const row = rowOf(one ?? { id: 'draft', versions: [{ body, at: '', by: '', what: '' }], kind: 'dish' });
  const strands = strandsOf(body);
  return {
    body,
    row,
    strands,
    ratios: body.name.includes('scone')
      ? [
          {
            preparation: 'rubbed-in dough',
            says: 'half fat to flour or less',
            verdict: 'usual',
            lines: [
              { says: 'fat to flour, parts in 100', value: 22, least: 20, most: 30, verdict: 'usual' },
              { says: 'liquid to flour, parts in 100', value: 64, least: 50, most: 65, verdict: 'usual' },
            ],
          },
        ]
      : [],
    label,
    allergens: { contains: row.allergens, check_label: row.check_label },
    cost: {
      per_portion: row.cost_per_portion,
      lines: body.ingredients.map((line, i) => ({
        ingredient: line.name,
        cost: i % 5 === 4 ? null : `£${(0.04 + ((i * 13) % 40) / 100).toFixed(2)}`,
      })),
      missing: body.ingredients.filter((_, i) => i % 5 === 4).map((line) => line.name),
    },
    safety: body.method
      .filter((s) => s.hazard || s.kit?.includes('probe'))
      .map((s) => ({
        step: s.id,
        says: s.hazard ? `${s.hazard}: a grown-up is there` : 'probe the middle: 75 °C for 30 s, or 70 °C for 2 min',
      })),
    notes: [],
  };
}

export async function draftOf(text) {
  const file = join(tmpdir(), `benchbell-mock-${process.pid}.txt`);
  writeFileSync(file, text);
  const said = await run('read', file);
  const body = await run('read', file, '--json').then(JSON.parse, () => null);
  const lines = said
    .split('\n')
    .map((line) => /^ {2}(sure|likely|guess|not understood) +(.*)$/.exec(line))
    .filter(Boolean)
    .map(([, sure, understood]) => ({ sure, understood }));
  const pasted = text
    .split(/\n|(?<=\.) /)
    .map((line) => line.trim())
    .filter(Boolean)
    .slice(1);
  return {
    body,
    lines: lines.map((line, i) => ({ text: pasted[i] ?? line.understood, ...line })),
    questions: [{ says: 'How many does it feed?', about: 'portions', choices: ['2', '4', '6'] }],
    assumed: ['Blending takes about 5 min.'],
    problems: [],
  };
}
