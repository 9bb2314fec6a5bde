import type { Account } from '../../ledger/account.ts'
import { balance, placesOf } from '../../ledger/ledger.ts'
import type { PieceId } from '../../ledger/piece.ts'
import { type Lying, owing } from '../contents.ts'
import type { DifferenceId, PlanFacts } from '../facts.ts'

/** A count that came out short and that nobody has explained yet. */
export interface CountedShort {
  difference: DifferenceId
  container: number
  count: number
}

/** What the record says of a home, for somebody who asks whether one may be missing there. */
export interface HomeCount {
  /** How many belong there now. */
  should: number
  /** Recorded as on the machine. */
  onMachine: number
  /** Recorded as lying in a container, on the bench or away: where there should be how many. */
  lies: Lying[]
  /** Owed and nowhere to be had. */
  short: number
  /** Of these: how many were missing when the job began, or were never told of. */
  neverThere: number
  /** Recorded as lost, whether or not that was accepted. */
  lost: number
  countedShort: CountedShort[]
  /** Deliberately not put back. */
  leftOff: number
  scrapped: number
  /** The piece that took its home. */
  replacedBy?: PieceId | undefined
  /** Single-use, fitted once and off again. */
  used: boolean
}

/**
 * How the record stands to one more of a piece turning up: one is `missing`, all are accounted for and some of them
 * `on-machine`, all are `lying` somewhere, or none is wanted any more (`out-of-use`).
 */
export type HomeStanding = 'missing' | 'on-machine' | 'lying' | 'out-of-use'

/** What the record says of the home of a piece. `replacedBy`: the piece that took it, if any. */
export function homeCount(facts: PlanFacts, account: Account, replacedBy?: PieceId): HomeCount {
  const { id, should } = account.piece
  const unexplained = [...facts.differences.values()].filter(
    ({ piece, settled, counted, expected }) => piece === id && settled === null && counted < expected,
  )
  const { short } = owing(facts, account)
  return {
    should: account.should,
    onMachine: balance(facts.ledger, id, 'machine'),
    lies: placesOf(facts.ledger, id)
      .filter(({ place }) => place !== 'machine' && place !== 'scrap' && place !== 'lost')
      .map(({ place, count }) => ({ place, count })),
    short,
    neverThere: Math.min(short, Math.max(0, account.should - account.entered)),
    lost: balance(facts.ledger, id, 'lost'),
    countedShort: unexplained.map((each) => ({
      difference: each.id,
      container: each.container,
      count: each.expected - each.counted,
    })),
    leftOff: replacedBy === undefined ? Math.max(0, should - account.should) : 0,
    scrapped: balance(facts.ledger, id, 'scrap'),
    ...(replacedBy !== undefined && { replacedBy }),
    used: facts.used.has(id),
  }
}

/** How the record stands to one more of a piece turning up. */
export function homeStanding({
  should,
  onMachine,
  short,
  lost,
  countedShort,
  used,
}: HomeCount): HomeStanding {
  if (short > 0 || lost > 0 || countedShort.length > 0) return 'missing'
  if (onMachine > 0) return 'on-machine'
  return should === 0 || used ? 'out-of-use' : 'lying'
}
