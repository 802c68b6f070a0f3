/** The Worker's whole program: tasks come in, replies go out. It touches nothing else. */

import type { CompiledNotebook } from '../notebook/run.ts';
import { jobAnswerer } from './job.ts';
import type { Job, NumberedReply } from './messages.ts';

/** The part of a Worker's global scope that is used here. */
export interface WorkerScope {
  onmessage: ((event: { readonly data: Job }) => void) | null;
  postMessage(message: NumberedReply): void;
}

/** Does every task that comes in; the page asks for the next when one is over. */
export function serveJobs(scope: WorkerScope, notebook: CompiledNotebook): void {
  const answer = jobAnswerer(notebook);
  scope.onmessage = ({ data }) => {
    void answer(data, (reply) => scope.postMessage({ number: data.number, reply }));
  };
}
