import { type Brief, tradeOffs } from 'airspring';

// Invented.
const brief = {
  version: 1,
  title: 'A box beside the sofa',
  drivers: [
    {
      name: 'ten-inch driver, invented',
      fs: '24 Hz',
      Qts: 0.36,
      Qes: 0.4,
      Vas: '70 L',
      Sd: '330 cm²',
      Re: '5.6 Ω',
      Xmax: '9 mm',
      Pe: '200 W',
      outerDiameter: '262 mm',
      cutoutDiameter: '232 mm',
      depth: '118 mm',
      displacedVolume: '1.6 L',
    },
  ],
  space: {
    width: '450 mm',
    height: '600 mm',
    depth: '500 mm',
    panelThickness: '18 mm',
  },
  wanted: { lowest: '35 Hz', highest: '120 Hz', level: '96 dB' },
  amplifier: { voltage: '40 V' },
  box: { kinds: ['vented'] },
  vent: {
    airSpeed: '12 m/s',
    smallest: '40 mm',
    largest: '120 mm',
    wall: '3 mm',
    bends: 1,
  },
  printer: { height: '250 mm', width: '250 mm' },
} satisfies Brief;

const { boxes } = await tradeOffs(brief, {
  lowest: ['28 Hz', '33 Hz', '39 Hz', '46 Hz'],
  levels: ['88 dB', '98 dB', '101 dB'],
});
for (const { lowest, level, volume, outer } of boxes) {
  const edges = outer.map((edge) => Math.round(edge * 1000)).join(' × ');
  const litres = (volume * 1000).toFixed(1);
  console.log(`${lowest} Hz\t${level} dB\t${litres} L\t${edges} mm`);
}
