import { standardAir } from '@airspring/core/air';
import {
  type Frequency,
  format,
  type Length,
  si,
  type Volume,
} from '@airspring/core/quantity';
import {
  airSpeedCustoms,
  airSpeedPeak,
  lengthForTuning,
} from '@airspring/core/vent';

/** What may be changed. The box is invented. */
export const inputs = {
  diameter: {
    kind: 'length',
    label: 'Inner diameter of the vent',
    value: '75 mm',
    least: '60 mm',
    greatest: '140 mm',
    step: '1 mm',
  },
  fb: {
    kind: 'frequency',
    label: 'Tuning',
    value: '30 Hz',
    least: '24 Hz',
    greatest: '45 Hz',
    step: 1.01,
  },
  netVolume: {
    kind: 'volume',
    label: 'Air in the box',
    value: '45 L',
    least: '25 L',
    greatest: '80 L',
    step: 1.02,
  },
} as const;

interface Box {
  readonly diameter: Length;
  readonly fb: Frequency;
  readonly netVolume: Volume;
}

/**
 * The vent that tunes the box; wide short ones may tune too high even as a
 * bare hole.
 */
export const ventOf = ({ diameter, fb, netVolume }: Box) =>
  lengthForTuning({ vent: { diameter, wall: '3 mm' }, netVolume, fb });

/**
 * At the tuning the vent alone is heard: for 96 dB at one metre in half
 * space it must move U = p / (ρ fb).
 */
export function speedOf({ diameter, fb }: Box) {
  const pressure = 20e-6 * 10 ** (96 / 20); // rms, Pa
  const flowPeak = si(
    'volumeFlow',
    (Math.SQRT2 * pressure) / (standardAir.density * fb),
  );
  return airSpeedPeak({ diameter, flowPeak });
}

/** Where a speed stands among the limits that people go by. */
function customOf(speed: number): string {
  const { strict, usual } = airSpeedCustoms;
  if (speed > usual.airSpeedPeak)
    return 'faster than any rule of thumb allows';
  if (speed > strict.airSpeedPeak)
    return 'faster than the stricter rule of thumb';
  return 'as slow as the stricter rule of thumb asks';
}

export function answers(box: Box) {
  const vent = ventOf(box);
  const wide = ventOf({
    ...box,
    diameter: si('length', box.diameter * Math.SQRT2),
  });
  const speed = speedOf(box);
  const depth = Math.cbrt(box.netVolume); // inside, were the box a cube
  const mm = (length: number) => format('length', length, 'mm');
  return {
    length: vent.ok ? mm(vent.length) : 'no length at all',
    wideDiameter: mm(box.diameter * Math.SQRT2),
    wideLength: wide.ok ? mm(wide.length) : 'no length at all',
    times:
      vent.ok && wide.ok
        ? `${(wide.length / vent.length).toFixed(2)} times`
        : 'many times',
    speed: format('airSpeedPeak', speed, 'm/s'),
    custom: customOf(speed),
    depth: mm(depth),
    free: mm(box.diameter),
    // One diameter of free air before the inner end: common practice.
    fits:
      vent.ok && vent.length + box.diameter <= depth
        ? 'fits'
        : 'does not fit',
  };
}
