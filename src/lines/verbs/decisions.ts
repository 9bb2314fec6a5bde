import type { Into } from '../../journal/command.ts'
import type { Account } from '../../ledger/account.ts'
import type { PieceId } from '../../ledger/piece.ts'
import { checkProposals, checksOf } from '../../plan/judging/check-proposals.ts'
import { proposals } from '../../plan/proposals.ts'
import { findPieces } from '../find-piece.ts'
import type { Line } from '../line.ts'
import { misread } from '../stopped.ts'
import type { Verb } from '../verb.ts'

export const decisionVerbs: readonly Verb[] = [
  {
    words: ['new'],
    topic: 'parts and decisions',
    forms: ['new [COUNT] PIECE [instead] [size SIZE] [into PLACE]', 'new NAME instead of PIECE'],
    says: 'New pieces are here: more where some are short; with "instead", or for used, condemned and wrong ones, in place of the old.',
    examples: [
      'new 8 head bolts',
      'new 1 valve cover bolt into bag 2',
      'new shim E2 size 2.45',
      'new coated gasket instead of head gasket',
    ],
    read(line) {
      const into: Into = line.placeAfter('into') ?? { kind: 'place', place: 'bench' }
      const size = line.take(/,? size (.+)$/i)?.[0]
      const called = line.take(/^(.+?),? instead of (?=.)/i)?.[0]
      // One of another size is another piece: it takes the place of the old one.
      const instead = line.take(/,? instead$/i) !== null || size !== undefined || called !== undefined
      const isWanted = ({ should }: Account) => should > 0
      const isGivenUp = ({ piece: { id } }: Account) =>
        line.state.used.has(id) ||
        line.state.verdicts.get(id)?.verdict === 'replace' ||
        line.state.comparisons.get(id)?.verdict === 'wrong'
      const isShort = ({ should, at }: Account) => should > 0 && !at.has('machine')
      const { count, piece } = line.countAndOnePiece(isWanted, isGivenUp, isShort)
      const [, number, named] = /^(?:(\d{1,4}) )?(.+)$/.exec(called ?? '') ?? []
      const many = count ?? (number === undefined ? 1 : Number(number))
      return { do: 'supply', piece, count: many, into, instead, size, ...(named !== undefined && { named }) }
    },
  },
  {
    words: ['leave off'],
    topic: 'parts and decisions',
    forms: ['leave off [COUNT] PIECE because REASON'],
    says: 'Decides that pieces do not go back.',
    examples: ['leave off 1 valve cover bolt because the hole is plugged'],
    read(line) {
      const reason = line.reason()
      const { count, piece } = line.countAndOnePiece(({ should }) => should > 0)
      return { do: 'leave-off', piece, count, reason }
    },
  },
  {
    words: ['accept lost'],
    topic: 'parts and decisions',
    forms: ['accept lost PIECE because REASON'],
    says: 'Decides that a lost piece may stay lost: it is nowhere in the machine.',
    examples: ['accept lost valve cover bolts because seen falling into the drain'],
    read(line) {
      const reason = line.reason()
      const piece = line.piece(line.takeRest('PIECE'), ({ at }) => at.has('lost'))
      return { do: 'accept-lost', piece, reason }
    },
  },
  {
    words: ['use again'],
    topic: 'parts and decisions',
    forms: ['use again PIECE because REASON'],
    says: 'Decides that a single-use piece goes back once more.',
    examples: ['use again head gasket because it was never under load'],
    read(line) {
      const reason = line.reason()
      const piece = line.piece(line.takeRest('PIECE'), (account) => line.state.used.has(account.piece.id))
      return { do: 'use-again', piece, reason }
    },
  },
  {
    words: ['swap'],
    topic: 'parts and decisions',
    forms: ['swap PIECE and PIECE because REASON'],
    says: 'Decides that two matched pieces change homes.',
    examples: [
      'swap shim E1 and shim E2 because of the clearances',
      'swap shims E1 E2 because of the clearances',
    ],
    read(line) {
      const reason = line.reason()
      const [first, second] = twoPieces(line)
      const home = (id: PieceId) => line.account(id)?.home.position ?? ''
      return {
        do: 'rehome',
        homes: [
          { piece: first, position: home(second) },
          { piece: second, position: home(first) },
        ],
        reason,
      }
    },
  },
  {
    words: ['rehome'],
    topic: 'parts and decisions',
    forms: ['rehome PIECE to POSITION because REASON'],
    says: 'Decides that a matched piece takes another, free position; or that the end of a hose has another name.',
    examples: [
      'rehome p12 to E2 because its own is scrapped',
      'rehome hose radiator to radiator top because it was written wrongly',
    ],
    read(line) {
      const reason = line.reason()
      const position = line.take(/ to ([^ ].*)$/i)?.[0] ?? line.missing('to POSITION')
      const piece = line.piece(line.takeRest('PIECE'), ({ should }) => should > 0)
      return { do: 'rehome', homes: [{ piece, position }], reason }
    },
  },
  {
    words: ['settle'],
    topic: 'parts and decisions',
    forms: ['settle x1: HOW', 'settle w1: HOW'],
    says: 'Says how a fault was put right; such as a snapped stud, or an entry that was left out when a copy was merged.',
    examples: ['settle x1: drilled out, thread insert fitted', 'settle w1: looked, it is on the bench'],
    read(line) {
      const [kind = '', digits] = line.take(/^([xw])(\d{1,9})(?=:| |$)/i) ?? line.missing('x1')
      line.take(/^: ?/)
      const no = Number(digits)
      if (kind.toLowerCase() === 'x')
        return { do: 'settle-fault', fault: `x${no}`, how: line.takeRest('HOW') }
      line.take(/^because /i)
      return { do: 'settle-left-out', leftOut: `w${no}`, how: line.takeRest('HOW') }
    },
  },
  {
    words: ['accept'],
    topic: 'plan',
    forms: ['accept 1,2', 'accept all', 'accept checks'],
    says: 'Takes what is proposed, by its number in "proposals": steps of the way back, and checks of pieces; "all" is all steps.',
    examples: ['accept all', 'accept 1', 'accept checks'],
    read(line) {
      const proposed = proposals(line.state)
      const checks = checkProposals(line.state)
      const count = proposed.length + checks.length
      const asked = line.takeRest('N')
      const all = Array.from({ length: count }, (_, index) => index + 1)
      const byWord = new Map([
        ['all', all.slice(0, proposed.length)],
        ['checks', all.slice(proposed.length)],
      ])
      const chosen = byWord.get(asked.toLowerCase()) ?? line.numbers(asked)
      if (chosen.length === 0) misread({ code: 'no-such-proposal', part: asked, count })
      return [...new Set(chosen)].map((number) => {
        const check = checks[number - 1 - proposed.length]
        if (check) return { do: 'ask-checks', checks: checksOf(check) }
        const { title, kind, way, needs, before, due, turns } = proposed[number - 1] ?? {}
        if (!title || !kind || kind === 'refit' || !way || way === 'both') {
          misread({ code: 'no-such-proposal', part: String(number), count })
        }
        return { do: 'add-step', title, kind, way, needs: needs ?? [], before: before ?? [], due, turns }
      })
    },
  },
]

/** `shim E1 and shim E2`, `shims E1 E2`, `p3 p4`: the second may leave out what the first says. */
function twoPieces(line: Line): [PieceId, PieceId] {
  const words = line.takeRest('PIECE')
  const wanted = ({ should }: Account) => should > 0
  const one = (text: string) => {
    const found = findPieces(text, line.state, wanted)
    return found.length === 1 ? found[0] : undefined
  }
  const parts = words.split(/(?: and |,| with )/i).map((part) => part.trim())
  const tokens = words.split(/(?: and |,| with | )/i).filter((part) => part !== '')
  const splits: [string, string][] =
    parts.length === 2
      ? [[parts[0] ?? '', parts[1] ?? '']]
      : tokens.slice(1).map((_, at) => [tokens.slice(0, at + 1).join(' '), tokens.slice(at + 1).join(' ')])
  const named = (left: string, right: string) => `${left.split(' ').slice(0, -1).join(' ')} ${right}`.trim()
  for (const [left, right] of splits) {
    const first = one(left)
    const second = one(named(left, right)) ?? one(right)
    if (first && second && first !== second) return [first, second]
  }
  const [left, right] = splits.find(([left]) => one(left)) ?? splits[0] ?? line.missing('PIECE')
  const first = line.piece(left, wanted)
  return [first, line.piece(findPieces(right, line.state).length > 0 ? right : named(left, right), wanted)]
}
