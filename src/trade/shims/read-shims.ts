import { notUnderstood, type Reading, understood } from '../reading.ts'
import type { SecondWish } from './assign-shims.ts'
import { isCode, type KnownSizes, sizeOf } from './etched-code.ts'
import { hasInches, joined, type TypedLength } from './read-length.ts'
import { readForSale, readSizes } from './read-sizes.ts'
import { readValves } from './read-valves.ts'
import { readWanted, type WantedRange } from './read-wanted.ts'
import type { ShimFault } from './shim-fault.ts'

/** What was said about shims; lengths in millimetres. What is not there may be known from the record. */
export interface SaidShims {
  valves: { position: string; clearance: number; fitted: number | null }[]
  wanted: WantedRange[]
  /** Every shim on the bench by its size. */
  bench: number[]
  /** Every size for sale, ascending. */
  forSale: number[]
  second: SecondWish
  /** Inches where any was said. */
  unit: 'mm' | 'in'
}

const inchesAtEnd = /[\s,;]+(?:all )?in inches\s*$/i
const sections = ['wanted', 'for sale', 'bench', 'nearest'] as const

/**
 * Reads a line about shims: `I1 0.14 2.45, I2 0.15 2.40 wanted I 0.13..0.17 for sale 2.30..3.00 step 0.025 bench 2.40
 * 2.55 nearest`: position, clearance, shim; what is wanted; what is to be had. `in inches` at the end holds for all
 * numbers without a unit; they are millimetres otherwise. `nearest`: rather touch more valves than stay off the middle.
 */
export function readShims(text: string): Reading<SaidShims, ShimFault> {
  const isInches = inchesAtEnd.test(text)
  const plain = joined(text.replace(inchesAtEnd, ''))
  const parts = sectionsOf(isInches ? inInches(plain) : plain)
  const valves = readValves(parts.first)
  if (!valves.understood) return valves
  const wanted = parts.wanted === undefined ? understood([]) : readWanted(parts.wanted)
  if (!wanted.understood) return wanted
  const forSale = parts['for sale'] === undefined ? understood([]) : readForSale(parts['for sale'])
  if (!forSale.understood) return forSale
  const bench = parts.bench === undefined ? understood([]) : readSizes(parts.bench)
  if (!bench.understood) return bench
  if (parts.nearest) return notUnderstood('size', parts.nearest, 'nearest')

  const fitted = valves.value.flatMap((valve) => valve.fitted ?? [])
  const written = [...fitted, ...bench.value].filter((length) => !isCode(length)).map(({ mm }) => mm)
  const known = { written, forSale: forSale.value }
  const benchSizes = sizesOf(bench.value, known)
  if (!benchSizes.understood) return benchSizes
  const fittedSizes = sizesOf(fitted, known)
  if (!fittedSizes.understood) return fittedSizes
  const sizes = [...fittedSizes.value]
  return understood({
    valves: valves.value.map((valve) => ({
      position: valve.position,
      clearance: valve.clearance.mm,
      fitted: valve.fitted === null ? null : (sizes.shift() ?? null),
    })),
    wanted: wanted.value,
    bench: benchSizes.value,
    forSale: forSale.value,
    second: parts.nearest === undefined ? 'fewest-touched' : 'nearest-middle',
    unit: isInches || hasInches(plain) ? 'in' : 'mm',
  })
}

type Parts = { first: string } & Partial<Record<(typeof sections)[number], string>>

function sectionsOf(text: string): Parts {
  const pieces = text.split(/(?:^|[ ,;]+)(wanted|for sale|bench|nearest)(?=[ :]|$)/i)
  const parts: Parts = { first: pieces[0] ?? '' }
  for (let at = 1; at < pieces.length; at += 2) {
    const name = sections.find((section) => section === pieces[at]?.toLowerCase())
    const said = (pieces[at + 1] ?? '').replace(/^[ :]+|[ ,;]+$/g, '')
    if (name) parts[name] = parts[name] === undefined ? said : `${parts[name]} ${said}`
  }
  return parts
}

/** The text with its unit at every number that has none; positions, counts and groups are words with letters. */
function inInches(text: string): string {
  return text.replace(/(?<![\p{L}\d]|\d[.,])\d*[.,]\d+(?![\p{L}\d"]|[.,]\d)/gu, '$&in')
}

function sizesOf(lengths: readonly TypedLength[], known: KnownSizes): Reading<number[], ShimFault> {
  const sizes: number[] = []
  for (const length of lengths) {
    const size = sizeOf(length, known)
    if (!size.understood) return size
    sizes.push(size.value)
  }
  return understood(sizes)
}
