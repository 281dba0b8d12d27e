import { describe, expect, it } from 'vitest';
import { bellTimes, moneyText, newSchool, pence, periodsOn, pounds } from './school';

describe('the school', () => {
  it('reads pounds as they are typed and writes them with two figures', () => {
    expect(['4.50', '£4.5', '4', ' 12,05 ', 'four', '', '1.234'].map(pence)).toEqual([
      450,
      450,
      400,
      1205,
      null,
      null,
      null,
    ]);
    expect([0, 5, 450, 123456, -70].map(pounds)).toEqual(['£0.00', '£0.05', '£4.50', '£1234.56', '-£0.70']);
    expect([moneyText('4'), moneyText(' '), moneyText('about 4')]).toEqual(['4.00', undefined, 'about 4']);
  });

  it('finds the periods of a day in the set of bells that has it', () => {
    const friday = { name: 'Short', days: ['Fri' as const], periods: [{ name: '1', from: '09:00', to: '09:50' }] };
    const school = { ...newSchool(), bells: [{ name: 'Usual', days: ['Mon' as const], periods: [] }, friday] };
    expect(periodsOn(school, 'Fri')).toEqual(friday.periods);
    expect(periodsOn(school, 'Sun')).toEqual([]);
  });

  it('offers the bells of the day first, and each time once', () => {
    const one = { name: '1', from: '09:00', to: '09:50' };
    const two = { name: '1', from: '09:05', to: '10:05' };
    const school = {
      ...newSchool(),
      bells: [
        { name: 'Usual', days: ['Mon' as const], periods: [two, one] },
        { name: 'Short', days: ['Fri' as const], periods: [one] },
      ],
    };
    expect(bellTimes(school, 'Fri')).toEqual([one, two]);
    expect(bellTimes(newSchool(), 'Fri')).toEqual([]);
  });
});
