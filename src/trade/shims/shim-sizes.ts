import { isCode, sizeOf } from './etched-code.ts'
import { joined, type TypedLength } from './read-length.ts'
import { readSizes } from './read-sizes.ts'

/**
 * The sizes written beside shims in a record, in millimetres: `2.45`, `2,45 mm`, `0.098 in`, `245` where the others make
 * it certain. Null where there is none, or none that is understood.
 */
export function shimSizes(
  texts: readonly (string | undefined)[],
  forSale: readonly number[] = [],
): (number | null)[] {
  const lengths = texts.map((text): TypedLength | undefined => {
    const sizes = readSizes(joined(text ?? ''))
    return sizes.understood && sizes.value.length === 1 ? sizes.value[0] : undefined
  })
  const written = lengths.flatMap((length) => (length && !isCode(length) ? [length.mm] : []))
  return lengths.map((length) => {
    const size = length && sizeOf(length, { written, forSale })
    return size?.understood ? size.value : null
  })
}
