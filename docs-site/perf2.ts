import { equations } from '../packages/core/src/network/equations.js';
import { expand, predictedProducts } from '../packages/core/src/network/expansion.js';
import { slotsOf } from '../packages/core/src/network/slots.js';
import { probeRows } from '../packages/core/src/network/reading.js';
import { expandedParts, partProgram } from '../packages/core/src/network/polynomial-parts.js';
import { refuseBadTopology } from '../packages/core/src/network/refusals.js';
import { driver } from '@airspring/core/driver';
import { ventedBox } from '@airspring/core/enclosure';
const ten = driver({ Sd: '330 cm²', Mms: '86 g', Cms: '0.4 mm/N', Rms: '3.6 N·s/m', Re: '5.6 ohm', Le: '0.9 mH', Bl: '14.3 T·m', Xmax: '9 mm' });
const s = ventedBox({ drivers: ten, netVolume: '60 L', fb: '28 Hz', ventArea: '60 cm²', QL: 7, QA: 50, QP: 60, sourceResistance: '0.1 ohm' });
const t = s.network.topology;
const time = (name: string, f: () => unknown, n = 200) => { for (let i = 0; i < n; i++) f(); let best = 1e9; for (let k = 0; k < 7; k++) { const t0 = performance.now(); for (let i = 0; i < n; i++) f(); best = Math.min(best, (performance.now() - t0) / n * 1000); } console.log(name.padEnd(20), best.toFixed(1)); };
time('refuse', () => refuseBadTopology(t));
time('equations', () => equations(t,false));
const e = equations(t,false); console.log(e.size, predictedProducts(e));
time('predicted', () => predictedProducts(e));
const slots = slotsOf(t); const rows = probeRows(t, e, slots);
time('rows', () => probeRows(t, e, slots));


time('parts', () => expandedParts(t, e, rows, []));
const parts = expandedParts(t, e, rows, [])!; console.log(parts.map((p) => p.terms.length).join());
time('program', () => partProgram(parts, rows, 600));
