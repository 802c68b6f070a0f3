/** Letters that a keyboard may lack, and how growers write them then: ä as ae or a, ß as ss, é as e. */

const SPELT_OUT: ReadonlyMap<string, string> = new Map([
  ...(['ä:ae', 'ö:oe', 'ü:ue', 'ß:ss', 'æ:ae', 'œ:oe', 'ø:oe', 'å:aa'] as const).map(
    (pair) => pair.split(':') as [string, string],
  ),
]);
/** Letters that Unicode takes apart into no plainer one. */
const PLAINER: ReadonlyMap<string, string> = new Map([
  ...(['ß:ss', 'æ:ae', 'œ:oe', 'ø:o', 'ł:l', 'đ:d', 'ı:i'] as const).map(
    (pair) => pair.split(':') as [string, string],
  ),
]);

/**
 * A text in lower case with its umlauts spelt out, as German does where a keyboard has none.
 *
 * @example speltOut('Königin') // 'koenigin'
 */
export function speltOut(text: string): string {
  return text
    .normalize('NFC')
    .toLowerCase()
    .replace(/[äöüßæœøå]/g, (letter) => SPELT_OUT.get(letter)!);
}

/**
 * A text in lower case without marks on its letters.
 *
 * @example withoutMarks('Königin') // 'konigin'
 */
export function withoutMarks(text: string): string {
  return text
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[ßæœøłđı]/g, (letter) => PLAINER.get(letter)!);
}
