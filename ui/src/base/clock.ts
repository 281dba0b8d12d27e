/** Clock time as plain minutes. The program sends local date-times ("2026-11-17T10:50:00") or, for a lesson without a
 *  date, the clock alone ("10:50:00"); pages reckon in minutes after midnight of the lesson's day and never in Date
 *  objects, because a lesson has no time zone but the bell's. */

export interface Moment {
  /** ISO date, or null for a lesson without one. */
  day: string | null;
  /** Minutes after midnight of that day, whole. Seconds are dropped: nothing on a page speaks of seconds. */
  minutes: number;
}

const shape = /^(?:(\d{4}-\d{2}-\d{2})T)?(\d{2}):(\d{2})(?::\d{2})?$/;

/** @throws RangeError if the text is no moment. */
export function moment(text: string): Moment {
  const found = shape.exec(text);
  if (!found) throw new RangeError(`not a clock time: "${text}"`);
  return { day: found[1] ?? null, minutes: Number(found[2]) * 60 + Number(found[3]) };
}

/** Days from one ISO date to another; negative when `to` is earlier. */
export function daysBetween(from: string, to: string): number {
  return Math.round((Date.parse(`${to}T00:00:00Z`) - Date.parse(`${from}T00:00:00Z`)) / 86_400_000);
}

/** Minutes after midnight of `day`; a moment on the next day is 1440 and more. */
export function minutesOn(day: string | null, text: string): number {
  const at = moment(text);
  return day && at.day ? daysBetween(day, at.day) * 1440 + at.minutes : at.minutes;
}

/** The same to the second: for what ends just before or just after the bell. */
export function exactMinutesOn(day: string | null, text: string): number {
  return minutesOn(day, text) + Number(/^.*:\d{2}:(\d{2})$/.exec(text)?.[1] ?? 0) / 60;
}

export type Hours = '24' | '12';

/** "09:05", or "9:05 am". Midnight of a later day wraps. */
export function clock(minutes: number, hours: Hours = '24'): string {
  const whole = ((Math.round(minutes) % 1440) + 1440) % 1440;
  const hour = Math.floor(whole / 60);
  const rest = String(whole % 60).padStart(2, '0');
  if (hours === '24') return `${String(hour).padStart(2, '0')}:${rest}`;
  return `${((hour + 11) % 12) + 1}:${rest} ${hour < 12 ? 'am' : 'pm'}`;
}

/** "9:05", "9.05", "0905", "905" and "9" as a teacher types them, as "09:05"; null if it is no time. */
export function readClock(typed: string): string | null {
  const text = typed.trim();
  const found = /^(\d{1,2})[:.h ](\d{2})$/.exec(text) ?? /^(\d{1,2})(\d{2})$/.exec(text) ?? /^(\d{1,2})()$/.exec(text);
  if (!found) return null;
  const hour = Number(found[1]);
  const minute = Number(found[2] || 0);
  if (hour > 23 || minute > 59) return null;
  return `${String(hour).padStart(2, '0')}:${String(minute).padStart(2, '0')}`;
}

/** The next ISO date `days` later. */
export function addDays(day: string, days: number): string {
  return new Date(Date.parse(`${day}T00:00:00Z`) + days * 86_400_000).toISOString().slice(0, 10);
}

/** 0 for a Monday to 6 for a Sunday. */
export function weekdayOf(day: string): number {
  return (new Date(`${day}T00:00:00Z`).getUTCDay() + 6) % 7;
}

/** Monday of the week a day lies in. */
export function mondayOf(day: string): string {
  return addDays(day, -weekdayOf(day));
}
