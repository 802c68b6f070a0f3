/** What the page of old vials says in its tables and gaps. */

export const oldVialsPage = {
  noVials: 'No se dio ningún archivo de viales.',
  storiesCaption: 'Todos los viales, del más viejo al más nuevo; «entonces» es el día de uso',
  byRecordCaption: 'Veredictos según si el vial tiene flores propias',
  byRecordFirstColumn: 'Viales',
  noTests: 'Ninguna prueba de una o dos flores cambiaría un veredicto.',
  tests: 'Pruebas de una o dos flores que podrían cambiar un veredicto, primero la más probable:',
};
