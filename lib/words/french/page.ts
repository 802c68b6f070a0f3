/** Words of a page's frame. */

export const pageWords = {
  skip: 'Passer la table des matières',
  contents: 'Table des matières',
  allPages: 'Toutes les pages',
  working: 'Le calcul de cette partie, en code',
  numbers: 'Les nombres de ce graphique',
  /** Before the names of the languages that a page can be read in. */
  otherLanguages: 'Cette page dans une autre langue',
};
