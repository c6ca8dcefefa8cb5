import * as v from 'valibot';
import { described } from './described.js';
import { plainNumber, quantity } from './quantity-text.js';

const opt = v.exactOptional;
const travel = quantity('displacementPeak', { least: 0.001, greatest: 200, unit: 'mm', example: '12 mm' });

/** A quantity over displacement: a polynomial over its value at rest. */
const curve = (what: string) =>
  described(
    v.strictObject({
      reach: described(travel, 'the displacement that counts as 1, up to which it was measured'),
      coefficients: v.pipe(
        v.array(plainNumber(-1000, 1000, -0.3)),
        v.minLength(1, 'empty\na coefficient at least\nLeave the curve out where none is known.'),
        v.maxLength(12, 'out-of-range\na list of at most 12 numbers\nGive the first powers alone.'),
        v.examples([[0.02, -0.35]] as never),
        v.description(
          'of the first, second … power of displacement over reach, outwards above zero; -0.35 in the second place takes 35 % off at both ends',
        ),
      ),
    }),
    what,
  );

const resistance = quantity('thermalResistance', { least: 0.001, greatest: 1000, unit: 'K/W', example: '3.5 K/W' });
const time = (example: string) => quantity('time', { least: 0.01, greatest: 100_000, unit: 's', example });

/** What a driver does when it is played loud, as its maker tells it or a measurement. Music is then played through the nonlinear driver. */
export const largeSignalField = described(
  v.strictObject({
    forceFactor: opt(curve('the force factor over displacement, over its value at rest')),
    stiffness: opt(curve('the stiffness of the suspension over displacement, over its value at rest')),
    inductance: opt(curve('the inductance Le over displacement, over its value at rest')),
    Xmech: opt(
      described(
        travel,
        'travel at which coil or suspension meets something hard, one way: half of what a sheet states from peak to peak',
      ),
    ),
    heat: opt(
      described(
        v.strictObject({
          coilToMagnet: described(resistance, 'thermal resistance from the coil to magnet and frame'),
          magnetToAir: described(resistance, 'thermal resistance from magnet and frame to the air'),
          coilTime: described(time('6 s'), 'time constant of the coil beside a cold magnet'),
          magnetTime: described(time('1200 s'), 'time constant of magnet and frame'),
        }),
        'how the coil of one driver warms up',
      ),
    ),
  }),
  'what changes when it is played loud; recordings are then played through it by a nonlinear simulation',
);
