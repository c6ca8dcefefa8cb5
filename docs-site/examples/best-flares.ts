import { format, si } from '@airspring/core/quantity';
import { flareForLength } from '@airspring/core/vent';

const tubes = flareForLength({
  length: '40 cm',
  netVolume: '60 L',
  fb: '35 Hz',
});
const { straight, leastLoss, quietest } = tubes;
for (const [name, tube] of Object.entries({
  straight,
  leastLoss,
  quietest,
})) {
  const { flare, diameter, lossRatio, quietFlowPeak } = tube;
  const mm = (x: number) => format('length', si('length', x), 'mm');
  const gain = (side: 'low' | 'high') =>
    20 * Math.log10(quietFlowPeak[side] / straight.quietFlowPeak[side]);
  console.log(`${name}: flare ${mm(flare)}, diameter ${mm(diameter)}`);
  const [low, high] = [gain('low').toFixed(1), gain('high').toFixed(1)];
  const lost = Math.round(100 * lossRatio);
  console.log(`  loses ${lost} %, quiet for ${low} to ${high} dB more`);
}
