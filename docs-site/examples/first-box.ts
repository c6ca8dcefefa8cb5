import { completeDriver } from '@airspring/core/driver';
import { ventedBox } from '@airspring/core/enclosure';
import {
  type Frequency,
  format,
  type Length,
  type Volume,
} from '@airspring/core/quantity';
import { cutoff } from '@airspring/core/response';
import { fit, innerSize, sizeForNetVolume } from '@airspring/core/space';
import { lengthForTuning } from '@airspring/core/vent';

/** What may be changed. Box and driver are invented. */
export const inputs = {
  netVolume: {
    kind: 'volume',
    label: 'Air in the box',
    value: '45 L',
    least: '30 L',
    greatest: '80 L',
    step: 1.02,
  },
  fb: {
    kind: 'frequency',
    label: 'Tuning',
    value: '28 Hz',
    least: '24 Hz',
    greatest: '40 Hz',
    step: 1.01,
  },
  diameter: {
    kind: 'length',
    label: 'Inner diameter of the vent',
    value: '70 mm',
    least: '50 mm',
    greatest: '110 mm',
    step: '1 mm',
  },
} as const;

interface Wish {
  readonly netVolume: Volume;
  readonly fb: Frequency;
  readonly diameter: Length;
}

const body = {
  outerDiameter: '262 mm',
  cutoutDiameter: '232 mm',
  depth: '118 mm',
} as const;
const sheet = completeDriver({
  fs: '27 Hz',
  Qts: 0.36,
  Qes: 0.4,
  Vas: '62 L',
  Sd: '330 cm²',
  Re: '5.6 Ω',
  ...body,
});
if (!sheet.ok) throw new Error(sheet.because[0]?.text);
const { driver } = sheet;
const thickness = '18 mm';

/**
 * From air, tuning and tube to a box: how deep it reaches, how long the
 * tube is, how large the wood.
 */
export function solve({ netVolume, fb, diameter }: Wish) {
  const reach = cutoff(ventedBox({ drivers: driver, netVolume, fb, QL: 7 }));
  const vent = lengthForTuning({
    vent: { diameter, wall: '3 mm' },
    netVolume,
    fb,
  });
  if (!vent.ok) return { ok: false, because: vent.because } as const;
  const outer = sizeForNetVolume({
    netVolume,
    outer: { width: '340 mm', height: '480 mm', depth: '400 mm' },
    shape: 'depth',
    thickness,
    contents: {
      driver: {
        cutoutDiameter: body.cutoutDiameter,
        depthInside: body.depth,
      },
      vent: {
        outerDiameter: (diameter + 0.006) as Length,
        lengthInside: Math.max(0, vent.length - 0.018) as Length,
      },
      bracing: { volume: '0.5 L' },
    },
  });
  const fitted = fit({
    outer,
    thickness,
    driver: body,
    vent: { diameter, wall: '3 mm', length: vent.length },
  });
  return {
    ok: true,
    reach,
    length: vent.length,
    outer,
    inner: innerSize({ outer, thickness }),
    fitted,
  } as const;
}

export function answers(wish: Wish, found = solve(wish)) {
  const mm = (...lengths: number[]) =>
    lengths
      .map((length) => (length * 1e3).toFixed(0))
      .join(' × ')
      .concat(' mm');
  if (!found.ok) {
    const none = 'none';
    return {
      reach: none,
      length: 'no length at all',
      box: none,
      front: none,
      side: none,
      top: none,
      fits: 'does not fit',
      how: found.because[0]?.text ?? '',
    };
  }
  const { reach, length, outer, inner, fitted } = found;
  const bend = fitted.ok && fitted.placement.vent?.bend !== undefined;
  return {
    reach: reach.ok ? format('frequency', reach.frequency, 'Hz') : 'nowhere',
    length: mm(length),
    box: mm(outer.width, outer.height, outer.depth),
    front: mm(outer.width, outer.height),
    side: mm(outer.height, inner.depth),
    top: mm(inner.width, inner.depth),
    fits: fitted.ok ? 'fits' : 'does not fit',
    how: fitted.ok
      ? bend
        ? 'with one bend'
        : 'straight'
      : 'neither straight nor with a bend',
  };
}
