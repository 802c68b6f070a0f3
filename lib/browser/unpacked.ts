/**
 * The text that was packed: base64 of gzip. A third of the size, and the page's policy lets a Worker be made of it.
 *
 * @throws TypeError where it is not gzip
 */
export async function unpacked(packed: string): Promise<string> {
  const bytes = Uint8Array.from(atob(packed), (character) => character.charCodeAt(0));
  const stream = new Blob([bytes]).stream().pipeThrough(new DecompressionStream('gzip'));
  return new Response(stream).text();
}
