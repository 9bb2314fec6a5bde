import type { BagItem, PieceItem } from './bag-item.ts'
import { clausesText, splitClauses } from './clauses.ts'
import { beginsWithCount, type Count, readCount } from './count.ts'
import { type Fault, fault, isFault, type Outcome } from './outcome.ts'
import { namePiece } from './piece-name.ts'
import { askAbout } from './piece-questions.ts'
import { tally } from './piece-tally.ts'
import { readSaying } from './piece-words.ts'
import { joinPositionLists } from './position-lists.ts'
import { isPositionWord, joinPositions } from './position-words.ts'
import type { PlacedSaying } from './saying.ts'
import type { State } from './state-words.ts'

/**
 * Reads parts and fasteners: `8 M6x25 hex 10 valve cover bolts, 1 snapped`, `cam caps I1..I4`, `head gasket, new`.
 * @param state what a prefix said of all of them: `missing: 1 M6x20 cover bolt`
 */
export function readPiece(text: string, state?: State): Outcome {
  // `2xM8x60` is two of M8x60.
  const typed = text
    .replace(/^(?:removed|took off|took out) /i, '')
    .replace(/^(\d{1,4})[x×*](?=m\d)/iu, '$1 ')
    .replace(/(?<=\p{L})\.+$/u, '')
    // Said of what is done; but a fuel shut off and a power take off are things.
    .replace(/(?<=\S)(?<!\b(?:blow|cut|kick|kill|lift|shut|switch|take|turn)) (?:(?:is|are) )?off$/i, '')
  const plain = joinPositionLists(typed)
  const clauses = splitClauses(plain)
  const [words = [], ...further] = clauses
  const count = readCount(words)
  if (isFault(count)) {
    return { ...count, nearest: count.nearest.map((form) => clausesText([[form], ...further])) }
  }
  const sayings = readSayings(clauses, count.used)
  if (isFault(sayings)) return sayings
  return assemble(clauses, sayings, count, state)
}

/** What all words say; the `nearest` of a fault is the whole item. */
function readSayings(clauses: readonly string[][], start: number): PlacedSaying[] | Fault {
  const sayings: PlacedSaying[] = []
  for (const [clause, words] of clauses.entries()) {
    const first = clause === 0 ? start : 0
    if (clause > 0 && continuesPositions(sayings.at(-1), clauses, clause)) {
      const last = sayings.at(-1)
      const joined = last?.says === 'positions' ? joinPositions(last.positions, words[0] ?? '') : []
      if (isFault(joined)) return inPlace(joined, clauses)
      if (last?.says === 'positions') last.positions = joined
      continue
    }
    for (let from = first; from < words.length; ) {
      const saying = readSaying(words, { clause, from, start: first })
      if (isFault(saying)) return inPlace(saying, clauses)
      // `8 bolts, 4 washers` are two items, not one with a long name.
      if (clause > 0 && from === 0 && saying.says === 'name' && beginsWithCount(words)) {
        return fault('count', words.join(' '), splitBefore(clauses, clause, 0))
      }
      sayings.push({ ...saying, clause, from })
      from += saying.used
    }
  }
  return sayings
}

/** A fault in some words as one of the whole item, with the form nearest to these words in their place. */
function inPlace({ code, part, nearest }: Fault, clauses: readonly string[][]): Fault {
  const text = clausesText(clauses).replace(part, () => nearest[0] ?? '')
  return fault(
    code,
    part,
    text
      .replace(/ {2,}/g, ' ')
      .replace(/^, ?|, ?(?=,|$)/g, '')
      .trim(),
  )
}

/** The item as two, the second from a word on. */
function splitBefore(clauses: readonly string[][], clause: number, from: number): string {
  const words = clauses[clause] ?? []
  const before = clausesText([...clauses.slice(0, clause), words.slice(0, from)])
  return `${before}; ${clausesText([words.slice(from), ...clauses.slice(clause + 1)])}`
}

/** `@1..3, 5`: a position alone behind the comma belongs to those before it. */
function continuesPositions(
  last: PlacedSaying | undefined,
  clauses: readonly string[][],
  clause: number,
): boolean {
  const words = clauses[clause] ?? []
  return last?.says === 'positions' && last.isAlike && words.length === 1 && isPositionWord(words[0] ?? '')
}

function assemble(
  clauses: readonly string[][],
  sayings: readonly PlacedSaying[],
  count: Count,
  state: State | undefined,
): Outcome {
  const without = (saying: PlacedSaying) => clausesText(leaveOut(clauses, saying))
  const [threadSaying, secondThread] = sayings.filter((saying) => saying.says === 'thread')
  if (secondThread) {
    const { clause, from } = secondThread
    const isCounted = from > 0 && beginsWithCount((clauses[clause] ?? []).slice(from - 1))
    const nearest = isCounted ? splitBefore(clauses, clause, from - 1) : without(secondThread)
    return fault('thread', secondThread.thread.typed, nearest)
  }
  const thread = threadSaying?.thread
  const named = namePiece(clauses, sayings, count)
  if (isFault(named)) return named
  const places = positionsOf(sayings)
  if (places && isFault(places)) return places
  const positions = places?.positions ?? named.labels
  const tallied = tally({
    clauses,
    sayings,
    count,
    state,
    positions,
    isAlike: places?.isAlike === true,
    without,
  })
  if (isFault(tallied)) return tallied
  const isMatched =
    positions !== undefined && (!places?.isAlike || (positions.length === 1 && tallied.should === 1))
  const washers = sayings.find((saying) => saying.says === 'washers')?.text
  const piece: Omit<PieceItem, 'questions'> = {
    kind: named.isFastener ? 'fastener' : 'part',
    name: named.name,
    ...tallied,
    ...(thread && { thread }),
    ...(named.fastenerClass && { fastenerClass: named.fastenerClass }),
    ...(named.drive && { drive: named.drive }),
    ...(positions && (isMatched ? { positions } : { alikeAt: positions })),
    matched: isMatched,
    singleUse: sayings.some((saying) => saying.says === 'single-use'),
    ...(washers !== undefined && { washers }),
  }
  const questions = askAbout(piece, {
    isCounted: count.isStated || positions !== undefined,
    isFoundOf: count.isOf && state === undefined,
    isReused: sayings.some((saying) => saying.says === 'reuse'),
    doubtfulDrive: named.doubtfulDrive,
  })
  return { items: [{ ...piece, questions }, ...notes(named.name, sayings)] }
}

function positionsOf(
  sayings: readonly PlacedSaying[],
): { positions: string[]; isAlike: boolean } | Fault | undefined {
  const [first, ...more] = sayings.filter((saying) => saying.says === 'positions')
  if (!first) return undefined
  let positions = first.positions
  for (const each of more) {
    const joined = joinPositions(positions, each.positions.join(','))
    if (isFault(joined)) return joined
    if (each.isAlike !== first.isAlike) return fault('positions', each.positions.join(','))
    positions = joined
  }
  return { positions, isAlike: first.isAlike }
}

/** What was said beyond the numbers, such as `1 snapped in the head`, stays as a note. */
function notes(name: string, sayings: readonly PlacedSaying[]): BagItem[] {
  return sayings.flatMap((saying) =>
    saying.says === 'state' && saying.detail !== undefined
      ? [{ kind: 'note', text: `${name}: ${saying.detail}` }]
      : [],
  )
}

function leaveOut(clauses: readonly string[][], { clause, from, used }: PlacedSaying): string[][] {
  return clauses.map((words, i) =>
    i === clause ? [...words.slice(0, from), ...words.slice(from + used)] : words,
  )
}
