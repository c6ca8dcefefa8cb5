import { InputError, isInputError } from '@airspring/core/fault';

/** What other packages call a field of a driver's `largeSignal`. */
const NAMES: Readonly<Record<string, string>> = { Bl: 'forceFactor', stop: 'Xmech' };
const OWN = /^(?:nonlinear\.|options\.)?(forceFactor|Bl|stiffness|inductance|stop|heat)\b(.*)$/;

/**
 * Faults of curves and models, at their places in the brief.
 *
 * @throws InputError
 */
export function inLargeSignal<Made>(driver: number, make: () => Made): Made {
  try {
    return make();
  } catch (error) {
    if (!isInputError(error)) throw error;
    throw new InputError(
      error.faults.map((fault) => {
        const [, name, rest] = OWN.exec(fault.path) ?? [];
        if (name === undefined) return fault;
        const path = `drivers[${driver}].largeSignal.${NAMES[name] ?? name}${name === 'stop' ? '' : rest}`;
        const [expected, remedy] = [fault.expected, fault.remedy].map((text) => text.replace('upTo', 'reach'));
        return { ...fault, path, expected: expected!, remedy: remedy! };
      }),
    );
  }
}
