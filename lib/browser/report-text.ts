import { loadPlot } from '../charts/sheet.ts';
import { drawnPieces, framedPage } from '../notebook/page.ts';
import type { CompiledNotebook, Given } from '../notebook/run.ts';
import { runNotebook } from '../notebook/run.ts';

/** Lets the browser answer its reader before work goes on. */
export type Pause = () => Promise<void>;

/**
 * The finished report of a season: the text that the command writes, drawn in the page's own document, with a pause
 * after each drawing.
 *
 * @param notebook the compiled season review
 * @param given season and analysis
 * @param paper document to draw in; nothing is added to it
 * @throws NotebookError naming the notebook's line where a cell fails
 */
export async function reportText(
  notebook: CompiledNotebook,
  given: Given,
  paper: Document,
  pause: Pause,
): Promise<string> {
  await loadPlot();
  await pause();
  const filled = await runNotebook(notebook, given);
  await pause();
  const pieces: string[] = [];
  for (const piece of drawnPieces(filled, paper)) {
    pieces.push(piece);
    if (piece.startsWith('<figure')) await pause();
  }
  return framedPage(filled, pieces.join(''));
}
