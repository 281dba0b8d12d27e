import { describe, expect, it } from 'vitest';
import { bellTimes, lessonsFrom, moneyText, newSchool, pence, periodsOn, pounds, weekOf, type School } from './school';

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

  // 2026-11-16 is a Monday.
  const morning = { name: '1', from: '09:00', to: '10:00' };
  const noon = { name: '2', from: '11:00', to: '12:00' };
  const timetabled: School = {
    ...newSchool(),
    weeks: 2,
    week_one: '2026-11-16',
    bells: [{ name: 'Usual', days: ['Mon', 'Tue'], periods: [morning, noon] }],
    timetable: [
      { week: 1, day: 'Mon', period: '1', class: '7B' },
      { week: 1, day: 'Mon', period: '2', class: '9K' },
      { week: 2, day: 'Tue', period: '1', class: '8P' },
    ],
  };

  it('takes the weeks of a two-week timetable in turn from the one that was named', () => {
    expect(
      ['2026-11-16', '2026-11-22', '2026-11-23', '2026-11-30', '2026-11-09'].map((d) => weekOf(timetabled, d)),
    ).toEqual([1, 1, 2, 1, 2]);
    expect(weekOf({ ...timetabled, week_one: undefined }, '2026-11-16')).toBeNull();
    expect(weekOf({ ...timetabled, weeks: 1 }, '2026-11-24')).toBe(1);
  });

  it('finds the lesson that is on, and those that come after it', () => {
    const at = (day: string, minute: number): string[] =>
      lessonsFrom(timetabled, day, minute).map((one) => `${one.class} ${one.day} ${one.period.from}`);
    expect(at('2026-11-16', 9 * 60 + 30)).toEqual([
      '7B 2026-11-16 09:00',
      '9K 2026-11-16 11:00',
      '8P 2026-11-24 09:00',
    ]);
    expect(at('2026-11-16', 10 * 60)[0]).toBe('9K 2026-11-16 11:00');
    expect(at('2026-11-17', 9 * 60)).toEqual(['8P 2026-11-24 09:00', '7B 2026-11-30 09:00', '9K 2026-11-30 11:00']);
  });

  it('knows no lesson outside the terms, nor in a week that nobody has named', () => {
    const terms = [{ name: 'Autumn', from: '2026-09-03', to: '2026-11-20' }];
    expect(lessonsFrom({ ...timetabled, terms }, '2026-11-17', 0)).toEqual([]);
    expect(lessonsFrom({ ...timetabled, week_one: undefined }, '2026-11-16', 0)).toEqual([]);
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
