/** What every page says around its notebook: how to get about in it, what is folded. */

export const pageWords = {
  skip: 'Saltar el índice',
  contents: 'Contenido',
  allPages: 'Todas las páginas',
  working: 'El cálculo de esta sección, como código',
  numbers: 'Los números de este gráfico',
  /** The page in another language, named in that language. */
  otherLanguages: 'Esta página en otro idioma',
};
