/** The text of a PDF, page by page, with every space taken out: lines break where they like. */

import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';

export async function pdfPages(bytes: Uint8Array): Promise<string[]> {
  const loading = getDocument({ data: new Uint8Array(bytes), verbosity: 0 });
  const pdf = await loading.promise;
  const pages: string[] = [];
  for (let number = 1; number <= pdf.numPages; number += 1) {
    const { items } = await (await pdf.getPage(number)).getTextContent();
    pages.push(bare(items.map((item) => ('str' in item ? item.str : '')).join('')));
  }
  await loading.destroy();
  return pages;
}

/** Text as it is compared: without spaces, ligatures taken apart. */
export function bare(text: string): string {
  return text.normalize('NFKC').replace(/\s+/gu, '');
}
