/** What a step waits for and what waits for it, read off a plan: the steps its dish puts before it, and whoever had the
 *  hands, the adult, the kit, the sink or the cooker until the minute it begins. */
import { isBusy, type Lesson, type Task } from '../answer';

export type LinkKind = 'step' | 'own' | 'adult' | 'kit' | 'sink' | 'cooker';
export interface Link {
  kind: LinkKind;
  /** The other step. */
  task: Task;
}

/** The steps that the dish's method puts before a step; undefined where the method is not known. */
export type Follows = (dish: string, step: string) => string[] | undefined;

/** What two steps cannot both have; the strongest reason first. */
function shared(a: Task, b: Task): LinkKind | null {
  if (a.adult !== null && a.adult === b.adult && (a.cook !== b.cook || a.cook === null)) return 'adult';
  if (a.kit !== null && a.kit === b.kit && a.kitUnits.some((unit) => b.kitUnits.includes(unit))) return 'kit';
  if (a.cook !== null && a.cook === b.cook) return isBusy(a) && isBusy(b) ? 'own' : null;
  if (a.cooker !== null && a.cooker === b.cooker && a.inOven === b.inOven) return 'cooker';
  if (a.sinkBay !== null && a.sinkBay === b.sinkBay) return 'sink';
  return null;
}

/** True if `before` comes before `after` in the method of one cook's dish. */
function byMethod(before: Task, after: Task, follows: Follows): boolean {
  if (before.cook !== after.cook || before.dish !== after.dish) return false;
  if (before.dish === null || before.step === null || after.step === null) return false;
  return follows(before.dish, after.step)?.includes(before.step) ?? false;
}

const strength: LinkKind[] = ['step', 'own', 'adult', 'kit', 'cooker', 'sink'];
const most = 4;

function tidy(links: Link[]): Link[] {
  const seen = new Set<LinkKind>();
  return links
    .sort((a, b) => strength.indexOf(a.kind) - strength.indexOf(b.kind) || b.task.to - a.task.to)
    .filter(({ kind }) => kind === 'step' || (!seen.has(kind) && seen.add(kind)))
    .slice(0, most);
}

/** What `task` waits for. Steps of the method count whenever they ended; the rest only when `task` begins the minute they
 *  end, because only then did it wait. */
export function waitsFor(lesson: Lesson, task: Task, follows: Follows): Link[] {
  const links: Link[] = [];
  for (const other of lesson.tasks) {
    if (other === task || other.to > task.from) continue;
    if (byMethod(other, task, follows)) links.push({ kind: 'step', task: other });
    else if (other.to === task.from) {
      const kind = shared(other, task);
      if (kind) links.push({ kind, task: other });
    }
  }
  return tidy(links);
}

/** What waits for `task`, by the same rules. */
export function waitingFor(lesson: Lesson, task: Task, follows: Follows): Link[] {
  const links: Link[] = [];
  for (const other of lesson.tasks) {
    if (other === task || other.from < task.to) continue;
    if (byMethod(task, other, follows)) links.push({ kind: 'step', task: other });
    else if (other.from === task.to) {
      const kind = shared(task, other);
      if (kind) links.push({ kind, task: other });
    }
  }
  return tidy(links);
}
