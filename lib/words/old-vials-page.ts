/** What the page of old vials says in its tables and gaps. */

/** Its captions, and what stands where there is nothing. */
export const oldVialsPage = {
  noVials: 'No file of vials was given.',
  storiesCaption: 'Every vial, the oldest first; then is the day of use',
  byRecordCaption: 'Verdicts by whether a vial has a record',
  byRecordFirstColumn: 'Vials',
  noTests: 'No test of one or two flowers would change a verdict.',
  tests: 'Tests of one or two flowers that could change a verdict, the likeliest first:',
};
