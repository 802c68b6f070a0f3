/** The catalogue's entries about what a row says: dates, ages, vials, controls, seeds. */
import type { RowProblemCode } from '../../season/problems.ts';
import type { EntryParts } from '../catalogue-entry.ts';
import { CELL_ENTRIES } from './catalogue-cells.ts';
import { LEFT_OUT, USED, WITHOUT_CELL } from './catalogue-entry.ts';

const ONE_OF_TWO = 'Corriger l’un des deux.';
const NEITHER = 'Aucune des deux lignes ne sert, car rien ne dit laquelle est juste.';
const FIRST_USED = 'La première ligne sert, celle-ci est laissée de côté.';
const DELETE_ONE = 'Supprimer l’une des deux lignes.';
const PASTED = 'une ligne collée deux fois';
const BOTH_YEARS = 'Vérifier les années des deux dates.';
const ROW_BELIEVED = `${USED} On croit la ligne.`;
const OUTCOME_BELIEVED = `${USED} On croit le résultat.`;

export const ROW_ENTRIES: Readonly<Record<RowProblemCode, EntryParts>> = {
  ...CELL_ENTRIES,
  'tag-repeated': [
    'error',
    'La même étiquette s’y trouve deux fois, avec le même contenu.',
    FIRST_USED,
    DELETE_ONE,
    PASTED,
  ],
  'tag-conflict': [
    'error',
    'La même étiquette s’y trouve deux fois, avec un contenu différent.',
    NEITHER,
    'Corriger l’étiquette de l’une, ou supprimer la ligne fausse.',
    'T-12 avec fruit et T-12 avec none',
  ],
  'vial-repeated': [
    'error',
    'Le même tube s’y trouve deux fois, avec le même contenu.',
    FIRST_USED,
    DELETE_ONE,
    PASTED,
  ],
  'vial-conflict': [
    'error',
    'Le même tube s’y trouve deux fois, avec un contenu différent.',
    NEITHER,
    'Donner à l’un un nom à lui, ou supprimer la ligne fausse.',
    'F-01 de deux plantes',
  ],
  'flowers-repeated': [
    'warning',
    'La même plante est attendue deux fois en fleur les mêmes jours.',
    'Les deux lignes servent.',
    'En supprimer une si elles parlent des mêmes fleurs.',
    PASTED,
  ],
  'future-date': [
    'error or warning',
    'Une date est après le jour jusqu’auquel on lit (--as-of).',
    'Une pollinisation, ou une récolte de pollen dans le fichier des tubes, fait laisser la ligne de côté ; une récolte de fruit n’est pas crue.',
    'Corriger la date, ou donner un --as-of plus tardif.',
    '2052-06-20',
  ],
  'outcome-after-as-of': [
    'warning',
    'Le résultat a été vu après le jour jusqu’auquel on lit (--as-of).',
    'La ligne compte comme en attente (pending).',
    'Corriger la date, ou donner un --as-of plus tardif.',
    'contrôlé le 2026-08-01, lu jusqu’au 2026-07-01',
  ],
  'collected-after-pollination': [
    'warning',
    'Le pollen a été récolté après avoir servi.',
    `${USED} Sa date de récolte n’est pas crue.`,
    ONE_OF_TWO,
    'récolté le 2025-06-20, utilisé le 2025-06-01',
  ],
  'fresh-collected-earlier': [
    'warning',
    'Le pollen est dit frais, mais a été récolté des jours avant.',
    `${USED} Le pollen frais a l’âge 0.`,
    'Corriger la date, ou dire comment le pollen a été gardé.',
    'frais, récolté dix jours avant',
  ],
  'age-missing': [
    'warning',
    'Du pollen stocké n’a ni date, ni âge, ni tube dont la date soit connue.',
    'La ligne compte dans les taux simples, pas là où l’âge importe.',
    'Remplir pollen_collected, pollen_age_days ou vial ; donner aussi le fichier des tubes.',
    'frozen, et rien d’autre',
  ],
  'age-disagrees': [
    'warning',
    'Deux sources donnent au pollen un âge différent.',
    `${USED} La date de récolte passe avant les jours donnés, ceux-ci avant le tube.`,
    ONE_OF_TWO,
    'récolté 31 jours avant, pollen_age_days 12',
  ],
  'age-over-ten-years': [
    'warning',
    'Le pollen avait plus de dix ans.',
    USED,
    'Vérifier l’année de sa récolte.',
    'récolté le 2005-03-01, utilisé le 2025-06-01',
  ],
  'vial-unknown': [
    'warning',
    'Le tube n’est pas dans le fichier des tubes.',
    USED,
    'L’y ajouter, ou corriger son nom ici.',
    'F-99',
  ],
  'vial-before-collected': [
    'warning',
    'Le tube a servi avant que son pollen ne soit récolté.',
    `${USED} L’âge tiré du tube n’est pas cru.`,
    'Corriger le tube ou l’une des dates.',
    'utilisé en juin, récolté en juillet',
  ],
  'vial-beyond-doses': [
    'warning',
    'Plus de fleurs nomment le tube qu’il n’avait de doses.',
    USED,
    'Corriger le tube de quelques fleurs, ou doses_filled dans le fichier des tubes.',
    '7 fleurs d’un tube de 5 doses',
  ],
  'vial-father-differs': [
    'warning',
    'Le tube contient le pollen d’une autre plante que ne le dit la ligne.',
    ROW_BELIEVED,
    ONE_OF_TWO,
    'Salt Moon d’un tube de Owl Hour',
  ],
  'vial-storage-differs': [
    'warning',
    'Le tube est gardé autrement que ne le dit la ligne.',
    ROW_BELIEVED,
    ONE_OF_TWO,
    'refrigerated d’un tube congelé',
  ],
  'year-stands-alone': [
    'warning',
    'Une date de pollinisation, de récolte ou de floraison est à plus de cinq ans de toutes les autres.',
    `${USED} Une pollinisation trop tardive déplace aussi le jour pour lequel on conseille sur les tubes.`,
    'Corriger l’année, si c’est une faute de frappe.',
    '2052-06-20 parmi des fleurs de 2025',
  ],
  'own-pollen': [
    'warning',
    'Une plante a été pollinisée avec son propre pollen et la ligne n’est pas marquée comme témoin.',
    'La ligne compte comme un croisement.',
    'Écrire selfed dans la colonne control si c’en était un.',
    'Owl Hour × Owl Hour',
  ],
  'selfed-with-other-pollen': [
    'error',
    'Le témoin est dit autofécondé, mais a le pollen d’une autre plante.',
    LEFT_OUT,
    'Laisser control vide si c’était un croisement, sinon corriger le père.',
    'selfed, Owl Hour × Salt Moon',
  ],
  'unpollinated-with-pollen': [
    'warning',
    'Un témoin sans pollen a un père, un stockage, un âge ou un tube.',
    `${USED} Ce qu’il dit du pollen n’est pas cru.`,
    'Laisser control vide si c’était un croisement, sinon vider la case.',
    'unpollinated, frozen',
  ],
  'checked-before-pollination': [
    'warning',
    'La fleur a été regardée avant d’être pollinisée.',
    WITHOUT_CELL,
    ONE_OF_TWO,
    'contrôlée le 2025-05-16, pollinisée le 2025-06-01',
  ],
  'checked-too-early': [
    'warning',
    'Un fruit a été noté avant qu’on puisse le distinguer d’une fleur fanée.',
    USED,
    'Vérifier les dates, ou écrire pending.',
    'un fruit après deux jours',
  ],
  'checked-too-late': [
    'warning',
    'La fleur a été regardée plus d’un an après sa pollinisation.',
    WITHOUT_CELL,
    BOTH_YEARS,
    'contrôlée le 2052-06-15, pollinisée le 2025-06-01',
  ],
  'harvested-too-late': [
    'warning',
    'Le fruit a été récolté plus de deux ans après la pollinisation de sa fleur.',
    WITHOUT_CELL,
    BOTH_YEARS,
    'récolté le 2052-08-16, pollinisée le 2025-06-01',
  ],
  'harvested-before-pollination': [
    'warning',
    'Le fruit a été récolté avant la pollinisation de sa fleur.',
    WITHOUT_CELL,
    ONE_OF_TWO,
    'récolté le 2025-05-16, pollinisée le 2025-06-01',
  ],
  'harvested-without-fruit': [
    'warning',
    'Une récolte est notée pour une fleur sans fruit.',
    OUTCOME_BELIEVED,
    'Écrire fruit comme résultat, ou vider la date de récolte.',
    'none, récolté le 2025-08-16',
  ],
  'seeds-without-fruit': [
    'warning',
    'Des graines sont notées pour une fleur sans fruit.',
    OUTCOME_BELIEVED,
    'Écrire fruit comme résultat, ou vider les graines.',
    'none, 40 graines',
  ],
  'more-sown-than-seeds': [
    'warning',
    'Plus de graines semées que le fruit n’en avait.',
    WITHOUT_CELL,
    ONE_OF_TWO,
    '300 semées sur 212',
  ],
  'more-germinated-than-sown': [
    'warning',
    'Plus de graines germées que de semées.',
    WITHOUT_CELL,
    ONE_OF_TWO,
    '30 germées sur 20',
  ],
  'opens-backwards': [
    'warning',
    'La floraison finirait avant de commencer.',
    `${USED} Aucune des deux dates n’est crue.`,
    ONE_OF_TWO,
    'du 2026-06-01 au 2026-05-01',
  ],
};
