import { Zip, ZipDeflate, zipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { unzipped, ZipFault } from '../../lib/season/zip.ts';

const bytes = (text: string) => new TextEncoder().encode(text);
const all = () => true;

function faultOf(run: () => unknown): string | null {
  try {
    run();
  } catch (error) {
    if (error instanceof ZipFault) return error.fault;
    throw error;
  }
  return null;
}

/** An archive written as a stream writes it: each part's size stands behind it, not before. */
function streamed(parts: Readonly<Record<string, string>>): Uint8Array {
  const chunks: Uint8Array[] = [];
  const zip = new Zip((_, chunk) => void chunks.push(chunk));
  for (const [name, text] of Object.entries(parts)) {
    const part = new ZipDeflate(name);
    zip.add(part);
    part.push(bytes(text), true);
  }
  zip.end();
  return Uint8Array.from(chunks.flatMap((chunk) => [...chunk]));
}

describe('unzipped', () => {
  it('unpacks the parts that are wanted, stored or packed, with sizes before or behind', () => {
    const text = 'night '.repeat(10_000);
    const packed = zipSync({ 'a.xml': bytes(text), b: [bytes('stored'), { level: 0 }], c: bytes('no') });
    for (const archive of [packed, streamed({ 'a.xml': text, b: 'stored', c: 'no' })]) {
      const parts = unzipped(archive, (name) => name !== 'c');
      expect([...parts].map(([name, part]) => [name, new TextDecoder().decode(part)])).toEqual([
        ['a.xml', text],
        ['b', 'stored'],
      ]);
    }
  });

  it('stops at an archive that holds far more than it weighs', () => {
    const bomb = zipSync({ a: new Uint8Array(50_000_000) });
    expect(bomb.length).toBeLessThan(100_000);
    expect(faultOf(() => unzipped(bomb, all, 5_000_000))).toBe('too-large');
  });

  it('tells an archive that is cut off or damaged', () => {
    const text = Array.from({ length: 3000 }, (_, i) => (i * 7919) % 1013).join(' ');
    const archive = zipSync({ a: bytes(text) });
    expect(faultOf(() => unzipped(archive.subarray(0, archive.length >> 1), all))).toBe('broken');
    const damaged = archive.slice();
    damaged.fill(0xff, 40, 400);
    expect(faultOf(() => unzipped(damaged, all))).toBe('broken');
  });
});
