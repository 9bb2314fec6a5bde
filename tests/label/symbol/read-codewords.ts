/**
 * The codewords of a QR symbol of version 1 to 6 in the order in which they are placed, read by the rules of
 * ISO/IEC 18004: format information 7.9.1, data masks 7.8.2, placement 7.7.3.
 */
export function codewordsOf(modules: boolean[][]): number[] {
  const size = modules.length
  const { mask } = formatOf(modules)
  const bits: number[] = []
  let upwards = true
  for (let right = size - 1; right > 0; right -= 2) {
    // The vertical timing pattern takes a whole column.
    if (right === 6) right--
    for (let step = 0; step < size; step++) {
      const row = upwards ? size - 1 - step : step
      for (const column of [right, right - 1]) {
        if (isFunction(row, column, size)) continue
        bits.push(Number(modules[row]?.[column] ?? false) ^ Number(masked(mask, row, column)))
      }
    }
    upwards = !upwards
  }
  const whole = Array.from({ length: bits.length >> 3 }, (_, at) => bits.slice(8 * at, 8 * at + 8))
  return whole.map((byte) => Number.parseInt(byte.join(''), 2))
}

/** Level and data mask from the format information beside the upper left finder pattern. */
export function formatOf(modules: boolean[][]): { level: 'L' | 'M' | 'Q' | 'H'; mask: number } {
  const bits = [0, 1, 2, 3, 4].map((column) => Number(modules[8]?.[column]))
  const open = bits.map((bit, at) => bit ^ Number('10101'[at]))
  const level = ['M', 'L', 'H', 'Q'][Number.parseInt(open.slice(0, 2).join(''), 2)] as 'L'
  return { level, mask: Number.parseInt(open.slice(2).join(''), 2) }
}

/** Each block's data and error correction codewords, taken apart again (7.6). All blocks are of one length. */
export function blocksOf(codewords: number[], blocks: number): number[][] {
  const rows = codewords.length / blocks
  return Array.from({ length: blocks }, (_, block) =>
    Array.from({ length: rows }, (_, at) => codewords[at * blocks + block] as number),
  )
}

/**
 * Whether a block is a word of the Reed-Solomon code of 7.5.2: over GF(256) with the field polynomial 285, its
 * polynomial vanishes at the first powers of 2, as many as it has error correction codewords.
 */
export function isReedSolomon(block: number[], errorCorrection: number): boolean {
  let power = 1
  for (let root = 0; root < errorCorrection; root++) {
    const value = block.reduce((sum, codeword) => times(sum, power) ^ codeword, 0)
    if (value !== 0) return false
    power = times(power, 2)
  }
  return true
}

function times(a: number, b: number): number {
  let [product, left] = [0, a]
  for (let right = b; right > 0; right >>= 1) {
    if (right & 1) product ^= left
    left = left & 128 ? (left << 1) ^ 285 : left << 1
  }
  return product
}

function masked(mask: number, i: number, j: number): boolean {
  const conditions = [
    (i + j) % 2,
    i % 2,
    j % 3,
    (i + j) % 3,
    (Math.floor(i / 2) + Math.floor(j / 3)) % 2,
    ((i * j) % 2) + ((i * j) % 3),
    (((i * j) % 2) + ((i * j) % 3)) % 2,
    (((i + j) % 2) + ((i * j) % 3)) % 2,
  ]
  return conditions[mask] === 0
}

// Finder patterns with separators and format information, timing patterns, and from version 2 on one alignment
// pattern with its centre in the seventh row and column from the end (7.3, Annex E).
function isFunction(row: number, column: number, size: number): boolean {
  if (row === 6 || column === 6) return true
  if ((row < 9 && (column < 9 || column >= size - 8)) || (row >= size - 8 && column < 9)) return true
  return size > 21 && Math.abs(row - (size - 7)) <= 2 && Math.abs(column - (size - 7)) <= 2
}
