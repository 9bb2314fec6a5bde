import { withoutNoise } from '../number.ts'
import { notUnderstood, type Reading, understood } from '../reading.ts'
import { lengthFrom, looksLikeLength, type TypedLength, withLastUnit } from './read-length.ts'
import type { ShimFault } from './shim-fault.ts'
import { fromTicks, ticks } from './valve.ts'

const mostSizes = 500
const lengthWord = '([\\d.,]*\\d["a-z]*)'

/** Reads the sizes of single shims: `2.40 2.55`, `2,40 2,55`, `2.40, 2 x 2.55`, `0.098 0.100 in`. */
export function readSizes(text: string): Reading<TypedLength[], ShimFault> {
  const words = withLastUnit(
    text
      .replace(/(\d) ?[x×] ?(?=\d)/gu, '$1x')
      .split(/[;\s]+|,(?=\s|$)| and /u)
      .flatMap((word) => (/^\d*\.\d+(?:,\d*\.\d+)+$/.test(word) ? word.split(',') : [word]))
      .filter((word) => word !== '' && word !== 'and'),
  )
  const sizes: TypedLength[] = []
  for (const word of words) {
    const [, times = '1', size = word] = /^(\d{1,2})x(.+)$/.exec(word) ?? []
    const length = lengthFrom(size)
    if (!length) {
      const isComma = looksLikeLength(word) && word.includes(',')
      return notUnderstood(isComma ? 'comma' : 'size', word, isComma ? pairs(word) : 'SIZE')
    }
    sizes.push(...Array.from({ length: Number(times) }, () => length))
    if (sizes.length > mostSizes) return notUnderstood('too-many', word, 'SIZE')
  }
  return sizes.length === 0 ? notUnderstood('size', text, 'SIZE') : understood(sizes)
}

/**
 * Reads the sizes for sale, in millimetres: from one to another by a step (`2.30..3.00 step 0.025`), or one by one. The
 * step is never assumed.
 */
export function readForSale(text: string): Reading<number[], ShimFault> {
  const range = new RegExp(
    `^${lengthWord} ?(?:\\.\\.|-|to) ?${lengthWord}(?:,? (?:in )?(?:steps?|by)(?: of)? ?(.*))?$`,
    'i',
  ).exec(text)
  if (!range) {
    const sizes = readSizes(text)
    if (!sizes.understood) return sizes
    const wrong = sizes.value.find((size) => sizeFault(size))
    if (wrong) return sizeFault(wrong) ?? understood([])
    return understood(ascending(sizes.value.map(({ mm }) => mm)))
  }
  const [, fromText = '', toText = '', stepText = ''] = range
  if (stepText === '') return notUnderstood('step-missing', text, `${fromText}..${toText} step STEP`)
  const [from, to, step] = withLastUnit([fromText, toText, stepText]).map(lengthFrom)
  if (!from || !to || !step) return notUnderstood('size', text, 'LEAST..MOST step STEP')
  const fault = sizeFault(from) ?? sizeFault(to)
  if (fault) return fault
  if (from.mm > to.mm) return notUnderstood('limits', text, `${toText}..${fromText} step ${stepText}`)
  const steps = (ticks(to.mm) - ticks(from.mm)) / ticks(step.mm)
  if (!(steps < mostSizes)) return notUnderstood('too-many', text, `${fromText}..${toText} step STEP`)
  if (!Number.isInteger(steps)) {
    const last = fromTicks(ticks(from.mm) + Math.floor(steps) * ticks(step.mm))
    const end = from.isBare ? String(last) : `${withoutNoise(last / 25.4)}in`
    return notUnderstood('step', text, `${fromText}..${end} step ${stepText}`)
  }
  return understood(
    Array.from({ length: steps + 1 }, (_, at) => fromTicks(ticks(from.mm) + at * ticks(step.mm))),
  )
}

/** What is wrong with a length as the size of a shim; null when nothing is. Common practice, from lash caps to buckets. */
export function sizeFault({ mm, isBare, typed }: TypedLength): Reading<never, ShimFault> | null {
  if (mm >= 0.5 && mm <= 20) return null
  if (isBare && mm > 0.01 && mm < 0.5) return notUnderstood('inches', typed, `${typed} in`)
  return notUnderstood('size', typed, 'SIZE')
}

function ascending(sizes: readonly number[]): number[] {
  return [...new Set(sizes)].sort((a, b) => a - b)
}

/** `2,40,2,55` was meant as pairs, as far as one can tell. */
function pairs(word: string): string {
  const found = word.match(/\d+,\d+/g) ?? []
  return found.length > 1 ? found.join(' ').replace(/,/g, '.') : 'SIZE'
}
