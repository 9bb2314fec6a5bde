import type { Account } from '../../ledger/account.ts'
import type { PieceId } from '../../ledger/piece.ts'
import { triggersFor } from '../../plan/judging/findings.ts'
import type { TriggerId, TriggerItem } from '../../plan/judging/judging-facts.ts'
import { findPieces } from '../find-piece.ts'
import { piecesOf } from '../find-pieces.ts'
import type { Line } from '../line.ts'
import { beginsCheck, readChecks } from '../read-checks.ts'
import type { Verb } from '../verb.ts'

export const findingVerbs: readonly Verb[] = [
  {
    words: ['when'],
    topic: 'checking and judging',
    forms: ['when FINDING: replace PIECES; check PIECES: look for WHAT; measure WHAT'],
    says: 'Lists what to replace or check once something is found. It opens with the finding.',
    examples: ['when metal in the oil: check cam caps: look for score; replace shim E2'],
    read(line) {
      const [when = '', list = ''] = line.take(/^([^:]*):? ?(.*)$/) ?? []
      if (when.trim() === '') line.missing('FINDING')
      if (list.trim() === '') line.missing('replace PIECES')
      return { do: 'set-trigger', when: when.trim(), items: itemsOf(line, list) }
    },
  },
  {
    words: ['finding'],
    topic: 'checking and judging',
    forms: ['finding WORDS [at PIECE]'],
    says: 'Records something that was found. The lists that are for it open: checks to do, pieces to replace.',
    examples: ['finding metal in the oil', 'finding deep score at cam cap I3'],
    read(line) {
      const piece = pieceBehind(line)
      const text = line.takeRest('WORDS')
      const triggers: TriggerId[] = triggersFor(line.state, text).map(({ id }) => id)
      return { do: 'find', text, piece, triggers }
    },
  },
]

const isWanted = ({ should }: Account) => should > 0

/** `replace oil pump; check main bearings: look for score; measure clearance`: a clause belongs to the check before it. */
function itemsOf(line: Line, list: string): TriggerItem[] {
  const items: TriggerItem[] = []
  let checked: PieceId[] = []
  for (const clause of list.split(/\s*;\s*/).filter((each) => each.trim() !== '')) {
    const replaced = /^replace (.+)$/i.exec(clause)?.[1]
    const [, pieces, asked] = /^check ([^:]+)(?:: ?(.*))?$/i.exec(clause) ?? []
    if (replaced !== undefined) {
      checked = []
      items.push(...piecesOf(line, replaced, isWanted).map((piece) => ({ do: 'replace' as const, piece })))
    } else if (pieces !== undefined) {
      checked = piecesOf(line, pieces, isWanted)
      items.push(...checksOf(line, checked, asked || 'look'))
    } else if (checked.length > 0 && beginsCheck(clause)) {
      items.push(...checksOf(line, checked, clause))
    } else {
      line.notUnderstood(clause)
    }
  }
  return items
}

function checksOf(line: Line, pieces: readonly PieceId[], asked: string): TriggerItem[] {
  const checks = readChecks(line, asked)
  return pieces.flatMap((piece) => checks.map((check) => ({ do: 'check' as const, piece, ...check })))
}

/** Words behind `at` or `on` that name one piece; others belong to the finding. */
function pieceBehind(line: Line): PieceId | undefined {
  const [, words] = /^.+ (?:at|on) (?:the )?(.+)$/i.exec(line.rest) ?? []
  const [piece, ...others] = words === undefined ? [] : findPieces(words, line.state, isWanted)
  if (piece === undefined || others.length > 0) return undefined
  line.take(/ (?:at|on) (?:the )?(?!.* (?:at|on) )(.+)$/i)
  return piece
}
