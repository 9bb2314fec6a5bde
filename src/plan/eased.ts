import { belongsInToolbox } from '../ledger/piece.ts'
import { singular } from '../trade/bag-line/nouns.ts'
import type { LooseningFacts, PlanFacts } from './facts.ts'

/**
 * Whether fasteners that were to be eased are off: by then the record knows them, under the same name or one with a
 * word more or less.
 */
export function isOff({ ledger }: Pick<PlanFacts, 'ledger'>, { name, step }: LooseningFacts): boolean {
  const eased = wordsOf(name)
  return [...ledger.accounts.values()].some(({ piece }) => {
    if (piece.step !== step || belongsInToolbox(piece)) return false
    const off = wordsOf(piece.name)
    return eased.every((word) => off.includes(word)) || off.every((word) => eased.includes(word))
  })
}

/** Whether fasteners were eased and, as far as the record knows, never came off: they are loose on the machine. */
export function isEasedOn(facts: Pick<PlanFacts, 'ledger'>, loosening: LooseningFacts): boolean {
  return loosening.done.some(({ size }) => size > 0) && !isOff(facts, loosening)
}

function wordsOf(name: string): string[] {
  return name.toLowerCase().split(' ').map(singular)
}
