import { logarithmicGrid } from '@airspring/core/quantity';
import { boundaryPower } from '@airspring/core/room';

const tones = logarithmicGrid(20, 320, 97);
const floor = { distance: '0 m' } as const;
const wall = { distance: '0.5 m' } as const;
const alone = boundaryPower([floor], tones);
const corner = boundaryPower([floor, wall, wall], tones);
// A quarter of the space is left: 6 dB on top of the power.
const adds = corner.map((power, i) => power - alone[i]! + 6.02);
const least = Math.min(...adds);
const at = tones[adds.indexOf(least)]?.toPrecision(3);
console.log(adds[0]?.toFixed(1), 'dB;', `${least.toFixed(1)} dB at ${at} Hz`);
