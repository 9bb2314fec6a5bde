import type { State } from '../../journal/state.ts'
import type { JudgedPiece } from '../../session/check-views.ts'
import { say } from '../cures.ts'
import { judgedRows } from './checks-text.ts'
import { checkWords } from './names.ts'
import { checkNumbers, setNames } from './set-names.ts'

/** Pieces that are judged, line by line; a set of which the same is still asked stands there once. */
export function judgedList(state: State, pieces: readonly JudgedPiece[]): string[] {
  const groups = new Map<string, JudgedPiece[]>()
  for (const piece of pieces) {
    const key = sameAsked(state, piece)
    groups.set(key, [...(groups.get(key) ?? []), piece])
  }
  return [...groups.values()].flatMap((group) => {
    const [first, second] = group
    return first && second ? setRows(state, first, group) : group.flatMap((piece) => judgedRows(state, piece))
  })
}

/** The set that a piece stands in one line with: only where nothing is said of it but what is still to be seen. */
function sameAsked(state: State, { piece: id, standing, checks, verdict, comparison }: JudgedPiece): string {
  const { piece, home } = state.ledger.accounts.get(id) ?? {}
  const isOnlyAsked = standing === 'due' && verdict === null && comparison === null
  if (!piece || home?.position === undefined || !isOnlyAsked) return id
  if (checks.some(({ check, readings }) => check.done !== null || (readings?.readings.length ?? 0) > 0))
    return id
  return [piece.name, home.at, piece.step, ...checks.map(({ check }) => checkWords(check))].join('\n')
}

function setRows(state: State, first: JudgedPiece, group: readonly JudgedPiece[]): string[] {
  const names = setNames(
    state,
    group.map(({ piece }) => piece),
  )
  const name = state.ledger.accounts.get(first.piece)?.piece.name ?? first.piece
  return [
    `${names}: NOT CHECKED`,
    ...first.checks.map(({ check }, index) => {
      const ids = group.flatMap(({ checks }) => checks[index]?.check.id ?? [])
      return `    o ${checkNumbers(ids)}  ${checkWords(check)}`
    }),
    `    ${say(`ok ${name}`)} when all are good`,
  ]
}
