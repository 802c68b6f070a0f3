/** Paper to draw on outside a browser: a document by linkedom, with the drawing library loaded. */
import { loadPlot } from './sheet.ts';

/**
 * A document for `figure.draw` in Node. Both libraries are loaded here, not before. In a browser draw into the page's
 * own document instead, after `loadPlot()`.
 */
export async function openPaper(): Promise<Document> {
  const [{ parseHTML }] = await Promise.all([import('./parse-html.ts'), loadPlot()]);
  return parseHTML('<!doctype html><html><body></body></html>').document;
}
