/** What the page of next season says beside the plan's own sentences. */
import type { Mix } from '../../decisions/mix.ts';
import type { Ceiling, Must } from '../../decisions/plan-problem.ts';
import { pairName } from './choice-figures.ts';
import { counted, wholeNumber } from './numbers.ts';
import { crossesTried, mixGives, mixLabel, mixRisks, mixSeeds } from './plan.ts';

type Ends = readonly [most: Mix, least: Mix] | null;

export const nextSeasonPage = {
  noMix: 'Il n’y a pas de partage à montrer.',
  mix: (mix: Mix): string =>
    ` : ${mixGives(mix)}, ${mixSeeds(mix)} ; ${mixRisks(mix)} ; ${counted(crossesTried(mix), 'croisement essayé', 'croisements essayés')}.`,
  crossesFold: (mix: Mix): string => `Les croisements de « ${mixLabel(mix.name)} »`,
  crossesCaption: (mix: Mix): string =>
    `Croisements du partage « ${mixLabel(mix.name)} », avec la chance d’au moins un fruit`,
  vialsAdd: (all: Ends, alone: Ends): string => {
    if (all === null) return 'Il n’y a pas de plan à quoi comparer.';
    if (alone === null)
      return `Sans les tubes rien ne pourrait être croisé ; avec eux les fleurs pourraient donner ${mixGives(all[0])}.`;
    const [most, least] = all.map(mixGives);
    const [mostAlone, leastAlone] = alone.map(mixGives);
    return (
      `Avec le seul pollen frais les mêmes fleurs pourraient donner ${mostAlone}, ou ${leastAlone} ; avec les tubes ${most}, ` +
      `ou ${least}.`
    );
  },
  noWish: 'Aucun souhait n’a été donné : chaque croisement peut être essayé ou non.',
  wishes: 'Ces souhaits ont été donnés :',
  must: (wish: Must): string => `${pairName(wish)} : au moins ${wholeNumber(wish.flowers)}`,
  atMost: ({ seedParent, pollenParent, flowers }: Ceiling): string =>
    `${seedParent === undefined ? `pollen de ${pollenParent}` : pairName({ seedParent, pollenParent })} : au plus ${wholeNumber(flowers)}`,
};
