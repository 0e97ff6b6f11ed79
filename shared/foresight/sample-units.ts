/** Unit numbers of the sample, ascending: a seeded shuffle's first ones. */
export function sampleUnits(units: number, sample: number, seed: number): Int32Array {
  const all = Int32Array.from({ length: units }, (_, i) => i);
  if (units <= sample) return all;
  let state = (seed ^ 0x9e3779b9) >>> 0;
  for (let i = 0; i < sample; i++) {
    // xorshift32 (Marsaglia 2003, J. Stat. Softw. 8)
    state ^= state << 13;
    state >>>= 0;
    state ^= state >>> 17;
    state ^= state << 5;
    state >>>= 0;
    const j = i + (state % (units - i));
    [all[i], all[j]] = [all[j], all[i]];
  }
  return all.slice(0, sample).sort();
}
