import type { RoundBody } from './round-body.js';
import type { Stand } from './scene.js';

/**
 * Orders in which bodies are placed, each with its stands. A body touches only those before it, so that each of three comes first
 * once. Of more than three, one order alone can take seconds.
 */
export function ordersOf(bodies: readonly RoundBody[], stands: readonly Stand[]) {
  const left = [...stands];
  const all = bodies.map((body) => ({ body, own: left.splice(0, body.opposed ? 2 : 1) }));
  const orders = all.length !== 3 ? [all] : all.map((_, i) => [...all.slice(i), ...all.slice(0, i)]);
  return orders.map((order) => ({
    bodies: order.map(({ body }) => body),
    stands: order.flatMap(({ own }) => own),
  }));
}
