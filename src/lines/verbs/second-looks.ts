import type { State } from '../../journal/state.ts'
import type { Account } from '../../ledger/account.ts'
import type { SecondLine } from '../../plan/waiting/waiting-facts.ts'
import type { Line } from '../line.ts'
import { misread } from '../stopped.ts'
import type { Verb } from '../verb.ts'

export const secondLookVerbs: readonly Verb[] = [
  {
    words: ['seen'],
    topic: 'build-up',
    forms: ['seen t2: WORDS', 'seen m1: WORDS', 'seen PIECE: WORDS'],
    says: 'Says what a second look at a line of a critical step saw: by somebody else, or later from another side.',
    examples: ['seen t1: paint stripes in line on all of them', 'seen valve cover: seated all round'],
    read(line) {
      const [what = '', says = ''] = line.take(/^([^:]*?) ?(?:: ?(.*))?$/) ?? []
      if (what === '') line.missing('LINE')
      refuseBundle(line, what, says)
      const seen = lineOf(line, what)
      if (says === '') line.missing('WORDS')
      return { do: 'see-again', line: seen, says }
    },
  },
]

const ID = /^[mtsp][1-9]\d{0,8}$/i

/** What is confirmed in one go was looked at in one go. */
function refuseBundle(line: Line, what: string, says: string): void {
  const parts = what.split(/ ?[,;&+] ?| and /i).filter((part) => part !== '')
  const isBundle = parts.length > 1 && (/[,;&+]/.test(what) || parts.some((part) => ID.test(part)))
  if (!isBundle) return
  const nearest = `seen ${parts[0]}: ${says === '' ? 'WORDS' : says}`
  misread({ code: 'one-each', verb: line.verb, parts, nearest })
}

function lineOf(line: Line, what: string): SecondLine {
  if (ID.test(what)) return what.toLowerCase() as SecondLine
  const { state } = line
  return line.piece(what, isOn, (account) => isCritical(state, account))
}

function isOn({ at }: Account): boolean {
  return at.has('machine')
}

function isCritical(state: State, { piece }: Account): boolean {
  return state.steps.get(piece.step)?.critical !== undefined
}
