import type { State } from '../../journal/state.ts'
import type { CheckProposal } from '../../plan/judging/check-proposals.ts'
import { counted } from '../grammar.ts'
import { pieceName } from '../pieces.ts'
import { checkWords } from './names.ts'

/** What is proposed to be checked: `bucket, 8 pieces`, `cylinder head`. */
export function proposedName(state: State, { pieces }: CheckProposal): string {
  const [first] = pieces
  if (first === undefined) return ''
  const name = state.ledger.accounts.get(first)?.piece.name ?? first
  return pieces.length === 1 ? pieceName(state, first) : `${name}, ${counted(pieces.length, 'piece')}`
}

/** What is proposed for each: `clean oil holes; look for pitting and score; measure clearance`. */
export function proposedWords({ checks }: CheckProposal): string {
  return checks.map((check) => checkWords(check)).join('; ')
}
