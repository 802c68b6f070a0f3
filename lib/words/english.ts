/** Codes of the analysis in English: why there is no number, why a row does not count, what a verdict rests on. */

/** Why an estimate is missing. */
const BECAUSE: Readonly<Record<string, string>> = {
  'no-flowers': 'There is no flower with a known outcome.',
  'no-aged-flowers': 'No flower has a known pollen age.',
  'no-fresh-flower': 'No flower with a known outcome got fresh pollen.',
  'one-outcome': 'All flowers with a known outcome ended alike: all took, or none did.',
  'terms-separated':
    'A kind of pollen, or an age of it, always took or never did, so the ordinary model has no answer.',
  'spread-without-end':
    'Some plants, pairs or mornings always took and the others never did, so how much they differ has no end.',
  'fewer-than-two-pairs': 'There are fewer than two pairs of plants to compare.',
  'zero-count':
    'In the pairs that could tell, one kind of pollen never took or always did, so the ratio has no end.',
  'no-pairs-with-both': 'No pair of plants was pollinated both with fresh pollen and with this one.',
  'no-informative-pairs':
    'In no pair of plants with both kinds of pollen did some flowers take and others fail, so pollen and pair can’t be told apart.',
  'too-few-pairs-with-both':
    'Fewer than three pairs of plants have both kinds of pollen and both outcomes, so pollen and pair can’t be told apart.',
  separated: 'In the pairs that could tell, one kind of pollen always did better, so the ratio has no end.',
  'one-age-or-vial': 'Pollen kept this way was tried at one age or from one vial only.',
  'past-oldest-age': 'Within the ages that were tried, fruit set has not fallen to half.',
  'method-never-tried': 'No flower with a known outcome and age got pollen stored this way.',
  'used-before-collected': 'The day of use lies before the day the pollen was collected.',
  'no-seed-parent':
    'No seed parent is left for this pollen: all others are its own plant or named incompatible.',
  'no-pairs-in-both-seasons': 'No pair of plants got the same kind of pollen in both seasons.',
  'too-few-pairs-in-both-seasons':
    'Fewer than three pairs of plants got the same kind of pollen in both seasons with both outcomes, so season and pair can’t be told apart.',
  'no-storage-in-both-directions': 'The two directions had no kind of pollen in common.',
  'no-variation': 'All flowers of each kind ended alike, so there is no range.',
  'no-strata': 'There is nothing to compare within.',
  'no-failure': 'No flower failed, so the ratio has no range.',
  'background-always-took': 'Every control flower set fruit, so nothing is left for the crosses to show.',
  unbounded: 'With so few control flowers that end of the range is open.',
  'no-fresh-cross': 'No flower of the same plants with a known outcome was crossed with fresh pollen.',
  'selfed-never-took': 'No selfed flower took so far, so the ratio has no range.',
  'crosses-never-took': 'No cross of the same plants took, so there is nothing to compare with.',
  'pollen-took-elsewhere': 'The same pollen took on other plants.',
  'pollen-failed-elsewhere': 'The same pollen took on no other plant that it was tried on.',
  'pollen-not-tried-elsewhere': 'The same pollen was tried on no other plant.',
  'no-seed-counts': 'No fruit had its seeds counted.',
  'too-few-fruits': 'Only one fruit had its seeds counted, so how much fruits differ is not known.',
  'no-seeds': 'The fruits that were counted held no seeds.',
  'no-germination-counts': 'No sowing has both numbers, sown and germinated.',
  'too-few-lots': 'Only one sowing was counted, so how much sowings differ is not known.',
  'lots-all-alike': 'All seeds that were sown ended alike: all germinated, or none did.',
  'zero-part': 'A part of the product is none so far, so there is no range.',
  'no-worth': 'It was not said what fruit set is worth a flower.',
  'no-average-pair': 'There are no two pairs with an estimate, so there is no average to compare with.',
  'no-model': 'There is no model of this season to work it out from.',
  'no-flowers-file': 'No file of the flowers expected next season was given.',
  'no-expected-flowers': 'No flower is expected next season: every row of the flowers file says 0.',
  'no-pollen-for-flowers':
    'No pollen is left for the expected flowers: no vial with a dose, and no two plants that can cross flower on the same morning.',
  'no-doses-left': 'No dose is left in it.',
  'mother-not-in-flower': 'The flowers file expects no flower on this seed parent.',
  'own-pollen': 'A plant’s own pollen is not planned.',
  'named-incompatible': 'The pair is named incompatible.',
  'no-common-morning': 'The two plants never flower on the same morning, and no vial holds this pollen.',
  'no-pollen-of-father':
    'There is no pollen of this plant: no flower is expected on it, and no vial can be used.',
  'fewer-flowers-expected':
    'Fewer flowers are expected on the seed parent than were wished: wish for no more, or raise their number in the flowers file.',
  'too-little-pollen':
    'The pollen that is left, or that opens on the same mornings, serves fewer flowers: wish for no more, or mend the doses in the vials file.',
  'other-wish-in-the-way': 'Another wish or a ceiling stands in the way: lower one of them.',
  'being-worked-out': 'It is still being worked out.',
  'not-settled': 'The calculation did not settle on an answer.',
  'model-not-settled': 'The calculation did not settle on an answer.',
};

/** Why a row does not count. */
const LEFT_OUT: Readonly<Record<string, string>> = {
  'outcome-unknown': 'The tag was lost or the flower was not seen again.',
  'outcome-pending': 'It is too early to say what became of the flower.',
  'cell-blank': 'A cell that is needed is blank.',
  'row-ragged': 'The row has more or fewer cells than the headers.',
  'total-row': 'The row is a total.',
  'row-nearly-blank': 'The row holds next to nothing of what is needed.',
  'table-sideways': 'The headers of the file stand in its first column.',
  'parents-in-one': 'One column of the file holds both parents.',
  'header-repeated': 'The row repeats the headers.',
  'quote-not-closed': 'A quotation mark is not closed.',
  'control-character': 'The row holds a character that no text has.',
  'date-does-not-exist': 'A date does not exist.',
  'date-not-understood': 'A date can’t be read.',
  'date-serial': 'A date is a spreadsheet’s own day number.',
  'date-implausible': 'A date lies too far back or ahead.',
  'number-not-understood': 'A number can’t be read.',
  'number-negative': 'A number is negative.',
  'number-absurd': 'A number is far too large.',
  'word-not-understood': 'A word is none of those that can stand there.',
  'tag-repeated': 'The row stands there twice.',
  'tag-conflict': 'The tag stands on another flower too.',
  'future-date': 'The flower was pollinated after the last day of the files.',
  'selfed-with-other-pollen': 'It is called selfed, but has another plant’s pollen.',
  'file-repeated': 'The whole file was given twice.',
  'column-missing': 'A column that is needed is missing from the file.',
  'column-unclear': 'Two columns of the file could mean the same.',
  'date-order-unclear': 'The dates of the file can be read in two ways.',
  'date-order-mixed': 'The dates of the file are written in two orders.',
  'nothing-entered': 'No flower has been entered in the file yet.',
  'other-format': 'The file is no table.',
  'kind-unknown': 'The file’s columns are none that we know.',
  'kind-differs': 'The file was given as another kind than its columns tell.',
};

const SENTENCES: ReadonlyMap<string, string> = new Map(
  [BECAUSE, LEFT_OUT].flatMap((codes) => Object.entries(codes)),
);

/**
 * The sentence of a code. One that has none is named as it stands: a grower is better served by the rest of the
 * answer than by none.
 *
 * @example
 * reasonSentence('no-flowers'); // 'There is no flower with a known outcome.'
 */
export function reasonSentence(code: string): string {
  return SENTENCES.get(code) ?? `The data can’t tell (${code}).`;
}
