/** The school's own document: name, terms, bells, timetable, adults, suppliers, budget (demo/school.json). */
import { get, type Schemas } from '../api/client';
import { Kept } from '../api/documents.svelte';
import { addDays, daysBetween, moment, mondayOf, weekdayOf } from '../base/clock';

export const weekdays = ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'] as const;
export type Weekday = (typeof weekdays)[number];

export interface Period {
  name: string;
  /** "08:55" */
  from: string;
  to: string;
}
export interface BellSet {
  name: string;
  days: Weekday[];
  periods: Period[];
}
export interface Adult {
  name: string;
  leads?: boolean;
  /** Hazard words; whoever leads may watch everything. */
  may_watch?: string[];
}
export interface Van {
  /** ISO date; the end of that day. */
  order_by: string;
  /** ISO date; before that day's first lesson. */
  arrives: string;
}
export interface Supplier {
  name: string;
  /** Pounds as text: "4.50". */
  delivery?: string;
  minimum?: string;
  top_up?: boolean;
  vans?: Van[];
}
export interface Slot {
  /** 1 or 2. */
  week: number;
  day: Weekday;
  /** Name of a period. */
  period: string;
  class: string;
  room?: string;
}
export interface School {
  kind: 'school';
  version: 1;
  name: string;
  zone?: string;
  clock?: string;
  /** 1, or 2 for a timetable of two weeks. */
  weeks?: number;
  /** Of a timetable of two weeks: the Monday of a week that is week 1; the weeks take turns from there. */
  week_one?: string;
  terms?: { name: string; from: string; to: string }[];
  bells?: BellSet[];
  timetable?: Slot[];
  adults?: Adult[];
  suppliers?: Supplier[];
  budget?: { per_pupil?: string; week?: string; term?: string; spent_this_term?: string };
}

export const newSchool = (): School => ({ kind: 'school', version: 1, name: '', zone: 'Europe/London', weeks: 1 });

/** The school, or null when nothing is kept of it yet. @throws Refusal */
export async function readSchool(): Promise<Kept<School> | null> {
  const all = (await get<{ documents: Schemas['Summary'][] }>('/api/documents/school')).body.documents;
  const first = all[0];
  return first ? Kept.read<School>('school', first.id) : null;
}

/** The periods of a day: of the first set of bells that has the day. */
export function periodsOn(school: School, day: Weekday): Period[] {
  return school.bells?.find((set) => set.days.includes(day))?.periods ?? [];
}

/** Every time from one bell to another that the school has, the day's own first, each once. */
export function bellTimes(school: School, day: Weekday): Period[] {
  const all = [...periodsOn(school, day), ...(school.bells ?? []).flatMap((set) => set.periods)];
  return all.filter((period, i) => all.findIndex((one) => one.from === period.from && one.to === period.to) === i);
}

/** The week of the timetable a day lies in: 1 or 2; null when nobody has said which week it is. */
export function weekOf(school: School, day: string): number | null {
  if (school.weeks !== 2) return 1;
  if (!school.week_one) return null;
  const weeks = daysBetween(mondayOf(school.week_one), mondayOf(day)) / 7;
  return Math.abs(weeks) % 2 === 0 ? 1 : 2;
}

/** A lesson the timetable has on a day. */
export interface Timetabled {
  day: string;
  class: string;
  period: Period;
}

/** The lessons of the timetable that have not ended at that minute of `today`, soonest first, for two weeks. Outside the
 *  terms, where the school has written them down, there are none. */
export function lessonsFrom(school: School, today: string, minute: number): Timetabled[] {
  const inTerm = (day: string): boolean =>
    !school.terms?.length || school.terms.some((term) => term.from <= day && day <= term.to);
  const out: Timetabled[] = [];
  for (let ahead = 0; ahead < 14; ahead += 1) {
    const day = addDays(today, ahead);
    const weekday = weekdays[weekdayOf(day)] ?? 'Mon';
    const week = weekOf(school, day);
    if (!inTerm(day)) continue;
    for (const period of periodsOn(school, weekday)) {
      const slot = school.timetable?.find(
        (one) => one.week === week && one.day === weekday && one.period === period.name,
      );
      if (slot && (ahead > 0 || moment(period.to).minutes > minute)) out.push({ day, class: slot.class, period });
    }
  }
  return out;
}

/** "4.50" as pence; null for what is no amount of pounds. */
export function pence(text: string | undefined): number | null {
  const found = /^£?\s*(\d{1,6})(?:[.,](\d{1,2}))?$/.exec((text ?? '').trim());
  if (!found) return null;
  return Number(found[1]) * 100 + Number((found[2] ?? '0').padEnd(2, '0'));
}
export function pounds(all: number): string {
  const whole = Math.round(all);
  return `${whole < 0 ? '-' : ''}£${Math.floor(Math.abs(whole) / 100)}.${String(Math.abs(whole) % 100).padStart(2, '0')}`;
}
/** As a document writes it: "4.50", or undefined for an empty field. What is no amount stays as typed, to be mended. */
export function moneyText(typed: string): string | undefined {
  const amount = pence(typed);
  if (amount !== null) return pounds(amount).slice(1);
  return typed.trim() || undefined;
}
