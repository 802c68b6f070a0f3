/** What the crossing sheet says beside its lines. */

export const crossingSheetPage = {
  caption: 'Une ligne par fleur ; cocher quand l’étiquette est attachée',
  columns: ['Étiquette', 'Fleur de', 'Pollen de'],
  file: 'La feuille comme fichier de croisements, à remplir (CSV)',
  noFlower: 'Il n’y a aucune fleur à étiqueter.',
  /** Before the blank for the day on a tag. */
  tagDay: 'le',
};
