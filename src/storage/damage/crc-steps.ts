/** CRC-32 of IEEE 802.3, a byte a step, with the lowest bit first. */
const POLYNOMIAL = 0xedb88320
const TABLE = Array.from({ length: 256 }, (_, index) => {
  let register = index
  for (let bit = 0; bit < 8; bit += 1)
    register = register & 1 ? (register >>> 1) ^ POLYNOMIAL : register >>> 1
  return register >>> 0
})
/** Each value of the table has a highest byte of its own, which is what makes a step one that can be undone. */
const INDEX_BY_TOP = new Uint8Array(256)
for (const [index, value] of TABLE.entries()) INDEX_BY_TOP[value >>> 24] = index

/** What a wrong bit of the last byte changes in a CRC-32, by the number of the bit. */
export const BIT_EFFECTS: readonly number[] = Array.from({ length: 8 }, (_, bit) => TABLE[1 << bit] ?? 0)

/** Takes back one step over a zero byte: what the register held before it. */
export function stepBack(register: number): number {
  const index = INDEX_BY_TOP[register >>> 24] ?? 0
  return (((register ^ (TABLE[index] ?? 0)) << 8) | index) >>> 0
}

/** The CRC-32 that what stands before these bytes must have for them to come to `crc`. */
export function crcBefore(bytes: Uint8Array, crc: number): number {
  let register = ~crc >>> 0
  for (let at = bytes.length - 1; at >= 0; at -= 1) register = (stepBack(register) ^ (bytes[at] ?? 0)) >>> 0
  return ~register >>> 0
}
