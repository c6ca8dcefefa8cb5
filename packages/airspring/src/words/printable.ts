import { visible } from '@airspring/core/fault';

/** The same record with every text made safe to print: titles and names come from outside. */
export function printable<T>(part: T): T {
  if (typeof part === 'string') return visible(part) as T;
  if (Array.isArray(part)) return (typeof part[0] === 'number' ? part : part.map(printable)) as T;
  if (typeof part !== 'object' || part === null) return part;
  return Object.fromEntries(Object.entries(part).map(([name, value]) => [name, printable(value)])) as T;
}
