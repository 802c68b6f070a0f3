/** What the page of problems says. */
import type { CataloguedProblem } from '../problem-catalogue.ts';
import { counted } from './numbers.ts';

const SEVERITIES: Readonly<Record<CataloguedProblem['severity'], string>> = {
  error: 'erreur',
  warning: 'avertissement',
  notice: 'remarque',
  'error or warning': 'erreur ou avertissement',
};

export const problemsPage = {
  columns: ['Code', 'Ce que cela veut dire, ce qu’il en advient', 'Comment y remédier'],
  ofFiles: 'Problèmes d’un fichier entier',
  ofRows: 'Problèmes d’une ligne',
  cells: ({ code, severity, means, used, mend, example }: CataloguedProblem): readonly string[] => [
    `${code} (${SEVERITIES[severity]})`,
    `${means} ${used}`,
    `${mend} Exemple : ${example}`,
  ],
  found: (codes: readonly string[]): string =>
    codes.length === 0
      ? 'Rien de cela n’a été trouvé dans les fichiers de cette saison.'
      : `Dans les fichiers de cette saison, ${counted(codes.length, 'code')} de cette page ${codes.length === 1 ? 'a été trouvé' : 'ont été trouvés'} : ${codes.join(', ')}.`,
};
