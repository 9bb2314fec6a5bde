import { belongsInToolbox, type PieceId } from '../../ledger/piece.ts'
import type { Gates } from '../gates.ts'
import { undoToReach } from '../leftovers.ts'
import { successors } from '../succession.ts'
import { type FoundAgreement, type FoundPiece, foundAgreement, mayBe, measuredAlike } from './found-piece.ts'
import { type HomeCount, type HomeStanding, homeCount, homeStanding } from './home-count.ts'

/** A home that a found piece may belong to. */
export interface FoundHome {
  /** The piece of the record that it may be, or may be one of. */
  piece: PieceId
  agrees: FoundAgreement
  standing: HomeStanding
  count: HomeCount
  /** The steps to undo to reach its home, in the order of undoing. Empty where another piece has taken it. */
  undo: number[]
}

/**
 * The homes that a found piece may belong to, the likeliest first: what agrees most as measured, then in words; among
 * these what is missing, then what is recorded as on the machine, then what should lie somewhere; then what is reached
 * by undoing least. Aids and tools have no home on the machine and are not among them,
 * nor is what is out of use and in nothing like it. Empty where nothing may be it.
 */
export function foundHomes(gates: Gates, found: FoundPiece): FoundHome[] {
  const { facts } = gates
  const replaced = successors(facts)
  const reached = new Map<number, number[]>()
  const reach = (step: number) => {
    const undo = reached.get(step) ?? undoToReach(gates, step)
    reached.set(step, undo)
    return undo
  }
  const homes: FoundHome[] = []
  for (const account of facts.ledger.accounts.values()) {
    const { piece } = account
    // A stray that an earlier count turned up has no home either.
    if (belongsInToolbox(piece) || piece.should === 0) continue
    const agrees = foundAgreement(found, account)
    if (!mayBe(found, agrees, account)) continue
    const replacedBy = replaced.get(piece.id)
    const count = homeCount(facts, account, replacedBy)
    const standing = homeStanding(count)
    if (standing === 'out-of-use' && measuredAlike(agrees) === 0 && agrees.words === 0) continue
    const undo = replacedBy === undefined ? reach(piece.step) : []
    homes.push({ piece: piece.id, agrees, standing, count, undo })
  }
  return homes.sort(byLikelihood)
}

const standings: readonly HomeStanding[] = ['missing', 'on-machine', 'lying', 'out-of-use']

/** What is equal in all of it stays in the order of the record. */
function byLikelihood(a: FoundHome, b: FoundHome): number {
  return (
    measuredAlike(b.agrees) - measuredAlike(a.agrees) ||
    b.agrees.words - a.agrees.words ||
    standings.indexOf(a.standing) - standings.indexOf(b.standing) ||
    a.undo.length - b.undo.length
  )
}
