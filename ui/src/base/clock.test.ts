import { describe, expect, it } from 'vitest';
import { addDays, clock, daysBetween, minutesOn, moment, mondayOf, readClock } from './clock';

describe('clock time', () => {
  it('reads local date-times and bare clock times', () => {
    expect(moment('2026-11-17T10:50:00')).toEqual({ day: '2026-11-17', minutes: 650 });
    expect(moment('10:50:00')).toEqual({ day: null, minutes: 650 });
    expect(() => moment('ten to eleven')).toThrow(RangeError);
  });

  it('counts on over midnight', () => {
    expect(minutesOn('2026-11-17', '2026-11-18T00:10:00')).toBe(1450);
    expect(clock(1450)).toBe('00:10');
  });

  it('writes noon and midnight as a twelve-hour clock does', () => {
    expect([clock(0, '12'), clock(720, '12'), clock(785, '12')]).toEqual(['12:00 am', '12:00 pm', '1:05 pm']);
  });

  it('reads what a teacher types', () => {
    expect(['9:05', '9.05', '0905', '905', '9', '13 40'].map(readClock)).toEqual([
      '09:05',
      '09:05',
      '09:05',
      '09:05',
      '09:00',
      '13:40',
    ]);
    expect(['25:00', '9:75', 'nine', ''].map(readClock)).toEqual([null, null, null, null]);
  });

  // ISO 8601: weeks begin on Monday. 29 March 2026 is the day clocks change in the UK: dates must not care.
  it('finds Mondays and counts days over a change of clocks', () => {
    expect(mondayOf('2026-03-29')).toBe('2026-03-23');
    expect(mondayOf('2026-03-23')).toBe('2026-03-23');
    expect(daysBetween('2026-03-23', '2026-03-30')).toBe(7);
    expect(addDays('2026-12-31', 1)).toBe('2027-01-01');
  });
});
