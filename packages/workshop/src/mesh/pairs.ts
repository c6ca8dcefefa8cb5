import type { Mesh } from './mesh.js';

/** Triangles of one leaf of the tree. */
const LEAF = 6;

/**
 * Calls back for each pair of triangles whose cuboids touch, until the call returns false. The triangles stand in a tree: each
 * branch is halved at the middle of its longest edge, so that long triangles cost no more than short ones.
 */
export function pairsThatTouch(mesh: Mesh, visit: (one: number, other: number) => boolean): void {
  const { boxes, order, nodes } = treeOf(mesh);
  const count = order.length;
  const stack: number[] = [];
  for (let one = 0; one < count; one++) {
    const box = 6 * one;
    stack.length = 0;
    stack.push(0);
    while (stack.length > 0) {
      const node = nodes[stack.pop()!]!;
      if (!touch(boxes, box, node.box, 0)) continue;
      if (node.left > 0) stack.push(node.left, node.right);
      else
        for (let i = node.first; i < node.end; i++) {
          const other = order[i]!;
          if (other > one && touch(boxes, box, boxes, 6 * other) && !visit(one, other)) return;
        }
    }
  }
}

interface Node {
  readonly box: Float64Array;
  readonly first: number;
  readonly end: number;
  left: number;
  right: number;
}

function touch(a: Float64Array, at: number, b: Float64Array, other: number): boolean {
  for (let axis = 0; axis < 3; axis++)
    if (a[at + axis]! > b[other + axis + 3]! || b[other + axis]! > a[at + axis + 3]!) return false;
  return true;
}

function treeOf({ corners, triangles }: Mesh): {
  readonly boxes: Float64Array;
  readonly order: Int32Array;
  readonly nodes: readonly Node[];
} {
  const count = triangles.length / 3;
  const boxes = new Float64Array(6 * count);
  for (let t = 0; t < count; t++)
    for (let axis = 0; axis < 3; axis++) {
      const [a, b, c] = [0, 1, 2].map((k) => corners[3 * triangles[3 * t + k]! + axis]!) as [number, number, number];
      boxes[6 * t + axis] = Math.min(a, b, c);
      boxes[6 * t + axis + 3] = Math.max(a, b, c);
    }
  const order = Int32Array.from({ length: count }, (_, i) => i);
  const nodes: Node[] = [];
  const add = (first: number, end: number): number => {
    const box = new Float64Array([Infinity, Infinity, Infinity, -Infinity, -Infinity, -Infinity]);
    for (let i = first; i < end; i++)
      for (let axis = 0; axis < 3; axis++) {
        const at = 6 * order[i]! + axis;
        box[axis] = Math.min(box[axis]!, boxes[at]!);
        box[axis + 3] = Math.max(box[axis + 3]!, boxes[at + 3]!);
      }
    nodes.push({ box, first, end, left: 0, right: 0 });
    return nodes.length - 1;
  };
  const work = [add(0, count)];
  while (work.length > 0) {
    const node = nodes[work.pop()!]!;
    if (node.end - node.first <= LEAF) continue;
    const edges = [0, 1, 2].map((axis) => node.box[axis + 3]! - node.box[axis]!);
    const axis = edges.indexOf(Math.max(...edges));
    const middleOf = (t: number) => boxes[6 * t + axis]! + boxes[6 * t + axis + 3]!;
    const own = order.subarray(node.first, node.end);
    const limit = node.box[axis]! + node.box[axis + 3]!;
    let split = 0;
    for (let i = 0; i < own.length; i++) if (middleOf(own[i]!) < limit) [own[i], own[split++]] = [own[split]!, own[i]!];
    // Where all middles lie on one side, the list is halved by their order.
    if (split === 0 || split === own.length) {
      own.sort((one, other) => middleOf(one) - middleOf(other));
      split = own.length >> 1;
    }
    node.left = add(node.first, node.first + split);
    node.right = add(node.first + split, node.end);
    work.push(node.left, node.right);
  }
  return { boxes, order, nodes };
}
