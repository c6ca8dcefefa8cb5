import { finiteFlange, flanged, flared } from '@airspring/core/duct';
import { format } from '@airspring/core/quantity';
import { lengthForTuning } from '@airspring/core/vent';
import { stl } from '@airspring/workshop/mesh';
import {
  holeBySaw,
  roundFlare,
  ventSegments,
} from '@airspring/workshop/solid';

const mm = (length: number) => format('length', length, 'mm');
const section = { diameter: '68 mm', wall: '3 mm' } as const;
const radius = '10 mm';
const found = lengthForTuning({
  vent: {
    ...section,
    innerEnd: flared({ radius, end: finiteFlange }),
    outerEnd: flared({ radius, end: flanged }),
  },
  volumeBeforeVent: '38.62 L',
  panelThickness: '18 mm',
  fb: '30.1 Hz',
});
// Its inner end, rounded as well, goes through the panel from outside.
const hole = holeBySaw({ through: '94 mm', saws: ['92 mm', '102 mm'] });
if (found.ok && hole.ok) {
  const { length } = found;
  const flare = roundFlare({ radius });
  const pieces = ventSegments({
    vent: {
      ...section,
      length,
      outerFlare: flare,
      innerFlare: flare,
      flange: { diameter: hole.flangeDiameter },
    },
    printer: { width: '200 mm', depth: '200 mm', height: '200 mm' },
  });
  console.log(`the vent is ${mm(length)} long`);
  if (pieces.ok) {
    const ends = [0, ...pieces.cuts, length];
    for (const [i, { mesh }] of pieces.parts.entries()) {
      const long = mm(ends[i + 1]! - ends[i]!);
      const file = stl(mesh); // to write with node:fs, or to download
      console.log(`a piece of ${long}, as STL`, file.length > 84);
    }
  }
  console.log(`saw a hole of ${mm(hole.diameter)}`);
  console.log(`and cover it by a flange of ${mm(hole.flangeDiameter)}`);
}
