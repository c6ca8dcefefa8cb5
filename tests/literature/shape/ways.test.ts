/** How far a solid inside a box can move towards each face, by linear programs over the half spaces of the panels. */
import { type Length, si } from '@airspring/core/quantity';
import { cuboidInterior, faces, type Interior, type Solid } from '@airspring/core/space';
import { boxShape, interiorOf, wedge } from '@airspring/workshop/shape';
import { check } from '../../ledger/check.js';
import boxes from './ways.json' with { type: 'json' };

type Box = (typeof boxes)[number];
const m = (metres: number): Length => si('length', metres);

function interior({ sizes, thickness }: Box): Interior {
  if (typeof thickness === 'object') {
    const { width, height, depth } = sizes as Record<string, number>;
    const outer = { width: m(width!), height: m(height!), depth: m(depth!) };
    const panels = Object.fromEntries(faces.map((face, i) => [face, m(thickness[i]!)]));
    return cuboidInterior({ outer, thickness: panels as never });
  }
  const { across, up, top, length } = sizes as Record<string, number>;
  const section = wedge({ across: m(across!), up: m(up!), top: m(top!) });
  const shape = boxShape({ along: 'width', outer: { ...section, length: m(length!) }, thickness: m(thickness) });
  if (!shape.ok) throw new Error(shape.because[0]?.text);
  return interiorOf(shape);
}

for (const [name, formula] of [
  ['cuboid', 'space/cuboidInterior'],
  ['wedge', 'shape/interiorOf'],
] as const) {
  for (const box of boxes.filter((one) => one.name === name)) {
    check(`${formula.replace('/', '.')}.way-of-${box.solid.form}`, {
      formula,
      source: {
        key: 'scipy',
        locator: 'linprog: the greatest step within the half spaces of the panels; script ways.py',
      },
      status: 'derived',
      kind: 'program',
      given: { towards: { value: faces.join(', '), unit: '' } },
      got: () => faces.map((face) => interior(box).way({ part: 'clearance', ...box.solid } as unknown as Solid, face)),
      expected: faces.map((face) => box.ways[face]),
      unit: 'm',
      tolerance:
        name === 'wedge'
          ? { absolute: 1e-9, why: 'a corner that is in a slanted wall by less than a nanometre counts as inside' }
          : { absolute: 2e-15, why: 'rounding of lengths below a metre' },
    });
  }
}
