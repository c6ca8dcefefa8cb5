import { bessel, boomBox, chebyshev, fixedAt, quasiThirdOrder } from '@airspring/core/alignment';
import { expect, test } from 'vitest';

const targetOf = (...[alignment, parameters]: Parameters<typeof fixedAt>): readonly number[] => {
  const found = fixedAt(alignment, parameters);
  if (!found.ok) throw new Error(found.because[0]?.text);
  const { target, free } = found.alignment;
  expect(free).toBeUndefined();
  return typeof target === 'function' ? target(Number.NaN) : [];
};
const reason = (...args: Parameters<typeof fixedAt>) => {
  const found = fixedAt(...args);
  return found.ok ? 'ok' : found.because[0]?.text;
};

test('a ripple that is stated gives the shape that is made with it', () => {
  const made = chebyshev(4, { ripple: 0.5 }).target;
  if (typeof made !== 'function') throw new Error('no polynomial');
  const [found, wanted] = [targetOf(chebyshev(4), { ripple: 0.5 }), made(0)];
  found.forEach((value, i) => {
    expect(value).toBeCloseTo(wanted[i]!, 9);
  });
});

test('a quality factor that is stated is that of both sections', () => {
  const found = targetOf(boomBox, { Q: 0.8 });
  [1, 2 / 0.8, 2 + 1 / 0.8 ** 2, 2 / 0.8, 1].forEach((value, i) => {
    expect(found[i]).toBeCloseTo(value, 9);
  });
});

test('what an alignment cannot have is told with what it has', () => {
  expect(reason(bessel(4), { ripple: 1 })).toBe('BE4 has no parameter.');
  expect(reason(quasiThirdOrder, { ripple: 1 })).toBe('QB3 has the parameter B.');
  expect(reason(boomBox, { Q: 3 })).toBe('BB4 has Q from 0.707 to 1.50.');
  expect(reason(chebyshev(4, { ripple: 0.5 }), { ripple: 1 })).toBe('C4 has ripple = 0.5.');
  expect(reason(chebyshev(4, { ripple: 0.5 }), { ripple: 0.5 })).toBe('ok');
});

test('a fixed shape still allows for the zeros of a box', () => {
  const notch = [0.16, 0, 1];
  const free = chebyshev(4);
  const found = fixedAt(free, { ripple: 0.5 });
  if (!found.ok || typeof found.alignment.target !== 'function' || typeof free.target !== 'function') throw new Error();
  const { target, parameters } = found.alignment;
  expect(target(0, notch)).not.toEqual(target(0));
  const { k } = parameters;
  expect(target(0, notch)).toEqual(free.target(k!, notch));
});
