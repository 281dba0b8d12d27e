import { describe, expect, it } from 'vitest';
import type { Step } from './dish';
import { moveBy, moveIn, moveOut, outline, withoutStep, withStep } from './outline';

const step = (id: string, attention = 'hands', follows?: Step['follows']): Step => ({
  id,
  do: `${id}.`,
  minutes: 5,
  attention,
  ...(follows ? { follows } : {}),
});
const shape = (method: Step[]): string[] =>
  outline(method).map(({ step: { id }, depth }) => `${'>'.repeat(depth)}${id}`);

const dhal = [step('chop'), step('simmer', 'glance'), step('roll'), step('serve')];

describe('a method as an indented list', () => {
  it('is one line when every step follows the one above', () => {
    expect(shape(dhal)).toEqual(['chop', 'simmer', 'roll', 'serve']);
  });

  it('moves a step in: it begins with what cooks above it, and the next waits for both', () => {
    const moved = moveIn(dhal, 'roll');
    expect(shape(moved)).toEqual(['chop', 'simmer', '>roll', 'serve']);
    expect(moved[2]?.follows).toEqual([{ step: 'simmer', from: 'start' }]);
    expect(new Set(moved[3]?.follows)).toEqual(new Set(['roll', 'simmer']));
  });

  it('moves it out again, and serving still waits for both', () => {
    const back = moveOut(moveIn(dhal, 'roll'), 'roll');
    expect(shape(back)).toEqual(['chop', 'simmer', 'roll', 'serve']);
    expect(back[2]?.follows).toEqual(['simmer']);
  });

  it('moves a second step in behind the first', () => {
    const both = moveIn(moveIn([...dhal.slice(0, 3), step('cook'), step('serve')], 'roll'), 'cook');
    expect(shape(both)).toEqual(['chop', 'simmer', '>roll', '>cook', 'serve']);
  });

  it('keeps what the step waits for besides', () => {
    const two = [step('chop', 'hands', []), step('simmer', 'glance', []), step('stir', 'hands', ['simmer', 'chop'])];
    expect(moveIn(two, 'stir')[2]?.follows).toEqual(['chop', { step: 'simmer', from: 'start' }]);
  });

  it('reads a method with strands of its own', () => {
    const fishcakes = [
      step('peel', 'hands', []),
      step('boil', 'glance', ['peel']),
      step('flake', 'hands', []),
      step('mash', 'hands', ['boil']),
      step('form', 'hands', ['mash', 'flake']),
    ];
    expect(shape(fishcakes)).toEqual(['peel', 'boil', '>flake', 'mash', 'form']);
  });

  it('turns two steps round: the first now follows the second', () => {
    const turned = moveBy([step('a'), step('b'), step('c')], 'b', -1);
    expect(turned.map(({ id, follows }) => [id, follows])).toEqual([
      ['b', []],
      ['a', ['b']],
      ['c', ['a']],
    ]);
  });

  it('leaves the list as it is at its ends', () => {
    expect(moveBy(dhal, 'chop', -1).map(({ id }) => id)).toEqual(dhal.map(({ id }) => id));
    expect(moveBy(dhal, 'serve', 1).map(({ id }) => id)).toEqual(dhal.map(({ id }) => id));
  });

  it('closes the gap when a step is taken out', () => {
    expect(withoutStep(moveIn(dhal, 'roll'), 'roll')[2]?.follows).toEqual(['simmer']);
    expect(withoutStep(dhal, 'simmer')[1]?.follows).toEqual(['chop']);
  });

  it('adds at the end', () => {
    expect(withStep(dhal, step('wash')).at(-1)?.follows).toEqual(['serve']);
  });
});
