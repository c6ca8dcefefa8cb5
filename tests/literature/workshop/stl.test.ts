import { stl } from '@airspring/workshop/mesh';
import { expect, test } from 'vitest';
import tetrahedron from './stl.json' with { type: 'json' };

const mesh = {
  corners: Float64Array.from(tetrahedron.corners, (millimetres) => millimetres / 1000),
  triangles: Uint32Array.from(tetrahedron.triangles),
};

test('a solid is written byte by byte as another program does, but for the free text of its head', () => {
  expect(Array.from(stl(mesh).subarray(80))).toEqual(tetrahedron.bytes);
});
