/** The invented driver of lines.json, and how its columns are compared. */
import { si } from '@airspring/core/quantity';

export const drivers = {
  Sd: si('coneArea', 0.033),
  Mms: si('mass', 0.086),
  Cms: si('compliance', 4e-4),
  Rms: si('mechanicalResistance', 3.6),
  Re: si('resistance', 5.6),
  Bl: si('forceFactor', 14.3),
};

/** The greatest size in a list: an absolute tolerance is a share of it. */
export const largest = (values: readonly number[]): number => Math.max(...values.map(Math.abs));
