/** Symbols of the trade, as people search for them, and their full names. */
const names: Readonly<Record<string, string>> = {
  fs: 'resonance in free air',
  Qts: 'total quality factor',
  Qes: 'electrical quality factor',
  Qms: 'mechanical quality factor',
  Vas: 'equivalent volume of compliance',
  Sd: 'cone area',
  Re: 'voice-coil resistance',
  Le: 'voice-coil inductance',
  Bl: 'force factor',
  Mms: 'moving mass',
  Cms: 'suspension compliance',
  Rms: 'suspension resistance',
  Xmax: 'greatest travel',
  fb: 'tuning frequency',
  fc: 'resonance in the closed box',
  Vb: 'box volume',
  QL: 'leakage quality factor',
  QA: 'absorption quality factor',
  QP: 'vent quality factor',
  f3: 'half-power cut-off frequency',
};

/** Symbols that a text uses as fields or as words, with their names, in the order of the trade. */
export const symbolNames = (text: string): readonly (readonly [symbol: string, name: string])[] => {
  // 'Rms volume flow' is a word at the beginning of a sentence, and no symbol.
  const said = text.replace(/\bRms (?=[a-z])/g, ' ');
  const used = new Set(said.replace(/\$\$[^$]*\$\$|\$[^$]*\$/g, ' ').match(/[A-Za-z]\w*/g) ?? []);
  return Object.entries(names).filter(([symbol]) => used.has(symbol));
};
