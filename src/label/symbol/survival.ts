import type { SymbolVersion } from './label-symbol.ts'

/** Of a thousand damaged labels, how many were read, with so many symbols of this version and module size. */
export interface Survival {
  symbols: number
  version: SymbolVersion
  /** Millimetres. */
  module: number
  readings: number
}

/**
 * Measured by `npm run bench -- damage`, which says whether it still finds the same: labels of 64 x 34 mm, 8 dots to the
 * millimetre, level H, a quarter each with oil on 10 % and 20 % of the label, opaque oil on 20 %, and oil on 20 %
 * of a worn label. A blot that hides a finder pattern ends its symbol in every version and at every level,
 * so the number of symbols counts for most.
 */
export const survival: readonly Survival[] = [
  { symbols: 1, version: 1, module: 0.375, readings: 775 },
  { symbols: 1, version: 1, module: 0.5, readings: 705 },
  { symbols: 1, version: 1, module: 0.625, readings: 675 },
  { symbols: 1, version: 1, module: 0.75, readings: 630 },
  { symbols: 1, version: 2, module: 0.375, readings: 750 },
  { symbols: 1, version: 2, module: 0.5, readings: 660 },
  { symbols: 1, version: 2, module: 0.625, readings: 650 },
  { symbols: 1, version: 3, module: 0.375, readings: 715 },
  { symbols: 1, version: 3, module: 0.5, readings: 665 },
  { symbols: 1, version: 4, module: 0.375, readings: 705 },
  { symbols: 1, version: 4, module: 0.5, readings: 660 },
  { symbols: 2, version: 1, module: 0.375, readings: 955 },
  { symbols: 2, version: 1, module: 0.5, readings: 910 },
  { symbols: 2, version: 1, module: 0.625, readings: 935 },
  { symbols: 2, version: 1, module: 0.75, readings: 895 },
  { symbols: 2, version: 2, module: 0.375, readings: 955 },
  { symbols: 2, version: 2, module: 0.5, readings: 940 },
  { symbols: 2, version: 2, module: 0.625, readings: 925 },
  { symbols: 2, version: 3, module: 0.375, readings: 930 },
  { symbols: 2, version: 3, module: 0.5, readings: 935 },
  { symbols: 2, version: 4, module: 0.375, readings: 955 },
  { symbols: 2, version: 4, module: 0.5, readings: 930 },
  { symbols: 3, version: 1, module: 0.375, readings: 1000 },
  { symbols: 3, version: 1, module: 0.5, readings: 960 },
  { symbols: 3, version: 2, module: 0.375, readings: 1000 },
  { symbols: 3, version: 2, module: 0.5, readings: 980 },
  { symbols: 4, version: 1, module: 0.375, readings: 1000 },
  { symbols: 4, version: 1, module: 0.5, readings: 990 },
  { symbols: 4, version: 2, module: 0.375, readings: 1000 },
  { symbols: 4, version: 2, module: 0.5, readings: 995 },
]
