/** Which steps of a calculation are to be done again, a bit each: all of them at first. */
export class StaleSteps {
  private readonly words: Int32Array;
  /** No word before this one has a bit set. */
  private from = 0;

  constructor(steps: number) {
    this.words = new Int32Array(Math.ceil(steps / 32));
    for (let step = 0; step < steps; step += 1) this.mark(step);
  }

  mark(step: number): void {
    const word = step >>> 5;
    this.words[word] = (this.words[word] ?? 0) | (firstBit >>> (step & 31));
    if (word < this.from) this.from = word;
  }

  /** Takes the first step that is left; -1 when none is. */
  next(): number {
    const { words } = this;
    for (let word = this.from; word < words.length; word += 1) {
      const bits = words[word] ?? 0;
      if (bits === 0) continue;
      this.from = word;
      const place = Math.clz32(bits);
      words[word] = bits & ~(firstBit >>> place);
      return word * 32 + place;
    }
    this.from = words.length;
    return -1;
  }
}

const firstBit = 0x80000000;
