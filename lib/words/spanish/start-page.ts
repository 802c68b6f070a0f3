/** What the start page says of the pages and files beside it. */

import { flowersIn, vialsIn } from './nouns.ts';

export const startPage = {
  about: (flowers: number, vials: number, invented: boolean): string =>
    `Estas páginas se han hecho a partir de ${flowersIn(flowers)}${vials === 0 ? '' : ` y ${vialsIn(vials)}`}.` +
    `${invented ? ' La colección, sus plantas y sus personas son inventadas.' : ''} Empiece por la primera; las otras miran más de cerca.`,
  nothingToDownload: 'No hay nada que descargar.',
};
