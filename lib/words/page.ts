/** What every page says around its notebook: how to get about in it, what is folded. */

export const pageWords = {
  skip: 'Skip the contents list',
  contents: 'Contents',
  allPages: 'All pages',
  working: 'The working of this section, as code',
  numbers: 'The numbers in this chart',
  /** The page in another language, named in that language. */
  otherLanguages: 'This page in another language',
};
