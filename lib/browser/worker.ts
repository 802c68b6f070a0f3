/** The Worker's whole program: tasks come in, replies go out. It touches nothing else. */

import { answerJob } from './job.ts';
import type { Job, NumberedReply } from './messages.ts';

/** The part of a Worker's global scope that is used here. */
export interface WorkerScope {
  onmessage: ((event: { readonly data: Job }) => void) | null;
  postMessage(message: NumberedReply): void;
}

/** Does every task that comes in. */
export function serveJobs(scope: WorkerScope): void {
  scope.onmessage = ({ data }) => {
    answerJob(data, (reply) => scope.postMessage({ number: data.number, reply }));
  };
}
