import { type Fault, InputError } from '@airspring/core/fault';
import { readInto, unitList } from '@airspring/core/quantity';
import { strictText } from '../brief/spelling.js';

/** The voltages of a sample of full scale that are accepted, V. */
const [LEAST, GREATEST] = [1e-6, 1e5];

/**
 * The voltage of a sample of full scale, written as a brief writes voltages.
 *
 * @throws InputError at `--peak`
 */
export function peakOf(text: string): number {
  const faults: Fault[] = [];
  const peak = readInto(faults, 'voltageRms', strictText('voltageRms', text) ?? text, '--peak');
  if (peak !== undefined && peak >= LEAST) return peak;
  const expected = `the voltage of a sample of full scale in ${unitList('voltageRms').replace(', ', ' or ')}, from ${LEAST} to ${GREATEST} V`;
  const [{ code } = { code: 'out-of-range' as const }] = faults;
  throw new InputError([{ code, path: '--peak', got: text, expected, remedy: "Write it like '20 V'." }]);
}
