/** Was jede Seite um ihr Notizbuch herum sagt. */

export const pageWords = {
  skip: 'Inhaltsverzeichnis überspringen',
  contents: 'Inhalt',
  allPages: 'Alle Seiten',
  working: 'Der Rechenweg dieses Abschnitts, als Code',
  numbers: 'Die Zahlen in diesem Bild',
  otherLanguages: 'Diese Seite in einer anderen Sprache',
};
