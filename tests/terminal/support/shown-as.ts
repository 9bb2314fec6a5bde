import type { Session } from '../../../src/session/session.ts'
import { consumableName } from '../../../src/words/consumables/names.ts'
import { fastenerCalled, markName, onTheWayBack, passName, stepName } from '../../../src/words/names.ts'
import { passVerb } from '../../../src/words/pass-work.ts'
import { countedPiece, pieceName } from '../../../src/words/pieces.ts'
import { containerPlace } from '../../../src/words/places.ts'
import type { Entry, State } from './told-beside.ts'

/** How the screens offer what is to be recorded. */
export interface Shown {
  on: Place
  /** What stands beside Enter or beside a number: the first of these that is there. */
  says: readonly string[]
  /** What is typed behind the words that the number puts into the line. */
  adds?: string
  /** The container to scan for it. */
  from?: number
}

/** The page of a step, what is left over, or a new piece beside the old one. */
export type Place = { step: number } | { compare: string } | 'left'

/**
 * Where the screens offer an entry of the way back, and in which words; null where a person types it. `open` is the step
 * that was under way before it.
 */
export function shownAs(entry: Entry, line: string, session: Session, open: number | null): Shown | null {
  const { state } = session
  if ('began' in entry && entry.began) return null
  const here = (...says: string[]): Shown | null => (open === null ? null : { on: { step: open }, says })
  switch (entry.type) {
    case 'build-began':
      return { on: { step: entry.step }, says: [`take up ${stepName(state, entry.step)}`] }
    case 'looked':
      return { on: { step: entry.step }, says: [`"look ${entry.step}"`] }
    case 'fitted':
      return fitted(state, entry)
    case 'tightened':
      return tightened(state, entry)
    case 'angle-settled': {
      const not = entry.turned ? 'yes, ? was' : 'no, ? was not'
      const shown = here(`${not.replace('?', fastenerCalled(entry.fastener))} turned`)
      return shown && { ...shown, adds: entry.reason }
    }
    case 'confirmed':
      return here(`see ${markName(state, entry.mark)}`)
    case 'applied':
      return here(`put on ${consumableName(state, entry.consumable)}`)
    case 'turned-over':
      return here('turn it over by hand')
    case 'filled': {
      const fluid = state.fluids.get(entry.fluid)
      const shown = here(`fill ${fluid?.name}, `)
      return shown && { ...shown, adds: String(entry.litres) }
    }
    case 'failed': {
      const shown = here('it does not: say what was found')
      return shown && { ...shown, adds: behind(line, ': ') }
    }
    case 'build-done': {
      if (entry.step !== open) return null
      const title = state.steps.get(entry.step)?.title ?? ''
      const shown = here(`${onTheWayBack(title)} is done`, 'it passes: say what was found')
      return shown && { ...shown, adds: behind(line, ': ') }
    }
    case 'moved':
      return movedAway(state, entry, line)
    case 'compared':
      return line.endsWith(': alike')
        ? { on: { compare: pieceName(state, entry.piece) }, says: ['all the rest is alike: it is right'] }
        : null
    case 'cleared':
      return { on: 'left', says: ['clear it for the first start'] }
    case 'started':
      return { on: 'left', says: ['the machine was started'] }
    case 'closed':
      return { on: 'left', says: ['close the job'] }
    default:
      return null
  }
}

type Of<Type extends Entry['type']> = Extract<Entry, { type: Type }>

/** All of a piece at once, wherever it lies. */
function fitted(state: State, { step, moves }: Of<'fitted'>): Shown | null {
  const [move] = moves
  if (!move) return null
  const count = moves.reduce((sum, each) => sum + (each.piece === move.piece ? each.count : 0), 0)
  const says = [`fit ${countedPiece(state, move.piece, count)}`]
  const from = containerPlace(move.from)?.container
  return { on: { step }, says, ...(from !== undefined && { from }) }
}

function tightened(state: State, { tightening, pass, fastener }: Of<'tightened'>): Shown | null {
  const joint = state.tightenings.get(tightening)
  const how = joint?.passes[pass]
  if (!joint || !how) return null
  const says = [`${passVerb(how)} ${fastenerCalled(fastener)}, ${passName(joint, pass)}, ${joint.name}`]
  return { on: { step: joint.step }, says }
}

/** What was put in comes out at its step, and a tool goes back from what is left over. */
function movedAway(state: State, { moves: [move] }: Of<'moved'>, line: string): Shown | null {
  const piece = move && state.ledger.accounts.get(move.piece)?.piece
  if (!piece) return null
  if (/^return /.test(line)) return { on: 'left', says: [pieceName(state, piece.id)] }
  if (!/^take out /.test(line) || piece.step === undefined) return null
  const says = [`take out ${countedPiece(state, piece.id, move.count)}`, `"take out ${piece.id}"`]
  return { on: { step: piece.step }, says }
}

function behind(line: string, words: string): string {
  const at = line.indexOf(words)
  return at < 0 ? '' : line.slice(at + words.length)
}
