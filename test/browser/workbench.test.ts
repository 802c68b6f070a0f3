import { describe, expect, it } from 'vitest';
import type { Job, NumberedReply, Reply } from '../../lib/browser/messages.ts';
import { type WorkerLike, workbench } from '../../lib/browser/workbench.ts';

interface FakeWorker extends WorkerLike {
  readonly jobs: Job[];
  ended: boolean;
  readonly say: (reply: Reply, number?: number) => void;
}

function fakes() {
  const made: FakeWorker[] = [];
  const start = (): WorkerLike => {
    const worker: FakeWorker = {
      ...{ onmessage: null, onerror: null, jobs: [], ended: false },
      postMessage: (job) => void worker.jobs.push(job),
      terminate: () => {
        worker.ended = true;
      },
      say: (reply, number = worker.jobs.at(-1)!.number) =>
        worker.onmessage?.({ data: { number, reply } satisfies NumberedReply }),
    };
    made.push(worker);
    return worker;
  };
  return { made, start };
}

const reading: Omit<Job, 'number'> = {
  sources: [],
  read: { endpoint: 'initial', map: [] },
  analyse: null,
  wishes: {},
  share: null,
};
const analysing = { ...reading, analyse: {} };
const stage: Reply = { kind: 'stage', stage: 'reading' };
const fault: Reply = { kind: 'fault', cause: 'x' };

describe('workbench', () => {
  it('may start its Worker before there is a task, which then does the first', () => {
    const { made, start } = fakes();
    const bench = workbench(start);
    bench.warm();
    expect([bench.busy(), made.length]).toEqual([false, 1]);
    bench.run(reading, () => {});
    expect(made).toHaveLength(1);
    const none = workbench(() => {
      throw new Error('no Worker');
    });
    expect(() => none.warm()).not.toThrow();
    expect(() => none.run(reading, () => {})).toThrow('no Worker');
  });

  it('keeps its Worker for the next task once a task is over', () => {
    const { made, start } = fakes();
    const bench = workbench(start);
    bench.run(reading, () => {});
    expect(bench.busy()).toBe(true);
    made[0]!.say({ kind: 'read', reading: {} as never });
    expect(bench.busy()).toBe(false);
    bench.run(analysing, () => {});
    made[0]!.say({ kind: 'read', reading: {} as never });
    expect(bench.busy()).toBe(true);
    expect(made).toHaveLength(1);
  });

  it('ends the Worker of a task that is stopped, or that another takes the place of', () => {
    const { made, start } = fakes();
    const bench = workbench(start);
    const heard: string[] = [];
    bench.run(analysing, ({ kind }) => void heard.push(`first ${kind}`));
    bench.run(analysing, ({ kind }) => void heard.push(`second ${kind}`));
    expect(made.map(({ ended }) => ended)).toEqual([true, false]);
    made[0]!.say(fault);
    made[1]!.say(stage);
    bench.stop();
    made[1]!.say(stage);
    expect(heard).toEqual(['second stage']);
    expect([bench.busy(), made[1]!.ended]).toEqual([false, true]);
  });

  it('does not listen to what an earlier task says late', () => {
    const { made, start } = fakes();
    const bench = workbench(start);
    const heard: Reply[] = [];
    bench.run(reading, () => {});
    made[0]!.say({ kind: 'read', reading: {} as never });
    bench.run(reading, (reply) => void heard.push(reply));
    made[0]!.say(stage, 1);
    expect(heard).toEqual([]);
  });

  it('tells that a Worker broke down, and begins the next task with a new one', () => {
    const { made, start } = fakes();
    const bench = workbench(start);
    const heard: Reply[] = [];
    bench.run(analysing, (reply) => void heard.push(reply));
    made[0]!.onerror?.({ message: 'out of memory', preventDefault: () => {} });
    expect(heard).toEqual([{ kind: 'fault', cause: 'out of memory' }]);
    expect(bench.busy()).toBe(false);
    bench.run(reading, () => {});
    expect(made).toHaveLength(2);
  });
});
