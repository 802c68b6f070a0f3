/** What the crossing sheet says in its table and on its tags. */

export const crossingSheetPage = {
  caption: 'Una línea por flor; márquela cuando cuelgue la etiqueta',
  columns: ['Etiqueta', 'Flor en', 'Polen de'],
  file: 'La hoja como archivo de cruces, para rellenar (CSV)',
  noFlower: 'No hay ninguna flor que etiquetar.',
  /** Before the line on which the day is written. */
  tagDay: 'el',
};
