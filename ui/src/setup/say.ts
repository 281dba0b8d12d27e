/** Each part of Setup in a sentence. `join` puts a list into words. */
import { t, type Key } from '../words/words.svelte';
import { pence, pounds, weekdays, type School } from './school';

type Join = (items: string[]) => string;

/** "Mon" in the language chosen; 2026-01-05 is a Monday. */
export function dayName(day: (typeof weekdays)[number], name: (iso: string) => string): string {
  return name(`2026-01-${String(5 + weekdays.indexOf(day)).padStart(2, '0')}`);
}

export function bellsSay(school: School): string {
  const sets = school.bells ?? [];
  if (sets.length === 0) return t('setup.bells.none');
  const days = weekdays.filter((day) => sets.some((set) => set.days.includes(day)));
  return t('setup.bells.says', { n: sets.length, days: days.join(' ') });
}

export function timetableSays(school: School): string {
  const n = school.timetable?.length ?? 0;
  if (n === 0) return t('setup.timetable.none');
  return t('setup.timetable.says', { n, weeks: t('setup.timetable.weeks', { n: school.weeks ?? 1 }) });
}

export function adultsSay(school: School, join: Join): string {
  const adults = school.adults ?? [];
  if (adults.length === 0) return t('setup.adults.none');
  const said = adults.map((adult) => {
    if (adult.leads || adults.length === 1) return t('setup.adults.leads', { name: adult.name });
    const may = (adult.may_watch ?? []).map((hazard) => t(`hazard.${hazard}` as Key));
    return may.length > 0
      ? t('setup.adults.watches', { name: adult.name, list: join(may) })
      : t('setup.adults.only', { name: adult.name });
  });
  return said.join('; ') + '.';
}

export function suppliersSay(school: School, join: Join): string {
  const names = (school.suppliers ?? []).map((supplier) => supplier.name);
  const week = pence(school.budget?.week);
  const first = names.length > 0 ? t('setup.suppliers.says', { list: join(names) }) : t('setup.suppliers.none');
  return week === null ? first : `${first} ${t('setup.budget.week', { money: pounds(week) })}`;
}
