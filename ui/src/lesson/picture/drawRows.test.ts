// @vitest-environment jsdom
import { describe, expect, it } from 'vitest';
import { readAnswer } from '../answer';
import { drawRows, drawWords, escape, type Look } from './drawRows';
import { geometry, rowTops } from './geometry';
import { lessonOf, task } from './sample';
import { bays, dishInks, dishMarks } from './scene';

function look(...given: Parameters<typeof lessonOf>): Look {
  const lesson = readAnswer(lessonOf(...given));
  const grouped = bays(lesson);
  const size = geometry(lesson, 1, 1000);
  return {
    bays: grouped,
    geometry: size,
    ...rowTops(grouped, size.rowHeight),
    inks: dishInks(lesson),
    now: null,
    uid: 'p',
    described: (one) => `${one.cook ?? ''}: ${one.says}`,
  };
}

function drawn(...given: Parameters<typeof lessonOf>): SVGElement {
  const holder = document.createElementNS('http://www.w3.org/2000/svg', 'svg');
  holder.innerHTML = drawRows(look(...given));
  return holder;
}

describe('rows as text', () => {
  it('is one button a step, however many pieces it is in', () => {
    const svg = drawn([
      task({ start: '11:00', end: '11:30', attention: 'watch', step: 'simmer' }),
      task({ start: '11:10', end: '11:15', step: 'roll' }),
    ]);
    expect(svg.querySelectorAll('[data-task]')).toHaveLength(4);
    expect(svg.querySelectorAll('[role="button"]')).toHaveLength(2);
  });

  it('keeps what people type as text', () => {
    const name = '<script>alert("x")</script>';
    const svg = drawn([task({ cook: name, says: 'a & b', start: '11:00', end: '11:05' })], [[name, 'A1']]);
    expect(svg.querySelector('script')).toBeNull();
    expect(svg.querySelector('[role="button"]')?.getAttribute('aria-label')).toBe(`${name}: a & b`);
    expect(escape(`"'<>&`)).not.toMatch(/["'<>]/);
  });

  it('never draws a bar outside the picture, nor across the bell when it ends before it', () => {
    const given = look([task({ start: '10:50', end: '12:30', attention: 'leave' })]);
    const bars = [
      ...drawn([task({ start: '10:50', end: '12:30', attention: 'leave' })]).querySelectorAll('[data-task] rect'),
    ];
    const end = Math.max(...bars.map((one) => Number(one.getAttribute('x')) + Number(one.getAttribute('width'))));
    expect(end).toBeLessThanOrEqual(given.geometry.x(12 * 60 + 30));
    expect(end).toBeLessThan(1000);
  });

  it('lays words over the bars that have room for them, as text', () => {
    const given = look([
      task({ start: '11:00', end: '11:30', step: 'stir-<b>-well' }),
      task({ start: '11:40', end: '11:41', step: 'sieve' }),
    ]);
    const holder = document.createElementNS('http://www.w3.org/2000/svg', 'svg');
    holder.innerHTML = drawWords(
      given,
      dishMarks(given.inks, () => undefined),
    );
    expect([...holder.querySelectorAll('text')].map((one) => one.textContent)).toEqual(['Stir <b> well']);
    expect(holder.querySelector('b')).toBeNull();
  });
});
