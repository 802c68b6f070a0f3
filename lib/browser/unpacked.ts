/**
 * The text that was packed: base64 of gzip. A third of the size, and the page's policy lets a Worker be made of it.
 *
 * @throws TypeError where it is not gzip
 */
export async function unpacked(packed: string): Promise<string> {
  const text = atob(packed);
  const bytes = new Uint8Array(text.length);
  // A loop, since a function called for each byte keeps a slow telephone busy for a quarter of a second.
  for (let i = 0; i < text.length; i += 1) bytes[i] = text.charCodeAt(i);
  const stream = new Blob([bytes]).stream().pipeThrough(new DecompressionStream('gzip'));
  return new Response(stream).text();
}
