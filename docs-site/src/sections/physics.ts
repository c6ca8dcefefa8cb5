import { si } from '@airspring/core/quantity';
import { effectiveLength } from '@airspring/core/vent';
import type { Design } from 'airspring';
import type { BriefFacts } from '../brief-facts.js';
import { html, type Markup } from '../html.js';
import { say } from '../say.js';
import { cite } from './sources.js';

/** Why a slow vent is a long one: the resonance, with the numbers of the box. */
export function physics(design: Design, designs: readonly Design[], facts: BriefFacts): Markup | undefined {
  const { vent, box } = design;
  if (!vent) return undefined;
  const { air, length: unit } = facts;
  const mm = (value: number) => say('length', value, unit, 4);
  const area = (vent.count * Math.PI * vent.diameter ** 2) / 4;
  const wall = (vent.outerDiameter - vent.diameter) / 2;
  const tube = {
    diameter: si('length', vent.diameter),
    count: vent.count,
    length: si('length', vent.length),
    ...(wall > 0 && { wall: si('length', wall) }),
  };
  const moving = effectiveLength({ vent: tube, frequency: si('frequency', vent.fb) }, air);
  const reach =
    box.inner[
      vent.face === 'front' || vent.face === 'back' ? 2 : vent.face === 'left' || vent.face === 'right' ? 0 : 1
    ];
  const straightRoom = reach + box.panelThickness - vent.clearance;
  return html`
<section aria-labelledby="why"><h2 id="why">Why a slow vent is a long one</h2>
<p>The air in a box is a spring, and the air in the vent is a mass on it. Together they resonate at one frequency, the tuning <i>f</i><sub>b</sub> ${cite('rayleigh1896', '§303–307')}:</p>
<math display="block" aria-label="2 pi f b, squared, is c squared times S over V times l"><msup><mrow><mo>(</mo><mn>2</mn><mi>π</mi><msub><mi>f</mi><mi mathvariant="normal">b</mi></msub><mo>)</mo></mrow><mn>2</mn></msup><mo>=</mo><msup><mi>c</mi><mn>2</mn></msup><mfrac><mi>S</mi><mrow><mi>V</mi><mi mathvariant="normal">ℓ</mi></mrow></mfrac></math>
<p>Around the tuning nearly all the sound comes from the vent. The wanted level determines how much air it moves, and the section <i>S</i> determines how fast. Twice the section halves the speed, but to keep the tuning the length <i>ℓ</i> must double too. The larger tube also takes more out of the volume <i>V</i>.</p>
<p>Box ${design.name}: <i>c</i> = ${say('speed', air.speedOfSound, 'm/s', 4)}, <i>S</i> = ${say('area', area, 'cm²')}, <i>V</i> = ${say('volume', box.netVolume, 'L')} of free air, and <i>ℓ</i> = ${mm(moving)}: the ${mm(vent.length)} of the tube, and ${say('length', moving - vent.length, unit, 2)} of air at its two ends that moves with it. This tunes the box to ${say('frequency', vent.fb, 'Hz')}.${vent.length > straightRoom && html` A straight tube could be at most ${mm(straightRoom)} long before its inner end came too near the far panel, so this one has to bend.`}</p>
${contrast(design, designs, facts)}
</section>`;
}

/** The other end of the bargain, where a design shows it. */
function contrast(design: Design, designs: readonly Design[], { length }: BriefFacts): Markup | undefined {
  const own = design.atWantedLevel.airSpeedPeak?.value;
  const other = designs
    .filter(
      ({ vent, atWantedLevel }) =>
        vent && vent.length < (design.vent?.length ?? 0) && (atWantedLevel.airSpeedPeak?.value ?? 0) > (own ?? 0),
    )
    .sort((a, b) => (a.vent?.length ?? 0) - (b.vent?.length ?? 0))[0];
  const fast = other?.atWantedLevel.airSpeedPeak?.value;
  if (!other?.vent || own === undefined || fast === undefined) return undefined;
  return html`<p>Box ${other.name} makes the opposite choice: its vent of ${say('length', other.vent.diameter, length, 4)} needs only ${say('length', other.vent.length, length, 4)}, and its air moves ${(fast / own).toFixed(1)} times as fast.</p>`;
}
