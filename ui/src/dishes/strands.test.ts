import { describe, expect, it } from 'vitest';
import { layout, type Strand } from './strands';

const strand = (step: string, follows: string[], from: number, to: number): Strand => ({
  step,
  says: step,
  short: step,
  lane: 0,
  from,
  to,
  attention: 'hands',
  follows,
  heat: '',
});

const fishcakes = [
  strand('peel', [], 0, 6),
  strand('boil', ['peel'], 6, 19),
  strand('flake', [], 6, 10),
  strand('mash', ['boil'], 19, 22),
  strand('form', ['mash', 'flake'], 22, 29),
  strand('salsa', [], 29, 36),
  strand('serve', ['form', 'salsa'], 36, 39),
];

describe('a method as strands that meet', () => {
  const drawing = layout(fishcakes);
  const of = (step: string) => drawing.steps.find((one) => one.strand.step === step);

  it('runs the longest strand along the top', () => {
    expect(['peel', 'boil', 'mash', 'form', 'serve'].map((step) => of(step)?.lane)).toEqual([0, 0, 0, 0, 0]);
    expect(drawing.lanes).toBe(3);
  });

  it('lets side strands end right before what needs them', () => {
    expect(of('flake')?.column).toBe((of('form')?.column ?? 0) - 1);
    expect(of('salsa')?.column).toBe((of('serve')?.column ?? 0) - 1);
  });

  it('draws every wait, always to the right', () => {
    expect(drawing.joins).toHaveLength(6);
    for (const { from, to } of drawing.joins) expect(from.column).toBeLessThan(to.column);
  });

  it('lays the strand that joins first next to the top', () => {
    expect([of('flake')?.lane, of('salsa')?.lane]).toEqual([1, 2]);
  });

  it('never puts two steps on one spot', () => {
    expect(new Set(drawing.steps.map((one) => `${one.lane}/${one.column}`)).size).toBe(fishcakes.length);
  });

  it('survives a draft whose steps follow each other in a circle', () => {
    expect(layout([strand('a', ['b'], 0, 1), strand('b', ['a'], 1, 2)]).steps).toHaveLength(2);
  });
});
