/**
 * A bank of sections of two states each, which an output is the sum of. The numbers of a section: its transition by rows, its input,
 * and its share in the output. Three sections are worked through at a time, since the processor then waits for none of them.
 */
const SECTION = 8;
const AT_ONCE = 3;

/** One step of a section: the mode or modes that it holds, for the drive of the same sample. */
export interface Section {
  readonly transition: readonly [number, number, number, number];
  readonly input: readonly [number, number];
  readonly output: readonly [number, number];
}

/** The numbers of a bank, filled up with sections of nothing. */
export function bankOf(sections: readonly Section[]): Float64Array {
  const passes = Math.max(1, Math.ceil(sections.length / AT_ONCE));
  const bank = new Float64Array(passes * AT_ONCE * SECTION);
  sections.forEach(({ transition, input, output }, i) => bank.set([...transition, ...input, ...output], i * SECTION));
  return bank;
}

/** States of a bank. */
export const statesOf = (bank: Float64Array): Float64Array => new Float64Array((bank.length / SECTION) * 2);

/** out ← direct × input + the bank's answer to it; a kernel. States are carried on. */
export function runBank(
  bank: Float64Array,
  states: Float64Array,
  direct: number,
  input: Float64Array,
  out: Float64Array,
  length: number,
): void {
  for (let i = 0; i < length; i++) out[i] = direct * input[i]!;
  for (let at = 0, state = 0; at < bank.length; at += AT_ONCE * SECTION, state += 2 * AT_ONCE) {
    addThree(bank, at, states, state, input, out, length);
  }
}

function addThree(
  bank: Float64Array,
  at: number,
  states: Float64Array,
  state: number,
  input: Float64Array,
  out: Float64Array,
  length: number,
): void {
  const [p11, p12, p21, p22] = [bank[at]!, bank[at + 1]!, bank[at + 2]!, bank[at + 3]!];
  const [p1, p2, pc, pd] = [bank[at + 4]!, bank[at + 5]!, bank[at + 6]!, bank[at + 7]!];
  const [q11, q12, q21, q22] = [bank[at + 8]!, bank[at + 9]!, bank[at + 10]!, bank[at + 11]!];
  const [q1, q2, qc, qd] = [bank[at + 12]!, bank[at + 13]!, bank[at + 14]!, bank[at + 15]!];
  const [r11, r12, r21, r22] = [bank[at + 16]!, bank[at + 17]!, bank[at + 18]!, bank[at + 19]!];
  const [r1, r2, rc, rd] = [bank[at + 20]!, bank[at + 21]!, bank[at + 22]!, bank[at + 23]!];
  let a = states[state]!;
  let b = states[state + 1]!;
  let c = states[state + 2]!;
  let d = states[state + 3]!;
  let e = states[state + 4]!;
  let f = states[state + 5]!;
  for (let i = 0; i < length; i++) {
    const u = input[i]!;
    out[i]! += pc * a + pd * b + (qc * c + qd * d) + (rc * e + rd * f);
    const nextA = p11 * a + (p12 * b + p1 * u);
    const nextC = q11 * c + (q12 * d + q1 * u);
    const nextE = r11 * e + (r12 * f + r1 * u);
    b = p21 * a + (p22 * b + p2 * u);
    d = q21 * c + (q22 * d + q2 * u);
    f = r21 * e + (r22 * f + r2 * u);
    a = nextA;
    c = nextC;
    e = nextE;
  }
  states[state] = a;
  states[state + 1] = b;
  states[state + 2] = c;
  states[state + 3] = d;
  states[state + 4] = e;
  states[state + 5] = f;
}
