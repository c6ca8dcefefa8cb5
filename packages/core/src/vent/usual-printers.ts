/** What usual printers build in each direction, the smallest first, m (common practice). */
export const usualPrinters = [0.2, 0.25, 0.3, 0.4] as const;
