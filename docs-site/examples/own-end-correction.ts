import {
  type EndCorrection,
  flanged,
  type Opening,
} from '@airspring/core/duct';
import { endCorrectionLaws } from '@airspring/core/laws';
import { format } from '@airspring/core/quantity';
import { lengthForTuning } from '@airspring/core/vent';

// Invented: as if a grille close to the opening had been measured.
const behindGrille: EndCorrection = Object.assign(
  ({ radius }: Opening) => 0.95 * radius,
  { sources: ['my-measurement'], greatestKa: 0.3 },
);
// A slip: a length that does not grow with the opening, and without a source.
const slip: EndCorrection = Object.assign(() => 0.03, { sources: [] });

for (const [name, mine] of Object.entries({ behindGrille, slip }))
  for (const { law, holds, detail } of endCorrectionLaws(mine))
    console.log(`${name}, ${law}:`, holds ? 'holds,' : 'BROKEN,', detail);

for (const [name, outerEnd] of Object.entries({ flanged, behindGrille })) {
  const vent = lengthForTuning({
    vent: { diameter: '75 mm', outerEnd },
    netVolume: '45 L',
    fb: '30 Hz',
  });
  if (vent.ok) console.log(name, format('length', vent.length, 'mm'));
}
