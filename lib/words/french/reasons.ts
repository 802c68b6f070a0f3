/** Codes of the analysis in French: why there is no number, why a row does not count, what a verdict rests on. */

/** Why an estimate is missing. */
const BECAUSE: Readonly<Record<string, string>> = {
  'no-flowers': 'Aucune fleur n’a un résultat connu.',
  'no-aged-flowers': 'Aucune fleur n’a un âge de pollen connu.',
  'no-fresh-flower': 'Aucune fleur au résultat connu n’a reçu de pollen frais.',
  'one-outcome':
    'Toutes les fleurs au résultat connu ont fini de la même façon : toutes ont noué, ou aucune.',
  'terms-separated':
    'Une sorte de pollen, ou un âge de celui-ci, a toujours pris ou jamais, si bien que le modèle ordinaire n’a pas de réponse.',
  'spread-without-end':
    'Certaines plantes, certains couples ou matins ont toujours pris et les autres jamais, si bien que leur écart n’a pas de borne.',
  'fewer-than-two-pairs': 'Il y a moins de deux couples de plantes à comparer.',
  'zero-count':
    'Dans les couples qui pouvaient le dire, une sorte de pollen n’a jamais pris ou a toujours pris, si bien que le rapport n’a pas de borne.',
  'no-pairs-with-both': 'Aucun couple de plantes n’a reçu à la fois du pollen frais et celui-ci.',
  'no-informative-pairs':
    'Dans aucun couple ayant reçu les deux sortes de pollen il n’y a eu des fleurs qui ont noué et d’autres non : on ne peut pas séparer le pollen du couple.',
  'too-few-pairs-with-both':
    'Moins de trois couples ont les deux sortes de pollen et les deux résultats : on ne peut pas séparer le pollen du couple.',
  separated:
    'Dans les couples qui pouvaient le dire, une sorte de pollen a toujours fait mieux, si bien que le rapport n’a pas de borne.',
  'one-age-or-vial': 'Le pollen gardé ainsi n’a été essayé qu’à un seul âge ou d’un seul lot.',
  'past-oldest-age': 'Aux âges essayés, la nouaison n’est pas tombée de moitié.',
  'method-never-tried': 'Aucune fleur au résultat et à l’âge connus n’a reçu de pollen gardé ainsi.',
  'used-before-collected': 'Le jour d’utilisation précède le jour de récolte du pollen.',
  'no-seed-parent':
    'Il ne reste aucune plante mère pour ce pollen : toutes les autres sont sa propre plante ou sont dites incompatibles.',
  'no-pairs-in-both-seasons': 'Aucun couple n’a reçu la même sorte de pollen dans les deux saisons.',
  'too-few-pairs-in-both-seasons':
    'Moins de trois couples ont reçu la même sorte de pollen dans les deux saisons, avec les deux résultats : on ne peut pas séparer la saison du couple.',
  'no-storage-in-both-directions': 'Les deux sens n’avaient aucune sorte de pollen en commun.',
  'no-variation': 'Toutes les fleurs de chaque sorte ont fini de la même façon : il n’y a pas de fourchette.',
  'no-strata': 'Il n’y a rien au sein de quoi comparer.',
  'no-failure': 'Aucune fleur n’a échoué : le rapport n’a pas de fourchette.',
  'background-always-took':
    'Toutes les fleurs témoins ont donné un fruit : il ne reste rien que les croisements puissent montrer.',
  unbounded: 'Avec si peu de fleurs témoins, cette borne de la fourchette reste ouverte.',
  'no-fresh-cross': 'Aucune fleur des mêmes plantes au résultat connu n’a été croisée avec du pollen frais.',
  'selfed-never-took': 'Aucune fleur autofécondée n’a pris jusqu’ici : le rapport n’a pas de fourchette.',
  'crosses-never-took': 'Aucun croisement des mêmes plantes n’a pris : il n’y a rien à quoi comparer.',
  'pollen-took-elsewhere': 'Le même pollen a pris sur d’autres plantes.',
  'pollen-failed-elsewhere': 'Le même pollen n’a pris sur aucune autre plante où il a été essayé.',
  'pollen-not-tried-elsewhere': 'Le même pollen n’a été essayé sur aucune autre plante.',
  'no-seed-counts': 'Les graines d’aucun fruit n’ont été comptées.',
  'too-few-fruits':
    'Les graines d’un seul fruit ont été comptées : on ne sait pas combien les fruits diffèrent.',
  'no-seeds': 'Les fruits comptés n’avaient pas de graines.',
  'no-germination-counts': 'Aucun semis n’a les deux nombres, semées et germées.',
  'too-few-lots': 'Un seul semis a été compté : on ne sait pas combien les semis diffèrent.',
  'lots-all-alike': 'Toutes les graines semées ont fini de la même façon : toutes ont germé, ou aucune.',
  'zero-part': 'Une part du produit est nulle jusqu’ici : il n’y a pas de fourchette.',
  'no-worth': 'Il n’a pas été dit quelle nouaison vaut une fleur.',
  'no-average-pair':
    'Il n’y a pas deux couples avec une estimation : il n’y a pas de moyenne à quoi comparer.',
  'no-model': 'Il n’y a pas de modèle de cette saison pour le calculer.',
  'no-flowers-file': 'Aucun fichier des fleurs attendues la saison prochaine n’a été donné.',
  'no-expected-flowers':
    'Aucune fleur n’est attendue la saison prochaine : chaque ligne du fichier des fleurs dit 0.',
  'no-pollen-for-flowers':
    'Il ne reste pas de pollen pour les fleurs attendues : aucun tube avec une dose, et pas deux plantes à croiser qui fleurissent le même matin.',
  'no-doses-left': 'Il n’y reste aucune dose.',
  'mother-not-in-flower': 'Le fichier des fleurs n’attend aucune fleur sur cette plante mère.',
  'own-pollen': 'Le propre pollen d’une plante n’entre pas dans le plan.',
  'named-incompatible': 'Le couple est dit incompatible.',
  'no-common-morning':
    'Les deux plantes ne fleurissent jamais le même matin, et aucun tube ne contient ce pollen.',
  'no-pollen-of-father':
    'Il n’y a pas de pollen de cette plante : aucune fleur n’y est attendue, et aucun tube ne peut servir.',
  'fewer-flowers-expected':
    'Moins de fleurs sont attendues sur la mère qu’il n’en est souhaité : n’en pas souhaiter plus, ou augmenter leur nombre dans le fichier des fleurs.',
  'too-little-pollen':
    'Le pollen qui reste, ou qui s’ouvre les mêmes matins, sert moins de fleurs : n’en pas souhaiter plus, ou corriger les doses dans le fichier des tubes.',
  'other-wish-in-the-way': 'Un autre souhait ou un plafond y fait obstacle : baisser l’un des deux.',
  'being-worked-out': 'Le calcul est encore en cours.',
  'not-settled': 'Le calcul n’a pas abouti à une réponse.',
  'model-not-settled': 'Le calcul n’a pas abouti à une réponse.',
};

/** Why a row does not count. */
const LEFT_OUT: Readonly<Record<string, string>> = {
  'outcome-unknown': 'L’étiquette a été perdue ou la fleur n’a pas été revue.',
  'outcome-pending': 'Il est trop tôt pour dire ce que la fleur est devenue.',
  'cell-blank': 'Une case nécessaire est vide.',
  'row-ragged': 'La ligne a plus ou moins de cases que les en-têtes.',
  'row-nearly-blank': 'La ligne n’a presque rien : il manque ce qui est nécessaire.',
  'total-row': 'La ligne est un total.',
  'table-sideways': 'Les en-têtes du fichier sont dans sa première colonne.',
  'parents-in-one': 'Une colonne du fichier contient les deux parents.',
  'header-repeated': 'La ligne répète les en-têtes.',
  'quote-not-closed': 'Un guillemet n’est pas fermé.',
  'control-character': 'La ligne contient un caractère qu’aucun texte n’a.',
  'date-does-not-exist': 'Une date n’existe pas.',
  'date-not-understood': 'Une date ne peut pas être lue.',
  'date-serial': 'Une date est le numéro de jour d’un tableur.',
  'date-implausible': 'Une date est bien trop loin en arrière ou en avant.',
  'number-not-understood': 'Un nombre ne peut pas être lu.',
  'number-negative': 'Un nombre est négatif.',
  'number-absurd': 'Un nombre est bien trop grand.',
  'word-not-understood': 'Un mot n’est aucun de ceux qui peuvent s’y trouver.',
  'tag-repeated': 'La ligne s’y trouve deux fois.',
  'tag-conflict': 'L’étiquette se trouve aussi sur une autre fleur.',
  'future-date': 'La fleur a été pollinisée après le dernier jour des fichiers.',
  'selfed-with-other-pollen': 'Elle est dite autofécondée, mais a le pollen d’une autre plante.',
  'file-repeated': 'Le fichier entier a été donné deux fois.',
  'column-missing': 'Une colonne nécessaire manque dans le fichier.',
  'column-unclear': 'Deux colonnes du fichier pourraient vouloir dire la même chose.',
  'date-order-unclear': 'Les dates du fichier peuvent se lire de deux façons.',
  'date-order-mixed': 'Les dates du fichier sont écrites dans deux ordres.',
  'nothing-entered': 'Aucune fleur n’est encore inscrite dans le fichier.',
  'other-format': 'Le fichier n’est pas un tableau.',
  'kind-unknown': 'Les colonnes du fichier ne sont pas de celles que nous connaissons.',
  'kind-differs': 'Le fichier a été donné comme d’une autre sorte que ne le disent ses colonnes.',
};

const SENTENCES: ReadonlyMap<string, string> = new Map(
  [BECAUSE, LEFT_OUT].flatMap((codes) => Object.entries(codes)),
);

/** The sentence of a code; an unknown code is shown as it is. */
export function reasonSentence(code: string): string {
  return SENTENCES.get(code) ?? `Les données ne permettent pas de le dire (${code}).`;
}
