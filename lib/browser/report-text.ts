import { plainPaper } from '../charts/plain-paper.ts';
import { loadPlot } from '../charts/sheet.ts';
import { drawnParts, framedPage } from '../notebook/page.ts';
import type { CompiledNotebook, Given } from '../notebook/run.ts';
import { runNotebook } from '../notebook/run.ts';

/** A finished report, whole and in parts. */
export interface DrawnReport {
  /** The file that the command writes. */
  readonly text: string;
  /** Its list of contents and its sections, to be shown one after another. */
  readonly parts: readonly string[];
}

/**
 * The report of a season, drawn without any document.
 *
 * @param notebook the compiled season review, or a part of it
 * @param given season and analysis
 * @throws NotebookError naming the notebook's line where a cell fails
 */
export async function drawnReport(notebook: CompiledNotebook, given: Given): Promise<DrawnReport> {
  await loadPlot();
  const filled = await runNotebook(notebook, given);
  const drawn = drawnParts(filled, plainPaper());
  return {
    text: framedPage(filled, drawn),
    parts: [drawn.contents, ...drawn.sections].filter((part) => part !== ''),
  };
}
