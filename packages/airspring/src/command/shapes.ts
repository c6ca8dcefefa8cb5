import type { ShapeChoice } from '@airspring/core/space';

/** What the command loads where a brief asks for a shape. */
const workshop = () => import('@airspring/workshop/shape');
export type ShapesOf = () => Promise<{ readonly standardShapes: readonly ShapeChoice[] }>;

/** The shapes that briefs may name; `undefined` where the package that has them is not installed. */
export async function installedShapes(load: ShapesOf = workshop): Promise<readonly ShapeChoice[] | undefined> {
  try {
    return (await load()).standardShapes;
  } catch (error) {
    const { code, message } = error as NodeJS.ErrnoException;
    if (code === 'ERR_MODULE_NOT_FOUND' && message.includes('@airspring/workshop')) return undefined;
    throw error;
  }
}

/** Whether a brief asks for a shape of its space. */
export const asksForShape = (brief: unknown): boolean =>
  (brief as { readonly space?: { readonly shape?: unknown } | null } | null)?.space?.shape !== undefined;

/** What to do where the package is missing. */
export const NO_SHAPES = 'a box that is no cuboid is drawn by another package: npm install @airspring/workshop';
