import qrcode from 'qrcode'

/** Versions of the QR symbol that a label may carry: 21, 25, 29 and 33 modules a side. */
export type SymbolVersion = 1 | 2 | 3 | 4

/** Light modules that ISO/IEC 18004 asks for on each side of a symbol. */
export const quietZone = 4

/** Modules along one side of a symbol, without its quiet zone (ISO/IEC 18004, Table 1). */
export function modulesOf(version: SymbolVersion): number {
  return 17 + 4 * version
}

/**
 * The modules of the QR symbol of a nine-digit label code, row by row from the top left, true for dark, without
 * the quiet zone. Numeric mode, error correction level H.
 * @param version 1 to 4; a larger one spends its room on error correction and padding
 * @throws RangeError when the code is not nine digits, or there is no such version here.
 */
export function labelSymbol(code: string, version: number): boolean[][] {
  if (!/^[0-9]{9}$/.test(code)) throw new RangeError(`Not nine digits: "${code}"`)
  if (![1, 2, 3, 4].includes(version)) throw new RangeError(`No symbol version 1 to 4: ${version}`)
  const { modules } = qrcode.create([{ data: code, mode: 'numeric' }], { version, errorCorrectionLevel: 'H' })
  const places = Array.from({ length: modules.size }, (_, place) => place)
  return places.map((row) => places.map((column) => modules.get(row, column) === 1))
}
