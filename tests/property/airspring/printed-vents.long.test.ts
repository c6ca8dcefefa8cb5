/** What `design` promises of a printed vent, `build` makes: over printers, tubes, ends and bends. */
import { si } from '@airspring/core/quantity';
import { filesToBuildFrom } from '@airspring/workshop/dossier';
import { extentOf, type Mesh, meshFaults } from '@airspring/workshop/mesh';
import { roundFlare, ventSegments } from '@airspring/workshop/solid';
import type { Brief, Design } from 'airspring';
import { expect } from 'vitest';
import { readBrief } from '../../../packages/airspring/src/brief/read.js';
import { elbowIn, isJoined, wholeLines, widthOf } from '../../../packages/airspring/src/kind/printed-tube.js';
import { standard } from '../../../packages/airspring/src/kind/standard.js';
import { workOf } from '../../../packages/airspring/src/page/work.js';
import { balanced, demo, searchFor } from '../../arbitrary/brief.js';
import { fuzzRuns } from '../../arbitrary/fuzz-runs.js';
import { fc, test } from '../../arbitrary/property.js';

/** The surface in a binary STL file, m. */
function meshOf(bytes: Uint8Array): Mesh {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const count = view.getUint32(80, true);
  const corners = Float64Array.from({ length: 9 * count }, (_, i) => {
    const [triangle, value] = [Math.floor(i / 9), i % 9];
    return view.getFloat32(84 + 50 * triangle + 12 + 4 * value, true) / 1e3;
  });
  return { corners, triangles: Uint32Array.from({ length: 3 * count }, (_, i) => i) };
}

const mm = (least: number, greatest: number) => fc.integer({ min: least, max: greatest });
const cases = fc.record({
  // Mostly low and wide: there elbows lie.
  height: fc.oneof(mm(60, 130), mm(60, 250)),
  width: fc.oneof(mm(150, 250), mm(60, 250)),
  diameter: mm(35, 80),
  wall: fc.constantFrom(1.2, 2, 3, 4.1),
  collar: fc.constantFrom(0, 2, 12),
  bends: fc.constantFrom(0, 1, 1, 1),
  panel: fc.constantFrom(12, 18),
  flare: fc.constantFrom(undefined, undefined, 8, 15),
  count: fc.constantFrom(1, 1, 2),
  tuning: mm(24, 40),
  stated: fc.constantFrom(true, true, false),
});

test.prop([cases], { numRuns: Math.ceil(fuzzRuns / 4) })(
  'each design with a printed vent has the files of its pieces, each within the printer',
  async ({ height, width, diameter, wall, collar, bends, panel, flare, count, tuning, stated }) => {
    const { printer: _, ...plain } = demo;
    const brief = {
      ...plain,
      // Shallow, tuned low and not loud, so that most vents must bend.
      space: { ...demo.space, depth: '300 mm', panelThickness: `${panel} mm` },
      wanted: { ...demo.wanted, lowest: '45 Hz', level: '76 dB', fall: '15 dB' },
      box: { ...demo.box, tuning: `${tuning} Hz`, kinds: [flare === undefined ? 'vented' : 'flared-vented'] },
      ...(stated && { printer: { height: `${height} mm`, width: `${width} mm` } }),
      vent: {
        ...demo.vent,
        airSpeed: '60 m/s',
        smallest: `${diameter} mm`,
        largest: `${diameter} mm`,
        wall: `${wall} mm`,
        collar: `${collar} mm`,
        bends,
        counts: [count],
      },
      ...(flare !== undefined && { flare: { inner: `${flare} mm`, outer: `${flare} mm` } }),
    } as unknown as Brief;
    const answer = balanced(searchFor(brief));
    for (const design of (answer?.designs ?? []) as readonly Design[]) {
      for (const { path, relative } of design.margins)
        if (path.startsWith('printer.')) expect(relative).toBeLessThanOrEqual(1e-9);
      const { files, notes } = await filesToBuildFrom(workOf(design, readBrief(brief, standard)));
      const { printer: usual, pieces: told } = design.vent!;
      // No usual printer joins thin walls.
      if (!stated && usual === undefined) {
        expect(wall).toBeLessThan(1.75);
        continue;
      }
      expect(usual === undefined).toBe(stated);
      const built = usual ?? { height: height / 1e3, width: width / 1e3 };
      const page = String(files[0]!.contents).replace(/\u00a0/g, ' ');
      expect(page.includes(`one that builds ${built.height * 1e3} mm in each direction`)).toBe(!stated);
      for (const piece of told) if (piece !== design.vent!.bend?.arc) expect(piece).toBeLessThan(built.height + 1e-9);
      expect(notes).toEqual([]);
      const pieces = files.filter(({ path }) => /^vent.*\.stl$/.test(path));
      expect(pieces.length).toBeGreaterThan(0);
      for (const { contents } of pieces) {
        const mesh = meshOf(contents as Uint8Array);
        expect(meshFaults(mesh)).toEqual([]);
        const [x, y, z] = extentOf(mesh).edges;
        expect([Math.max(x, y) <= built.width + 5e-5, z <= built.height + 5e-5]).toEqual([true, true]);
      }
    }
  },
);

const metres = (value: number) => si('length', value);
const tubes = fc.record({
  height: mm(40, 250),
  width: mm(60, 250),
  diameter: mm(25, 120),
  wall: fc.constantFrom(1.2, 2, 3, 4.1),
  nozzle: fc.constantFrom(0.4, 0.6),
  collar: mm(0, 15),
  flare: fc.record({ inner: fc.constantFrom(0, 0, 1, 12), outer: fc.constantFrom(0, 0, 1, 12) }),
  wide: fc.constantFrom(1, 1.5),
  first: fc.constantFrom(4, 12, 16.9, 17, 18, 24.3, 60, 137.77, 300),
  more: fc.constantFrom(0, 0.5, 7, 40),
  second: fc.constantFrom(0, 3, 12.9, 13, 16.5, 60, 244.4),
  bent: fc.boolean(),
});

test.prop([tubes], { numRuns: 10 * fuzzRuns })(
  'a tube that the search takes for printed, the workshop divides, however long its straight parts are',
  ({ height, width, diameter, collar, flare, wide, first, more, second, bent, ...tube }) => {
    const printer = { height: height / 1e3, width: width / 1e3 };
    const [nozzle, wall] = [tube.nozzle / 1e3, wholeLines(tube.wall / 1e3, tube.nozzle / 1e3)];
    const widening = { inner: flare.inner / 1e3, outer: flare.outer / 1e3 };
    const outerDiameter = diameter / 1e3 + 2 * wall;
    const flangeDiameter = outerDiameter + 2 * (Math.max(widening.inner, widening.outer) + collar / 1e3);
    const printed = { diameter: diameter / 1e3, wall, nozzle, flangeDiameter, widening, depth: widening };
    if (widthOf(printed) > printer.width) return;
    const bendRadius = wide * outerDiameter;
    const elbow = elbowIn(printed, { bendRadius, firstLeg: first / 1e3 }, printer);
    const legs = { first: Math.max(first / 1e3 + more / 1e3, widening.outer), second: second / 1e3 };
    legs.second = Math.max(legs.second, widening.inner > 0 ? Math.max(widening.inner, wall) : 0);
    const length = legs.first + (bent ? (Math.PI / 2) * bendRadius : 0.03) + legs.second;
    if (bent ? elbow === undefined : length > printer.height && !isJoined(printed, printer)) return;
    const made = ventSegments({
      vent: {
        diameter: metres(printed.diameter),
        length: metres(length),
        wall: metres(wall),
        nozzle: metres(nozzle),
        flange: { diameter: metres(flangeDiameter), thickness: '4 mm' },
        fineness: '0.5 mm',
        ...(widening.outer > 0 && { outerFlare: roundFlare({ radius: metres(widening.outer) }) }),
        ...(widening.inner > 0 && { innerFlare: roundFlare({ radius: metres(widening.inner) }) }),
        ...(bent && {
          bends: [{ leg: metres(legs.first), angle: '90 deg' as const, centreLineRadius: metres(bendRadius) }],
        }),
      },
      printer: { width: metres(printer.width), depth: metres(printer.width), height: metres(printer.height) },
    });
    if (!made.ok) throw new Error(made.because[0]?.text);
    for (const { mesh } of made.parts) {
      const { least, edges } = extentOf(mesh);
      expect(Math.max(edges[0], edges[1])).toBeLessThan(printer.width + 1e-3);
      expect(edges[2]).toBeLessThan(printer.height + 1e-3);
      expect(least[2]).toBeCloseTo(0, 3);
    }
  },
);
