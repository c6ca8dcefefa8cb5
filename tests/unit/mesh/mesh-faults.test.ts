import { type Mesh, meshFaults } from '@airspring/workshop/mesh';
import { expect, test } from 'vitest';

/** Corners at the origin and 10 mm along each axis. */
const tetrahedron: Mesh = {
  corners: Float64Array.from([0, 0, 0, 0.01, 0, 0, 0, 0.01, 0, 0, 0, 0.01]),
  triangles: Uint32Array.from([0, 2, 1, 0, 1, 3, 0, 3, 2, 1, 2, 3]),
};
const codes = (mesh: Mesh) => meshFaults(mesh).map(({ code }) => code);
const withTriangles = (...triangles: number[]): Mesh => ({ ...tetrahedron, triangles: Uint32Array.from(triangles) });

test('a solid has no fault', () => {
  expect(codes(tetrahedron)).toEqual([]);
});

test('names each law that is broken', () => {
  expect(codes(withTriangles(0, 2, 1, 0, 1, 3, 0, 3, 2))).toEqual(['open-edge']);
  expect(codes(withTriangles(0, 2, 1, 0, 1, 3, 0, 3, 2, 1, 3, 2))).toEqual(['open-edge', 'edge-of-many-triangles']);
  expect(codes(withTriangles(0, 1, 2, 0, 3, 1, 0, 2, 3, 1, 3, 2))).toEqual(['no-volume']);
  expect(codes({ ...tetrahedron, corners: Float64Array.from(tetrahedron.corners, (x) => x / 0) })).toEqual([
    'not-finite',
  ]);
  expect(codes(withTriangles(0, 2, 1, 0, 1, 3, 0, 3, 2, 1, 2, 4))).toEqual(['no-such-corner']);
});

test('corners that single precision joins leave a triangle without an area', () => {
  const corners = [...tetrahedron.corners, 0.01, 1e-12, 0];
  const triangles = [0, 2, 4, 0, 4, 1, 0, 1, 3, 0, 3, 2, 1, 4, 3, 4, 2, 3];
  expect(codes({ corners: Float64Array.from(corners), triangles: Uint32Array.from(triangles) })).toContain(
    'degenerate-triangle',
  );
});

test('corners of the same place are one corner, as for a reader of the file', () => {
  const apart = [...tetrahedron.triangles].flatMap((corner) => [
    ...tetrahedron.corners.subarray(3 * corner, 3 * corner + 3),
  ]);
  const mesh = { corners: Float64Array.from(apart), triangles: Uint32Array.from({ length: 12 }, (_, i) => i) };
  expect(codes(mesh)).toEqual([]);
});
