import type { Family } from '@airspring/core/enclosure';
import type { CompiledTopology } from '@airspring/core/network';

/**
 * The same family, which compiles each topology once: boxes of the same parts differ in their numbers alone. A network with elements
 * over frequency or lines is compiled each time, since no text tells their functions apart.
 */
export function compiledOnce<Spec, Input>(family: Family<Spec, Input>): Family<Spec, Input> {
  const known = new Map<string, CompiledTopology | undefined>();
  return {
    ...family,
    compile: (topology, sweepRows) => {
      const isText = topology.elements.every(({ kind }) => kind !== 'law' && kind !== 'line');
      if (!isText || sweepRows !== undefined) return family.compile(topology, sweepRows);
      const key = JSON.stringify(topology);
      if (!known.has(key)) known.set(key, family.compile(topology));
      return known.get(key);
    },
  };
}
