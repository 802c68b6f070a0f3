/** What the start page says of the pages and files beside it. */

import { counted } from './numbers.ts';

/** Its sentences. */
export const startPage = {
  about: (flowers: number, vials: number, invented: boolean): string =>
    `These pages are made from ${counted(flowers, 'flower')}${vials === 0 ? '' : ` and ${counted(vials, 'vial')}`}.` +
    `${invented ? ' The collection, its plants and its people are invented.' : ''} Begin with the first; the others look closer.`,
  nothingToDownload: 'There is nothing to download.',
};
