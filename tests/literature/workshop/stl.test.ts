import { stl } from '@airspring/workshop/mesh';
import { check } from '../../ledger/check.js';
import tetrahedron from './stl.json' with { type: 'json' };

const mesh = {
  corners: Float64Array.from(tetrahedron.corners, (millimetres) => millimetres / 1000),
  triangles: Uint32Array.from(tetrahedron.triangles),
};
check('mesh.stl.bytes', {
  formula: 'mesh/stl',
  source: {
    key: 'trimesh',
    locator: 'export_stl: number of triangles, normals and corners of a tetrahedron; script stl.py',
  },
  status: 'derived',
  kind: 'program',
  given: { corners: { value: tetrahedron.corners.join(' '), unit: 'mm' } },
  got: () => Array.from(stl(mesh).subarray(80)),
  expected: tetrahedron.bytes,
  unit: '1',
  tolerance: { absolute: 0, why: 'the same bytes' },
});
