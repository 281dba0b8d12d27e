/** The cooks' rows as SVG text. Hundreds of bars drawn as components took most of a second; parsed as one text they take
 *  a few milliseconds. Every word from outside goes through escape(). */
import type { Task } from '../answer';
import { bayGap, label, textWidth, type Geometry } from './geometry';
import type { Bar, Bay, DishMark, Row } from './scene';

export interface Look {
  bays: Bay[];
  geometry: Geometry;
  tops: Map<string, number>;
  bayTops: number[];
  marks: Map<string, DishMark>;
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

interface Inked {
  ink: string;
  hatch: string;
  tag: string;
}

function inked(task: Task, look: Look): Inked {
  const mark = task.dish === null ? undefined : look.marks.get(task.dish);
  return {
    ink: mark ? `var(--dish-${mark.ink})` : 'var(--ink)',
    hatch: `url(#${look.uid}-watch-${mark?.ink ?? 0})`,
    // One dish for all: its tag on every bar would say nothing.
    tag: look.marks.size === 1 ? '' : (mark?.tag ?? ''),
  };
}

const rect = (x: number, y: number, width: number, height: number, rest: string): string =>
  `<rect x="${px(x)}" y="${px(y)}" width="${px(width)}" height="${px(height)}" ${rest}/>`;

function pattern(
  task: Task,
  { ink, hatch }: Inked,
  x: number,
  y: number,
  width: number,
  height: number,
  uid: string,
): string {
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

function words(task: Task, { ink, tag }: Inked, x: number, y: number, width: number, height: number): string {
  const shift = task.pattern === 'grown' ? 12 : 4;
  const said = label(tag, task.short, width - shift + 4);
  if (!said) return '';
  const onPlate = task.pattern === 'watch' || task.pattern === 'clean';
  const plate = onPlate ? rect(x + shift - 2, y + 1, textWidth(said, 11) + 3, height - 2, 'fill="var(--card)"') : '';
  const fill =
    task.pattern === 'hands' || task.pattern === 'grown' ? '#fff' : task.pattern === 'clean' ? 'var(--ink)' : ink;
  return `${plate}<text x="${px(x + shift)}" y="${px(y + height / 2 + 4)}" font-size="11" font-weight="600" fill="${fill}">${escape(said)}</text>`;
}

/** A pin stuck in where the step begins. */
const pin = (x: number, y: number): string =>
  `<path d="M${px(x + 1)} ${px(y + 8)}V${px(y)}" stroke="var(--beetroot)" stroke-width="1.6"/>` +
  `<circle cx="${px(x + 1)}" cy="${px(y)}" r="3.2" fill="var(--beetroot)" stroke="var(--card)" stroke-width="1"/>`;

function bar(one: Bar, rowY: number, look: Look): string {
  const { geometry, now, uid } = look;
  const { task } = one;
  const x = geometry.x(one.from) + 0.5;
  const width = Math.max(1.5, geometry.x(one.to) - geometry.x(one.from) - 1);
  const look1 = inked(task, look);
  const past = now !== null && task.to <= now;
  let shape: string;
  if (one.foot) {
    shape = rect(x, rowY + 3 + geometry.barHeight, width, 2.6, `fill="${look1.ink}"`);
  } else {
    const part = geometry.barHeight / one.tracks;
    const y = rowY + 3 + one.track * part;
    const height = one.tracks > 1 ? part - 0.8 : part;
    shape = pattern(task, look1, x, y, width, height, uid);
    if (one.named && !past && one.tracks === 1) shape += words(task, look1, x, y, width, height);
  }
  if (task.pinned && one.from === task.from) shape += pin(x, rowY + 3);
  // A task in several pieces is one button: the piece with its name.
  const spoken = one.named
    ? `role="button" tabindex="-1" aria-pressed="false" aria-label="${escape(look.described(task))}"`
    : 'aria-hidden="true"';
  return `<g class="bar${past ? ' past' : ''}" data-task="${task.id}" ${spoken}>${shape}</g>`;
}

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
