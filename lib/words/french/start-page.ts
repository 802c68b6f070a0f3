/** What the start page of a site says. */
import { counted } from './numbers.ts';

export const startPage = {
  about: (flowers: number, vials: number, invented: boolean): string =>
    `Ces pages sont faites à partir de ${counted(flowers, 'fleur')}${vials === 0 ? '' : ` et de ${counted(vials, 'tube')}`}.` +
    `${invented ? ' La collection, ses plantes et ses gens sont inventés.' : ''} Commencer par la première ; les autres regardent de plus près.`,
  nothingToDownload: 'Il n’y a rien à télécharger.',
};
