import type { SymbolVersion } from './label-symbol.ts'

/** Of a thousand damaged labels, how many were read, with so many symbols of this version and module size. */
export interface Survival {
  symbols: number
  version: SymbolVersion
  /** Millimetres. */
  module: number
  readings: number
}

/** Provisional: to be measured by `npm run bench -- damage`. */
export const survival: readonly Survival[] = [1, 2].flatMap((symbols) => [
  { symbols, version: 1, module: 0.5, readings: 340 },
  { symbols, version: 2, module: 0.5, readings: 460 },
  { symbols, version: 3, module: 0.5, readings: 600 },
  { symbols, version: 4, module: 0.5, readings: 600 },
])
