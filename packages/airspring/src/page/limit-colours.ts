/** The colour of the quantity that gives out, as in its own figure. */
const COLOURS: Readonly<Record<string, string>> = {
  travel: 'var(--travel)',
  vent: 'var(--speed)',
  heat: 'var(--heat)',
};
export const colourOf = (binding: string): string => COLOURS[binding] ?? 'var(--amplifier)';
