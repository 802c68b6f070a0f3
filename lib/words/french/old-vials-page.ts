/** What the page of old vials says beside its sentences. */

export const oldVialsPage = {
  noVials: 'Aucun fichier de tubes n’a été donné.',
  storiesCaption: 'Chaque tube, le plus ancien d’abord ; « alors » est le jour d’utilisation',
  byRecordCaption: 'Verdicts selon que le tube a déjà servi ou non',
  byRecordFirstColumn: 'Tubes',
  noTests: 'Aucun essai d’une ou deux fleurs ne changerait un verdict.',
  tests: 'Essais d’une ou deux fleurs qui pourraient changer un verdict, le plus probable d’abord :',
};
