import type { State } from '../../journal/state.ts'
import type { PieceId } from '../../ledger/piece.ts'
import { joined, numberRanges } from '../grammar.ts'
import { pieceName } from '../pieces.ts'

/** Pieces by name, those of one set together: `cylinder head and cam caps I1, I2`. */
export function setNames(state: State, pieces: readonly PieceId[]): string {
  const sets = new Map<string, { name: string; positions: string[] }>()
  for (const id of new Set(pieces)) {
    const { piece, home } = state.ledger.accounts.get(id) ?? {}
    const position = home?.position
    const key = piece && position !== undefined ? [piece.name, home?.at, piece.step].join('\n') : id
    const known = sets.get(key)
    if (known && piece && position !== undefined) {
      known.name = piece.name
      known.positions.push(position)
    } else {
      sets.set(key, { name: pieceName(state, id), positions: position === undefined ? [] : [position] })
    }
  }
  return joined(
    [...sets.values()].map(({ name, positions }) =>
      positions.length > 1 ? `${name} ${positions.join(', ')}` : name,
    ),
  )
}

/** Checks by number: `k1`, `k1 to k8`. */
export function checkNumbers(ids: readonly `k${number}`[]): string {
  return numberRanges(ids.map((id) => Number(id.slice(1)))).replace(/\d+/g, 'k$&')
}

/** As `ok` takes them: `k1..k8` where none is left out, else one by one. */
export function typedChecks(ids: readonly `k${number}`[]): string {
  const numbers = ids.map((id) => Number(id.slice(1))).toSorted((a, b) => a - b)
  const [from = 0, to = from] = [numbers.at(0), numbers.at(-1)]
  const isWhole = numbers.length > 2 && to - from === numbers.length - 1
  return isWhole ? `k${from}..k${to}` : numbers.map((no) => `k${no}`).join(',')
}
