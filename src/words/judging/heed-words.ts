import type { State } from '../../journal/state.ts'
import type { JudgingHeed } from '../../session/judging-heeds.ts'
import { say } from '../cures.ts'
import { joined, sentence, stepNumbers } from '../grammar.ts'
import { pieceName } from '../pieces.ts'
import { checkWords } from './names.ts'
import { checkNumbers, setNames, typedChecks } from './set-names.ts'

/** What is worth a look after something was judged, measured, found or replaced, in one line. */
export function judgingHeedText(state: State, heed: JudgingHeed): string {
  switch (heed.heed) {
    case 'judged-along':
      return sentence(
        `with ${pieceName(state, heed.piece)} ${heed.along.length === 1 ? 'goes' : 'go'} ${setNames(state, heed.along)}: ${heed.reasons.length > 0 ? heed.reasons.join('; ') : 'they belong together'}`,
      )
    case 'judged-on': {
      const step = state.ledger.accounts.get(heed.piece)?.piece.step ?? 0
      const undo = heed.undo.length === 0 ? '' : `, which opens ${stepNumbers(heed.undo)}`
      return sentence(
        `${pieceName(state, heed.piece)} is on the machine, so the first start is held: ${say(`reopen ${step} because ...`)}${undo}`,
      )
    }
    case 'check-measured':
      return sentence(measuredText(state, heed))
    case 'found':
      return heed.opened.length > 0
        ? sentence(
            `opened: ${joined(heed.opened.map((id) => `${id}, when ${state.triggers.get(id)?.when ?? ''}`))}`,
          )
        : sentence(`no list of yours is for this: ${say('help when')} tells how to make one`)
    case 'mates':
      return sentence(
        `${setNames(state, heed.mates)} ${heed.mates.length === 1 ? 'belongs' : 'belong'} together with ${pieceName(state, heed.piece)}, which is new${heed.reasons.length > 0 ? ` (${heed.reasons.join('; ')})` : ''}: judge ${heed.mates.length === 1 ? 'it' : 'them'} too, ${say(`judge ${heed.mates[0]} replace because ...`)} or ${say(`judge ${heed.mates[0]} fit again because ...`)}`,
      )
    default:
      return heed satisfies never
  }
}

function measuredText(
  state: State,
  { checks, verdict, missing }: Extract<JudgingHeed, { heed: 'check-measured' }>,
): string {
  const pieces = checks.flatMap((id) => state.checks.get(id)?.piece ?? [])
  const [piece = 'p0'] = pieces
  const [first] = checks
  const check = first && state.checks.get(first)
  const name = `${setNames(state, pieces)}, ${checkNumbers(checks)}${check ? `, ${checkWords(check)}` : ''}`
  const each = pieces.length > 1 ? ', each of them' : ''
  if (missing.length > 0) return `${name}: still to be measured, ${joined(missing)}`
  if (verdict === 'out')
    return `${name}: out, so ${say(`judge ${piece} replace because ...`)}, ${say(`judge ${piece} machine because ...`)} or ${say(`judge ${piece} fit again because ...`)}${each}`
  if (verdict === 'too-close')
    return `${name}: too close to call, ${say(`ok ${typedChecks(checks)}: ...`)} with why ${pieces.length > 1 ? 'they are' : 'it is'} good`
  return `${name}: measured, ${say(`ok ${typedChecks(checks)}`)} if ${pieces.length > 1 ? 'they are' : 'it is'} good`
}
