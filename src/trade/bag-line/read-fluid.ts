import { readVolume, type UnitSystem, type Volume } from '../quantity.ts'
import { isFluid } from './nouns.ts'
import { fault, type Outcome } from './outcome.ts'

const directions: Record<string, 'out' | 'in'> = {
  out: 'out',
  drained: 'out',
  in: 'in',
  filled: 'in',
  added: 'in',
}

const fillers = new Set(['of', 'the', 'with', ':', '-'])

/**
 * Reads a fluid let out or put in: `coolant out 2.1 L`, `drained 2.1 L coolant`, `oil in 3 US qt`. Undefined for a
 * text that speaks of no fluid.
 */
export function readFluid(text: string, units: UnitSystem): Outcome | undefined {
  const words = text.split(' ')
  const plain = words.map((word) => word.toLowerCase().replace(/[,:]$/, ''))
  const at = plain.findIndex((word) => Object.hasOwn(directions, word))
  const volume = findVolume(words, units)
  if (at < 0) return volume === undefined ? undefined : undirected(words, plain, volume)
  const direction = directions[plain[at] ?? ''] ?? 'out'
  const isAboutFluid = isFluid(plain[at - 1] ?? '') || (at === 0 && plain.some(isFluid))
  if (volume === undefined)
    return isAboutFluid ? withoutVolume(words, plain, at, direction, units) : undefined
  const name = nameOf(words, (i) => i === at || isWithin(i, volume))
  const isFluidLine = at === 0 || volume.at === at + 1 || name.split(' ').some(isFluid)
  if (!isFluidLine || /^\d/.test(name)) return undefined
  if (name === '') {
    const form = `coolant ${direction} ${volume.value.typed}`
    return fault('kind', text, form)
  }
  return { items: [{ kind: 'fluid', name, direction, ...volume.value }] }
}

interface FoundVolume {
  at: number
  length: number
  value: Volume
}

function findVolume(words: readonly string[], units: UnitSystem): FoundVolume | undefined {
  for (const [at, word] of words.entries()) {
    if (!/^[\d.,½¼¾]/u.test(word)) continue
    for (let length = Math.min(5, words.length - at); length > 0; length--) {
      const typed = words
        .slice(at, at + length)
        .join(' ')
        .replace(/,$/, '')
      const volume = readVolume(typed, { units })
      if (volume.understood) return { at, length, value: volume.value }
    }
  }
  return undefined
}

/** `2.1 L coolant` may have come out or gone in. */
function undirected(words: string[], plain: string[], volume: FoundVolume): Outcome | undefined {
  const name = nameOf(words, (i) => isWithin(i, volume))
  const isAboutFluid = plain.some((word, i) => !isWithin(i, volume) && isFluid(word))
  if (!isAboutFluid || name.split(' ').length > 3) return undefined
  return fault('kind', words.join(' '), `${name} out ${volume.value.typed}`)
}

function withoutVolume(
  words: string[],
  plain: string[],
  at: number,
  direction: 'out' | 'in',
  units: UnitSystem,
): Outcome {
  const number = words.findIndex((word) => /^[+-]?[\d.,]+/.test(word))
  const fluidAt = isFluid(plain[at - 1] ?? '') ? at - 1 : plain.findIndex(isFluid)
  const name = fluidAt === at - 1 ? words.slice(0, at).join(' ') : (words[fluidAt] ?? 'coolant')
  if (number < 0)
    return fault('volume', words.join(' '), `${name} ${direction} 2.1 L`, `coolant ${direction} 2.1 L`)
  const typed = words.slice(number).join(' ')
  const nearest = nearestVolume(words.slice(number, number + 4), units)
  return fault('volume', typed, `${name} ${direction} ${nearest}`, `coolant ${direction} ${nearest}`)
}

function nearestVolume(words: readonly string[], units: UnitSystem): string {
  for (let length = words.length; length > 0; length--) {
    const reading = readVolume(words.slice(0, length).join(' '), { units })
    if (!reading.understood && reading.code !== 'unit' && reading.code !== 'number') return reading.nearest
  }
  return '2.1 L'
}

function nameOf(words: readonly string[], isTaken: (i: number) => boolean): string {
  return words
    .filter((word, i) => !isTaken(i) && !fillers.has(word.toLowerCase()))
    .join(' ')
    .replace(/[,:]$/, '')
}

function isWithin(i: number, { at, length }: FoundVolume): boolean {
  return i >= at && i < at + length
}
