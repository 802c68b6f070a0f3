/** What the crossing sheet says in its table and on its tags. */

/** Its headings and labels. */
export const crossingSheetPage = {
  caption: 'One line for each flower; tick it when the tag hangs',
  columns: ['Tag', 'Flower on', 'Pollen of'],
  file: 'The sheet as a crosses file, to be filled in (CSV)',
  noFlower: 'There is no flower to tag.',
  /** Before the line on which the day is written. */
  tagDay: 'on',
};
