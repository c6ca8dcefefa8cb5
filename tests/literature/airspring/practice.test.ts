import { completeDriver, group } from '@airspring/core/driver';
import { closedBox, type System, ventedBox } from '@airspring/core/enclosure';
import { greatestLevel, travelLimit } from '@airspring/core/limit';
import { si } from '@airspring/core/quantity';
import { cutoff, respond } from '@airspring/core/response';
import { tuning } from '@airspring/core/vent';
import { check } from '../../ledger/check.js';

// What builders tell each other, asked of whole systems. Rules of the trade without a source: they support, they don't prove.
const completed = (sheet: Parameters<typeof completeDriver>[0]) => {
  const found = completeDriver(sheet);
  if (!found.ok) throw new Error(found.because[0]?.text);
  return found.driver;
};
const practice = (locator: string) => ({ source: { key: 'common-practice', locator }, status: 'practice' }) as const;
const levelAt = (system: System, f: number, driveVoltageRms = 1) =>
  respond(system, [f], { driveVoltageRms: si('voltageRms', driveVoltageRms) }).levelHalfSpace[0]!;

/** Invented. */
const ten = completed({
  fs: '24 Hz',
  Qts: 0.36,
  Qes: 0.4,
  Vas: '70 L',
  Sd: '330 cm²',
  Re: '5.6 Ω',
  Le: '0.9 mH',
  Xmax: '9 mm',
});
const tenBox = (wiring: Parameters<typeof group>[1], litres: number, fb = 28) =>
  ventedBox({
    drivers: group(ten, wiring),
    netVolume: si('volume', litres / 1e3),
    fb: si('frequency', fb),
    ventArea: '50 cm²',
    QL: 7,
  });

check('practice.two-in-parallel', {
  formula: 'response/respond',
  ...practice('two equal drivers in parallel, on one amplifier setting and in twice the box, play 6 dB louder'),
  kind: 'example',
  given: { f: { value: [20, 28, 40, 120], unit: 'Hz' } },
  got: ({ f }) => levelAt(tenBox({ parallel: 2 }, 80), f) - levelAt(tenBox({}, 40), f),
  expected: [6, 6, 6, 6],
  unit: 'dB',
  tolerance: { absolute: 0.05, why: 'the rule says 6, for 6.02' },
});

check('practice.isobaric-half-volume', {
  formula: 'response/respond',
  ...practice('an isobaric pair in half the box has the response of one driver in the whole'),
  kind: 'example',
  given: { f: { value: [20, 28, 40, 120], unit: 'Hz' } },
  got: ({ f }) => {
    const [pair, one] = [tenBox({ series: 2, isobaric: true }, 20), tenBox({}, 40)];
    return levelAt(pair, f) - levelAt(pair, 60) - (levelAt(one, f) - levelAt(one, 60));
  },
  expected: [0, 0, 0, 0],
  unit: 'dB, re 60 Hz',
  tolerance: { absolute: 3e-13, why: 'exact without the air between the cones' },
});

check('practice.below-tuning', {
  formula: 'limit/greatestLevel',
  ...practice(
    'below its tuning a vented box no longer holds the cone: an octave under it the travel is that of the open driver',
  ),
  kind: 'example',
  given: { fb: { value: [24, 28, 34], unit: 'Hz' } },
  got: ({ fb }) => {
    const drive = (system: System, f: number) => greatestLevel(system, travelLimit(ten), [f]).driveVoltageRms[0]!;
    const open = closedBox({ drivers: ten, netVolume: '100000 L' });
    return drive(tenBox({}, 40, fb), fb / 2) / drive(open, fb / 2);
  },
  expected: [1, 1, 1],
  unit: '1, drive over that of the open driver',
  tolerance: {
    absolute: 0.15,
    why: 'the air of the vent still hangs on the cone as a mass, which below fs gives it a little more travel than none',
  },
});

// The box of the vent's own rows: 2 in wide, 7.75 in long, 33 Hz. The account names no driver; this one is invented so
// that its cut-offs come near: a fit of three numbers by one driver, which shows that the account agrees with itself.
const inch = (value: number) => si('length', value * 0.0254);
const told = completed({ fs: '23.5 Hz', Qts: 0.29, Qes: 0.31, Vas: '23 L', Sd: '130 cm²', Re: '6 Ω' });
function toldVolume(): number {
  let [low, high] = [0.005, 0.1];
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    const found = tuning({ vent: { diameter: inch(2), length: inch(7.75) }, netVolume: si('volume', middle) });
    if (found.ok && found.fb > 33) low = middle;
    else high = middle;
  }
  return low;
}
const toldF3 = (fb: number) => {
  const found = cutoff(
    ventedBox({ drivers: told, netVolume: si('volume', toldVolume()), fb: si('frequency', fb), QL: 7 }),
  );
  return found.ok ? found.frequency : Number.NaN;
};

check('practice.told-box.cutoffs', {
  formula: 'response/cutoff',
  ...practice(
    "builders' account of that box: 33 Hz gives −3 dB at about 30 Hz, 28 Hz at about 25 Hz, 40 to 45 Hz near 35 Hz; driver invented to fit",
  ),
  kind: 'measured',
  given: { fb: { value: [33, 28, 42.5], unit: 'Hz' } },
  got: ({ fb }) => toldF3(fb),
  expected: [30, 25, 35],
  unit: 'Hz',
  tolerance: { absolute: 2.5, why: "told as 'about', to the next 5 Hz" },
});
