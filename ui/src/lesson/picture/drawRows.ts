/** The cooks' rows as SVG text. Hundreds of bars drawn as components took most of a second; parsed as one text they take
 *  a few milliseconds. The words on the bars are a text of their own, since shaping letters takes as long as all the rest:
 *  they are laid over the bars a frame later. Every word from outside goes through escape(). */
import type { Task } from '../answer';
import { bayGap, label, textWidth, type Geometry } from './geometry';
import type { Bar, Bay, DishMark, Row } from './scene';

export interface Look {
  bays: Bay[];
  geometry: Geometry;
  tops: Map<string, number>;
  bayTops: number[];
  /** What each dish is drawn in, 1 to 8. */
  inks: Map<string, number>;
  /** Minutes after midnight, while the lesson is on. */
  now: number | null;
  uid: string;
  /** What a step is called to somebody who cannot see it. */
  described: (task: Task) => string;
}

export function escape(text: string): string {
  return text.replace(/[&<>"']/g, (sign) => `&#${sign.charCodeAt(0)};`);
}

/** Pixels to a tenth: shorter text, and finer than an eye. */
const px = (value: number): string => String(Math.round(value * 10) / 10);

const inkOf = (task: Task, look: Look): number => (task.dish === null ? 0 : (look.inks.get(task.dish) ?? 0));
const colour = (ink: number): string => (ink === 0 ? 'var(--ink)' : `var(--dish-${ink})`);

const rect = (x: number, y: number, width: number, height: number, rest: string): string =>
  `<rect x="${px(x)}" y="${px(y)}" width="${px(width)}" height="${px(height)}" ${rest}/>`;

/** Where a bar's shape stands, px. */
interface Box {
  x: number;
  y: number;
  width: number;
  height: number;
}

function boxOf(bar: Bar, rowY: number, geometry: Geometry): Box {
  const x = geometry.x(bar.from) + 0.5;
  const width = Math.max(1.5, geometry.x(bar.to) - geometry.x(bar.from) - 1);
  if (bar.foot) return { x, y: rowY + 3 + geometry.barHeight, width, height: 2.6 };
  const part = geometry.barHeight / bar.tracks;
  return { x, y: rowY + 3 + bar.track * part, width, height: bar.tracks > 1 ? part - 0.8 : part };
}

function pattern(task: Task, { x, y, width, height }: Box, look: Look): string {
  const { uid } = look;
  const ink = colour(inkOf(task, look));
  const hatch = `url(#${uid}-watch-${inkOf(task, look)})`;
  const line = `stroke="${ink}" stroke-width="1.2"`;
  const inside = [x + 0.6, y + 0.6, Math.max(1, width - 1.2), height - 1.2] as const;
  switch (task.pattern) {
    case 'hands':
      return rect(x, y, width, height, `fill="${ink}"`);
    case 'grown': {
      const third = Math.min(8.8, (width * 2) / 3);
      const edge = Math.min(2.6, width / 5);
      return (
        rect(x, y, edge, height, `fill="${ink}"`) +
        rect(x + third / 2, y, edge, height, `fill="${ink}"`) +
        rect(x + third, y, width - third, height, `fill="${ink}"`)
      );
    }
    case 'watch':
      return rect(...inside, `fill="${hatch}" ${line}`);
    case 'clean': {
      // Cleaning stands lower than cooking, as in the key.
      const inset = height * 0.2;
      return (
        rect(x, y + inset, width, height - 2 * inset, `fill="url(#${uid}-clean)"`) +
        `<path d="M${px(x)} ${px(y + inset)}h${px(width)}M${px(x)} ${px(y + height - inset)}h${px(width)}" stroke="var(--ink)" stroke-width=".8"/>`
      );
    }
    case 'leave':
      return rect(...inside, `fill="var(--card)" ${line}`);
    case 'off':
      return rect(...inside, `fill="var(--card)" ${line} stroke-dasharray="3 2"`);
  }
}

/** A pin stuck in where the step begins. */
const pin = (x: number, y: number): string =>
  `<path d="M${px(x + 1)} ${px(y + 8)}V${px(y)}" stroke="var(--beetroot)" stroke-width="1.6"/>` +
  `<circle cx="${px(x + 1)}" cy="${px(y)}" r="3.2" fill="var(--beetroot)" stroke="var(--card)" stroke-width="1"/>`;

function bar(one: Bar, rowY: number, look: Look): string {
  const { task } = one;
  const box = boxOf(one, rowY, look.geometry);
  const past = isPast(task, look);
  const shape = one.foot
    ? rect(box.x, box.y, box.width, box.height, `fill="${colour(inkOf(task, look))}"`)
    : pattern(task, box, look);
  const pinned = task.pinned && one.from === task.from ? pin(box.x, rowY + 3) : '';
  // A task in several pieces is one button: the piece with its name.
  const spoken = one.named
    ? `role="button" tabindex="-1" aria-pressed="false" aria-label="${escape(look.described(task))}"`
    : 'aria-hidden="true"';
  return `<g class="bar${past ? ' past' : ''}" data-task="${task.id}" ${spoken}>${shape}${pinned}</g>`;
}

const isPast = (task: Task, { now }: Look): boolean => now !== null && task.to <= now;

function row({ cook, bars }: Row, bay: Bay, look: Look): string {
  const { geometry } = look;
  const y = look.tops.get(cook.name) ?? 0;
  const base = y + geometry.rowHeight - 5;
  const name = cook.name.length > 15 ? `${cook.name.slice(0, 14)}…` : cook.name;
  let text = `<text x="30" y="${px(base)}" font-size="13" font-weight="700">${escape(cook.place.replace(bay.name, ''))}</text>`;
  text += `<text x="46" y="${px(base)}" font-size="13">${escape(name)}</text>`;
  if (cook.buffer_minutes !== null) {
    const tight = cook.buffer_minutes < 1;
    text += `<text x="${px(geometry.left - 8)}" y="${px(base)}" font-size="13" text-anchor="end" fill="var(--${tight ? 'ember' : 'soft'})"${tight ? ' font-weight="700"' : ''}>${cook.buffer_minutes}</text>`;
  }
  return text + bars.map((one) => bar(one, y, look)).join('');
}

/** All rows, ready to be put into a <g>. */
export function drawRows(look: Look): string {
  return look.bays
    .map((bay, i) => {
      const first = look.bayTops[i] ?? 0;
      const rule =
        i > 0 ? `<path d="M0 ${px(first - bayGap / 2)}H${px(look.geometry.width)}" stroke="var(--edge)"/>` : '';
      const letter = `<text class="bay" x="2" y="${px(first + (bay.rows.length * look.geometry.rowHeight) / 2 + 10)}">${escape(bay.name)}</text>`;
      return rule + letter + bay.rows.map((one) => row(one, bay, look)).join('');
    })
    .join('');
}

function word(one: Bar, rowY: number, look: Look, marks: Map<string, DishMark>): string {
  const { task } = one;
  if (one.foot || !one.named || one.tracks > 1 || isPast(task, look)) return '';
  const { x, y, width, height } = boxOf(one, rowY, look.geometry);
  // One dish for all: its tag on every bar would say nothing.
  const tag = marks.size === 1 || task.dish === null ? '' : (marks.get(task.dish)?.tag ?? '');
  const shift = task.pattern === 'grown' ? 12 : 4;
  const said = label(tag, task.short, width - shift + 4);
  if (!said) return '';
  const onPlate = task.pattern === 'watch' || task.pattern === 'clean';
  const plate = onPlate ? rect(x + shift - 2, y + 1, textWidth(said, 11) + 3, height - 2, 'fill="var(--card)"') : '';
  const onInk = task.pattern === 'hands' || task.pattern === 'grown';
  const fill = onInk ? '#fff' : task.pattern === 'clean' ? 'var(--ink)' : colour(inkOf(task, look));
  return `${plate}<text x="${px(x + shift)}" y="${px(y + height / 2 + 4)}" fill="${fill}">${escape(said)}</text>`;
}

/** The words on the bars, ready to be put into a <g> over the rows. */
export function drawWords(look: Look, marks: Map<string, DishMark>): string {
  const rows = look.bays.flatMap((bay) => bay.rows);
  return rows
    .flatMap(({ cook, bars }) => bars.map((one) => word(one, look.tops.get(cook.name) ?? 0, look, marks)))
    .join('');
}
