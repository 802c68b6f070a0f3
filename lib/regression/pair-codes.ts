/** New codes for pairs of a code and a number. */

const float = new Float64Array(1);
const bits = new Int32Array(float.buffer);

function hash(code: number, value: number): number {
  float[0] = value;
  let h = Math.imul(bits[0]!, 0x9e3779b1) ^ Math.imul(bits[1]!, 0x85ebca6b) ^ Math.imul(code, 0xc2b2ae35);
  h = Math.imul(h ^ (h >>> 15), 0x2c1b3c6d);
  return (h ^ (h >>> 13)) >>> 0;
}

/** Open addressing from (code, value) to a new code; grows, and never holds an object a key. */
export class PairCodes {
  count = 0;
  private slots = new Int32Array(1024);
  private codes = new Int32Array(512);
  private values = new Float64Array(512);

  codeOf(code: number, value: number): number {
    const mask = this.slots.length - 1;
    for (let slot = hash(code, value) & mask; ; slot = (slot + 1) & mask) {
      const found = this.slots[slot]! - 1;
      if (found < 0) return this.add(slot, code, value);
      if (this.codes[found] === code && this.values[found] === value) return found;
    }
  }

  private add(slot: number, code: number, value: number): number {
    const added = this.count;
    this.count += 1;
    this.slots[slot] = this.count;
    this.codes[added] = code;
    this.values[added] = value;
    if (this.count === this.codes.length) this.grow();
    return added;
  }

  private grow(): void {
    const codes = new Int32Array(2 * this.count);
    const values = new Float64Array(2 * this.count);
    codes.set(this.codes);
    values.set(this.values);
    const mask = 4 * this.count - 1;
    const slots = new Int32Array(mask + 1);
    for (let k = 0; k < this.count; k += 1) {
      let slot = hash(codes[k]!, values[k]!) & mask;
      while (slots[slot] !== 0) slot = (slot + 1) & mask;
      slots[slot] = k + 1;
    }
    this.codes = codes;
    this.values = values;
    this.slots = slots;
  }
}
