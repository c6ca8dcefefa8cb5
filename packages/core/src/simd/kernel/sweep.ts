// The kernel of `network/sweep.ts`, two frequencies at a time, in AssemblyScript. Its products and sums are taken in the same
// order, so that the results are equal to the last bit. `.config/kernel.mjs` compiles it into `../bytes.ts`.

/** Most frequencies at once. */
export const MOST: i32 = 1024;
/** In memory stand 32 coefficients, then seven columns: frequencies, inverse of the denominator, two results. */
export const COLUMN: usize = 8 * 1032;
export const FREQUENCY: usize = 8 * 32;
const INVERSE: usize = FREQUENCY + COLUMN;
const FIRST: usize = INVERSE + 2 * COLUMN;
const SECOND: usize = FIRST + 2 * COLUMN;

const ROUNDING: f64 = 8 * f64.EPSILON;
const LEAST: f64 = ROUNDING * ROUNDING;

function term(k: i32): v128 {
  return v128.load_splat<f64>(8 * (k as usize));
}

function both(number: f64): v128 {
  return f64x2.splat(number);
}

/** a + b x. */
function ofTwo(x: v128, a: v128, b: v128): v128 {
  return f64x2.add(f64x2.mul(b, x), a);
}

/** a + b x + c x². */
function ofThree(x: v128, a: v128, b: v128, c: v128): v128 {
  return ofTwo(x, a, ofTwo(x, b, c));
}

/** a + b x + c x² + d x³. */
function ofFour(x: v128, a: v128, b: v128, c: v128, d: v128): v128 {
  return ofTwo(x, a, ofThree(x, b, c, d));
}

/** The first of two places at which a comparison does not hold. */
function failing(at: usize, holds: v128): i32 {
  return ((at >> 3) as i32) + (i64x2.extract_lane(holds, 0) === 0 ? 0 : 1);
}

/** Writes a + jb times the inverse of the denominator into a column, whose imaginary part stands after its real part. */
function storeQuotient(at: usize, column: usize, a: v128, b: v128): void {
  const c = v128.load(at, INVERSE);
  const d = v128.load(at, INVERSE + COLUMN);
  v128.store(at + column, f64x2.sub(f64x2.mul(a, c), f64x2.mul(b, d)));
  v128.store(at + column, f64x2.add(f64x2.mul(a, d), f64x2.mul(b, c)), COLUMN);
}

/** Writes 1/(a + jb), where `size` is a² + b². */
function storeInverse(at: usize, a: v128, b: v128, size: v128): void {
  const unit = f64x2.div(both(1), size);
  v128.store(at, f64x2.mul(a, unit), INVERSE);
  v128.store(at, f64x2.mul(f64x2.neg(b), unit), INVERSE + COLUMN);
}

/** The inverse of a denominator of at most eight terms; the first frequency at which what is left of it is rounding, or −1. */
export function invertOfEight(bytes: usize, toUnit: f64): i32 {
  // Read before the loop: the compiler would read them again after each store.
  const c0 = term(0);
  const c1 = term(1);
  const c2 = term(2);
  const c3 = term(3);
  const c4 = term(4);
  const c5 = term(5);
  const c6 = term(6);
  const c7 = term(7);
  const unit = both(toUnit);
  const least = both(LEAST);
  for (let at: usize = 0; at < bytes; at += 16) {
    const w = f64x2.mul(v128.load(at, FREQUENCY), unit);
    const x = f64x2.mul(w, w);
    const square = f64x2.neg(x);
    const a = ofFour(square, c0, c2, c4, c6);
    const b = f64x2.mul(ofFour(square, c1, c3, c5, c7), w);
    const sum = f64x2.add(f64x2.mul(a, a), f64x2.mul(b, b));
    const even = ofFour(x, f64x2.abs(c0), f64x2.abs(c2), f64x2.abs(c4), f64x2.abs(c6));
    const odd = f64x2.mul(ofFour(x, f64x2.abs(c1), f64x2.abs(c3), f64x2.abs(c5), f64x2.abs(c7)), w);
    const terms = f64x2.add(even, odd);
    const holds = f64x2.gt(sum, f64x2.mul(f64x2.mul(least, terms), terms));
    if (!i64x2.all_true(holds)) return failing(at, holds);
    storeInverse(at, a, b, sum);
  }
  return -1;
}

/** Two polynomials of at most six terms times the inverse. */
export function pairOfSix(bytes: usize, toUnit: f64): void {
  const a0 = term(0);
  const a1 = term(1);
  const a2 = term(2);
  const a3 = term(3);
  const a4 = term(4);
  const a5 = term(5);
  const b0 = term(8);
  const b1 = term(9);
  const b2 = term(10);
  const b3 = term(11);
  const b4 = term(12);
  const b5 = term(13);
  const unit = both(toUnit);
  for (let at: usize = 0; at < bytes; at += 16) {
    const w = f64x2.mul(v128.load(at, FREQUENCY), unit);
    const square = f64x2.neg(f64x2.mul(w, w));
    storeQuotient(at, FIRST, ofThree(square, a0, a2, a4), f64x2.mul(ofThree(square, a1, a3, a5), w));
    storeQuotient(at, SECOND, ofThree(square, b0, b2, b4), f64x2.mul(ofThree(square, b1, b3, b5), w));
  }
}

/** The same of at most eight terms. */
export function pairOfEight(bytes: usize, toUnit: f64): void {
  const unit = both(toUnit);
  for (let at: usize = 0; at < bytes; at += 16) {
    const w = f64x2.mul(v128.load(at, FREQUENCY), unit);
    const square = f64x2.neg(f64x2.mul(w, w));
    const a = ofFour(square, term(0), term(2), term(4), term(6));
    const b = ofFour(square, term(1), term(3), term(5), term(7));
    storeQuotient(at, FIRST, a, f64x2.mul(b, w));
    const c = ofFour(square, term(8), term(10), term(12), term(14));
    const d = ofFour(square, term(9), term(11), term(13), term(15));
    storeQuotient(at, SECOND, c, f64x2.mul(d, w));
  }
}

/** Every other term of a polynomial, down from the term `last`. */
function everyOther(last: i32, x: v128): v128 {
  let sum = both(0);
  for (let k = last; k >= 0; k -= 2) sum = ofTwo(x, term(k), sum);
  return sum;
}

/** The inverse of a denominator of any number of terms, of which `last` is the highest power; a place, or −1. */
export function invert(bytes: usize, toUnit: f64, last: i32): i32 {
  const unit = both(toUnit);
  for (let at: usize = 0; at < bytes; at += 16) {
    const w = f64x2.mul(v128.load(at, FREQUENCY), unit);
    const square = f64x2.neg(f64x2.mul(w, w));
    const a = everyOther(last - (last & 1), square);
    const b = f64x2.mul(everyOther(last - 1 + (last & 1), square), w);
    let sizes = both(0);
    for (let k = last; k >= 0; k--) sizes = ofTwo(w, f64x2.abs(term(k)), sizes);
    const left = f64x2.add(f64x2.abs(a), f64x2.abs(b));
    const holds = f64x2.gt(left, f64x2.mul(both(ROUNDING), sizes));
    if (!i64x2.all_true(holds)) return failing(at, holds);
    storeInverse(at, a, b, f64x2.add(f64x2.mul(a, a), f64x2.mul(b, b)));
  }
  return -1;
}

/** One polynomial of any number of terms times the inverse. */
export function row(bytes: usize, toUnit: f64, last: i32): void {
  const unit = both(toUnit);
  for (let at: usize = 0; at < bytes; at += 16) {
    const w = f64x2.mul(v128.load(at, FREQUENCY), unit);
    const square = f64x2.neg(f64x2.mul(w, w));
    const even = everyOther(last - (last & 1), square);
    storeQuotient(at, FIRST, even, f64x2.mul(everyOther(last - 1 + (last & 1), square), w));
  }
}
