import type { Job, NumberedReply, Reply } from './messages.ts';

/** The part of a Worker that the page uses. */
export interface WorkerLike {
  onmessage: ((event: { readonly data: NumberedReply }) => void) | null;
  onerror: ((event: { readonly message: string; preventDefault(): void }) => void) | null;
  postMessage(job: Job): void;
  terminate(): void;
}

/** Where tasks are done, one at a time. */
export interface Workbench {
  /** Whether a task is being done. */
  readonly busy: () => boolean;
  /** Starts a Worker before there is a task, so that the first one does not wait for it. */
  readonly warm: () => void;
  /** Begins a task; one that is still being done is stopped and says nothing more. */
  readonly run: (job: Omit<Job, 'number'>, listen: (reply: Reply) => void) => void;
  /** Stops the task at once. */
  readonly stop: () => void;
}

/** A task is over when one of these was said: all tasks with `read` where nothing is to be analysed. */
function isLast(job: Job, reply: Reply): boolean {
  if (reply.kind === 'read') return job.analyse === null;
  return ['done', 'shared', 'refused', 'fault'].includes(reply.kind);
}

/**
 * A workbench on Workers that `start` makes. A Worker is kept for the next task and ended where its task is stopped,
 * since nothing else stops a calculation.
 *
 * @param start makes a Worker; may throw where the browser has none
 */
export function workbench(start: () => WorkerLike): Workbench {
  let worker: WorkerLike | null = null;
  let current: { readonly job: Job; readonly listen: (reply: Reply) => void } | null = null;
  let number = 0;

  const stop = (): void => {
    if (current === null) return;
    worker?.terminate();
    [worker, current] = [null, null];
  };
  const tell = (from: number, reply: Reply): void => {
    if (current === null || current.job.number !== from) return;
    const { job, listen } = current;
    if (isLast(job, reply)) current = null;
    listen(reply);
  };
  const begin = (): WorkerLike => {
    const made = start();
    made.onmessage = ({ data }) => tell(data.number, data.reply);
    made.onerror = (event) => {
      event.preventDefault();
      if (worker !== made) return;
      const from = current?.job.number ?? 0;
      tell(from, { kind: 'fault', cause: event.message });
      made.terminate();
      if (worker === made) worker = null;
    };
    return made;
  };
  return {
    busy: () => current !== null,
    stop,
    warm: () => {
      try {
        worker ??= begin();
      } catch {
        // The first task tries again, and says so.
      }
    },
    run: (job, listen) => {
      stop();
      number += 1;
      current = { job: { ...job, number }, listen };
      worker ??= begin();
      worker.postMessage(current.job);
    },
  };
}
