/** Starts long work and follows it: the event stream says how it goes, and asking now and then covers a stream that a
 *  wireless network swallowed. */
import { address, get, post, Refusal, remove, type Problem, type Schemas } from './client';
import { hear } from './stream';

type Job = Schemas['Job'];
const askEvery = 1000; // ms

const over = (job: Job): boolean => job.state === 'done' || job.state === 'stopped' || job.state === 'failed';

/** One piece of planning as a page shows it. */
export class Work {
  job = $state.raw<Job | null>(null);

  get busy(): boolean {
    return this.job !== null && !over(this.job);
  }

  /** Starts planning and gives the finished job. @throws Refusal */
  async plan(wanted: Schemas['PlanWanted']): Promise<Job> {
    const started = (await post<Job>('/api/plan', { body: wanted })).body;
    this.job = started;
    const done = await this.#follow(started);
    if (done.state === 'failed') throw new Refusal(422, done.problems ?? ([] as Problem[]));
    return done;
  }

  #follow(started: Job): Promise<Job> {
    if (over(started)) return Promise.resolve(started);
    return new Promise((resolve, reject) => {
      const take = (job: Job): void => {
        if (job.job !== started.job) return;
        this.job = job;
        if (!over(job)) return;
        clearInterval(clock);
        deaf();
        resolve(job);
      };
      const deaf = hear('job', take);
      const clock = setInterval(() => {
        get<Job>(address(['jobs', started.job])).then(
          ({ body }) => take(body),
          (fault: unknown) => {
            if (fault instanceof Refusal && fault.status === 0) return; // no connection just now: ask again
            clearInterval(clock);
            deaf();
            reject(fault instanceof Error ? fault : new Error(String(fault)));
          },
        );
      }, askEvery);
    });
  }

  /** Stops it; the best plan so far is kept, and plan() then gives it. */
  async stop(): Promise<void> {
    if (this.job) this.job = (await remove<Job>(address(['jobs', this.job.job]))).body;
  }
}
