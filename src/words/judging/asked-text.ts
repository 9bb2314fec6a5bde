import type { State } from '../../journal/state.ts'
import type { PieceId } from '../../ledger/piece.ts'
import type { CheckId, CheckKind, TriggerItem } from '../../plan/judging/judging-facts.ts'
import { checkWords } from './names.ts'
import { checkNumbers, setNames } from './set-names.ts'

interface Asked {
  id?: CheckId
  piece: PieceId
  kind: CheckKind
  what: string[]
}

/** Checks as they were asked, the same of several pieces together: `cam caps I1, I2, look for score (k1 and k2)`. */
export function askedText(state: State, checks: readonly Asked[]): string {
  const groups = new Map<string, Asked[]>()
  for (const check of checks) {
    const words = checkWords(check)
    groups.set(words, [...(groups.get(words) ?? []), check])
  }
  return [...groups]
    .map(([words, group]) => {
      const ids = group.flatMap(({ id }) => id ?? [])
      const numbers = ids.length === 0 ? '' : ` (${checkNumbers(ids)})`
      return `${setNames(
        state,
        group.map(({ piece }) => piece),
      )}, ${words}${numbers}`
    })
    .join('; ')
}

/** What a list asks for: `replace oil pump; check cam caps I1, I2, look for score`. */
export function itemsText(state: State, items: readonly TriggerItem[]): string {
  const replaced = items.flatMap((item) => (item.do === 'replace' ? [item.piece] : []))
  const checks = items.flatMap((item) => (item.do === 'check' ? [item] : []))
  return [
    ...(replaced.length === 0 ? [] : [`replace ${setNames(state, replaced)}`]),
    ...(checks.length === 0 ? [] : [`check ${askedText(state, checks)}`]),
  ].join('; ')
}
