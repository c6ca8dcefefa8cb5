import * as v from 'valibot';
import { air, audible, ohms, size } from '../brief/bounds.js';
import { described } from '../brief/described.js';
import { plainNumber, quantity } from '../brief/quantity-text.js';

const opt = v.exactOptional;
const impedance = quantity('resistance', { ...ohms, example: '30 Ω' });

/** How well a thing is measured where a brief does not say it (common practice). */
export const WITHIN = { frequency: 0.5, length: 3e-3, impedance: 0.05, air: 0.05 } as const;

/** What else a brief may say of the impedance of a box, so that its drivers need no sheet. */
export const impedanceFields = {
  peakImpedance: opt(described(impedance, 'magnitude at the higher of the two peaks')),
  flank: opt(
    described(
      v.strictObject({
        frequency: described(quantity('frequency', audible), 'where it was read'),
        impedance: described(impedance, 'magnitude there'),
      }),
      'one more reading on the side of a peak, about halfway down',
    ),
  ),
  Re: opt(described(quantity('resistance', ohms), 'resistance for direct current at the terminals of the box')),
  within: opt(
    described(
      v.strictObject({
        frequency: opt(
          described(
            quantity('frequency', { least: 0, greatest: 50, unit: 'Hz', example: '0.5 Hz' }, 'not-negative'),
            'how well each frequency is known; default 0.5 Hz',
          ),
        ),
        length: opt(
          described(
            quantity('length', { ...size, least: 0, example: '3 mm' }, 'not-negative'),
            'how well the diameter of the cone is known; default 3 mm',
          ),
        ),
        impedance: opt(
          described(plainNumber(0, 0.5, 0.05), 'how well each impedance is known, as a share of it; default 0.05'),
        ),
        air: opt(
          described(
            quantity('volume', { ...air, least: 0, example: '1 L' }, 'not-negative'),
            'how well the air in the box is known; default a twentieth of it',
          ),
        ),
      }),
      'how well it was measured. Ranges count the leaks of the box besides: from none to box.QL, or to a QL of 5 (common practice) where that is left out',
    ),
  ),
};
