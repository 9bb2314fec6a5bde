import type { State } from '../journal/state.ts'
import type { Account } from '../ledger/account.ts'
import type { PieceId } from '../ledger/piece.ts'
import type { ShimAt } from '../plan/facts.ts'
import { shimsAtHome, theOne } from '../plan/valves.ts'
import { singular } from '../trade/bag-line/nouns.ts'
import { clearanceWith } from '../trade/shims/needed-shim.ts'
import type { PlannedValve, ShimPlan } from '../trade/shims/shim-plan.ts'
import { findPieces } from './find-piece.ts'

/** How a plan is carried out in the record. */
export interface ShimLines {
  /** The lines to write, in their order; none where the record knows no shims, or all is done. */
  lines: string[]
  /** Shims among them that are on the machine: the step that holds them is reopened first. */
  fitted: PieceId[]
}

/**
 * The lines that carry out a plan: swaps between valves, then what comes new, and what is left over to the spares. What
 * was done already is left out. `shims`: the shim that each valve was measured with.
 */
export function shimLines(
  state: State,
  plan: ShimPlan,
  { shims, unit }: { shims: readonly ShimAt[]; unit: 'mm' | 'in' },
): ShimLines {
  const valves = new Map(plan.valves.map((valve) => [valve.position, valve]))
  const holds = new Map<string, PieceId>()
  for (const { position } of plan.valves) {
    const piece = theOne(shimsAtHome(state.ledger), position)
    if (piece !== null) holds.set(position, piece)
  }
  const lines: string[] = []
  const touched = new Set<PieceId>()
  for (const { positions, ...work } of plan.work) {
    const holders = positions.map((position) => holds.get(position))
    if (holders.includes(undefined)) continue
    for (const position of positions) {
      const taken = valves.get(position)?.taken
      const wanted = taken?.take === 'valve' ? theOne(shims, taken.position) : null
      const [other] = [...holds].find(([, piece]) => piece === wanted) ?? []
      const here = holds.get(position)
      if (wanted === null || other === undefined || here === undefined || other === position) continue
      const reason = [position, other].flatMap((at) => {
        const moved = at === position ? wanted : here
        const valve = valves.get(at)
        return valve && isPlanned(valve, moved, shims) ? [givesText(valve, unit)] : []
      })
      lines.push(
        `swap ${bothWords(state, { piece: here, at: position }, { piece: wanted, at: other })} because ${reason.join(' and ')}`,
      )
      holds.set(position, wanted).set(other, here)
      touched.add(here).add(wanted)
    }
    const last = positions.at(-1) ?? ''
    const out = holds.get(last)
    if (work.work === 'exchange' || out === undefined) continue
    if (!shims.some(({ piece }) => piece === out)) {
      // The new one is there already; the one that it took the place of may still lie about.
      const over = theOne(shims, positions[0] ?? '')
      if (over !== null && ![...holds.values()].includes(over) && isLying(state, over))
        lines.push(`spare ${over} because ${ANOTHER_SIZE}`)
      continue
    }
    if (work.last.take !== 'none')
      lines.push(`new ${oneWords(state, out, last)} size ${sizeText(work.last.size, unit)}`)
    // Where none came in its place, its home is left short, so that it is not fitted there.
    if (isLying(state, out))
      lines.push(`spare ${out}${work.last.take === 'none' ? '' : ` because ${ANOTHER_SIZE}`}`)
    touched.add(out)
  }
  return { lines, fitted: [...touched].filter((piece) => account(state, piece)?.at.has('machine')) }
}

/** An old shim may go before the new one was held beside it: that is of another size by intention. */
const ANOTHER_SIZE = 'another size takes its place'

/** Whether a piece is the one that the plan gives to a valve. */
function isPlanned({ taken }: PlannedValve, piece: PieceId, shims: readonly ShimAt[]): boolean {
  return taken.take === 'valve' && theOne(shims, taken.position) === piece
}

function givesText(valve: PlannedValve, unit: 'mm' | 'in'): string {
  const { position, size, fitted } = valve
  const clearance = clearanceWith(valve, size ?? fitted)
  return `${sizeText(size ?? fitted, unit)} gives ${position} ${sizeText(clearance, unit)}${unit === 'mm' ? ' mm' : ''}`
}

/** A size as it is marked: `2.45`, `2.475`, `0.098 in`. */
function sizeText(mm: number, unit: 'mm' | 'in'): string {
  const inUnit = unit === 'in' ? mm / 25.4 : mm
  const [whole = '', decimals = ''] = inUnit.toFixed(4).replace(/0+$/, '').split('.')
  return `${whole}.${decimals.padEnd(unit === 'in' ? 3 : 2, '0')}${unit === 'in' ? ' in' : ''}`
}

interface Named {
  piece: PieceId
  at: string
}

/** `shims E2 E4` where these words mean the two, else their ids. */
function bothWords(state: State, one: Named, other: Named): string {
  const name = account(state, one.piece)?.piece.name
  const isClear = [one, other].every(
    ({ piece, at }) => account(state, piece)?.piece.name === name && means(state, `${name} ${at}`),
  )
  return isClear ? `${name} ${one.at} ${other.at}` : `${one.piece} and ${other.piece}`
}

function oneWords(state: State, piece: PieceId, at: string): string {
  const words = `${singular(account(state, piece)?.piece.name ?? '')} ${at}`
  return means(state, words) ? words : piece
}

/** Whether words mean one piece that belongs on the machine: by the time that the line is written it may be another. */
function means(state: State, words: string): boolean {
  return findPieces(words, state, ({ should }) => should > 0).length === 1
}

function isLying(state: State, piece: PieceId): boolean {
  const places = [...(account(state, piece)?.at.keys() ?? [])]
  return places.some((place) => place !== 'spare' && place !== 'scrap' && place !== 'lost')
}

function account(state: State, piece: PieceId): Account | undefined {
  return state.ledger.accounts.get(piece)
}
