import { type Drive, driveText } from '../drive.ts'
import type { Thread } from '../thread.ts'
import type { FastenerClass } from '../torque/fastener-class.ts'
import { clausesText } from './clauses.ts'
import type { Count } from './count.ts'
import { isFastener } from './nouns.ts'
import { type Fault, fault } from './outcome.ts'
import type { PlacedSaying } from './saying.ts'

// A bare `8.8` on a pin or a washer may be a measure.
const boltWord = /^(?:(?:cap|set|head)?(?:bolt|screw)|stud)s?$/i

export interface NamedPiece {
  name: string
  isFastener: boolean
  fastenerClass?: FastenerClass
  drive?: Drive
  /** The positions at the end of the name: `bucket E2`, `shims E1 E2`. */
  labels?: string[]
  /** `E4` behind a single fastener, as typed: its drive, or its position. */
  doubtfulDrive?: string
}

/**
 * The name of a piece: its words in their order, without those that said something else. What may be a drive, as
 * `T30` or `slot`, and a class are one on a fastener only; anywhere else they belong to the name.
 */
export function namePiece(
  clauses: readonly string[][],
  sayings: readonly PlacedSaying[],
  count: Count,
): NamedPiece | Fault {
  const thread = sayings.find((saying) => saying.says === 'thread')?.thread
  const isFast = thread !== undefined || isFastenerByWords(clauses, sayings)
  const driveSaying = sayings.find((saying) => saying.says === 'drive' && (saying.isSure || isFast))
  const isBolt =
    thread !== undefined || sayings.some((saying) => boltWord.test(wordsOf(clauses, saying).join(' ')))
  const classSaying = sayings.find((saying) => saying.says === 'class' && isFast && (saying.isSure || isBolt))
  const names: string[][] = clauses.map(() => [])
  for (const saying of sayings) {
    if (saying === driveSaying || saying === classSaying) continue
    const isDrive = saying.says === 'drive' && (saying.isSure || isFast)
    if (isDrive) names[saying.clause]?.push(driveText(saying.drive))
    else if (saying.says === 'name' || saying.says === 'drive' || saying.says === 'class')
      names[saying.clause]?.push(...wordsOf(clauses, saying))
  }
  const hasPositions = sayings.some((saying) => saying.says === 'positions')
  const labels = hasPositions ? undefined : takeLabels(names[0] ?? [], count, thread)
  const drive = driveSaying?.says === 'drive' ? driveSaying.drive : undefined
  const typedName = clausesText(names)
  const name = typedName === '' ? genericName(thread, drive, count) : typedName
  if (name === undefined || !/\p{L}/u.test(name)) {
    const counted = (clauses[0] ?? []).slice(0, count.used).join(' ')
    return fault('kind', clausesText(clauses), counted === '' ? '' : `${counted} bolts`)
  }
  const doubtful =
    thread === undefined && count.should === 1 ? doubtfulDrive(clauses, driveSaying) : undefined
  return {
    name,
    isFastener: isFast || drive !== undefined,
    ...(classSaying?.says === 'class' && { fastenerClass: classSaying.fastenerClass }),
    ...(drive && { drive }),
    ...(labels && { labels }),
    ...(doubtful !== undefined && { doubtfulDrive: doubtful }),
  }
}

/** By a drive that is sure, or by the last word of the name, before a comma if there is one. */
function isFastenerByWords(clauses: readonly string[][], sayings: readonly PlacedSaying[]): boolean {
  if (sayings.some((saying) => saying.says === 'drive' && saying.isSure)) return true
  const names = sayings.filter((saying) => saying.says === 'name')
  const last = names.findLast(({ clause }) => clause === names[0]?.clause)
  return last !== undefined && isFastener(wordsOf(clauses, last).at(-1) ?? '')
}

/**
 * Takes the positions out of a name, at its end or before a measure, where there is one for each piece: `cam cap I3`,
 * `shim I1 2.45 mm`. `H7` behind a bulb is taken for a position too: either way it names what the piece is to fit.
 */
function takeLabels(words: string[], count: Count, thread: Thread | undefined): string[] | undefined {
  const end = words.findLastIndex((word) => !/^(?:[\d.,]{1,8}(?:mm)?|mm)$/.test(word)) + 1
  let first = end
  const prefix = /^([A-Z]{1,3})\d{1,3}$/.exec(words[end - 1] ?? '')?.[1]
  if (prefix === undefined) return undefined
  while (first > 1 && new RegExp(`^${prefix}\\d{1,3}$`).test(words[first - 1] ?? '')) first--
  const labels = words.slice(first, end)
  // ISO 3506: A2 and A4 are stainless steels.
  const isSteel = thread !== undefined && labels.every((label) => /^A[24]$/.test(label))
  const isOneEach = !count.isStated || labels.length === count.should
  const isTwice = new Set(labels).size < labels.length
  if (labels.length === 0 || isSteel || isTwice || !isOneEach) return undefined
  words.splice(first, labels.length)
  return labels
}

/** A line with a size and no name is about bolts. */
function genericName(thread: Thread | undefined, drive: Drive | undefined, count: Count): string | undefined {
  if (thread?.system === 'npt') return count.should === 1 ? 'plug' : 'plugs'
  if (!thread && !drive) return undefined
  return count.should === 1 ? 'bolt' : 'bolts'
}

function doubtfulDrive(clauses: readonly string[][], saying: PlacedSaying | undefined): string | undefined {
  if (saying?.says !== 'drive') return undefined
  const typed = wordsOf(clauses, saying).join(' ')
  const isLast = saying.from + saying.used === clauses[saying.clause]?.length
  return isLast && /^[et]\d{1,3}$/i.test(typed) ? typed : undefined
}

function wordsOf(clauses: readonly string[][], { clause, from, used }: PlacedSaying): string[] {
  return (clauses[clause] ?? []).slice(from, from + used)
}
