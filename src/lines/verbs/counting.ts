import type { Command, Explanation } from '../../journal/command.ts'
import type { Account } from '../../ledger/account.ts'
import { holdingsIn } from '../../ledger/ledger.ts'
import type { PieceId } from '../../ledger/piece.ts'
import { containerOf } from '../../ledger/place.ts'
import type { DifferenceId } from '../../plan/facts.ts'
import { findPieces } from '../find-piece.ts'
import type { Line } from '../line.ts'
import { readPlace } from '../read-place.ts'
import type { Verb } from '../verb.ts'

type Counts = Extract<Command, { do: 'count' }>['counts']

export const countingVerbs: readonly Verb[] = [
  {
    words: ['count'],
    topic: 'counting',
    forms: ['count 5 = 4', 'count 5: PIECE=4, PIECE=2, others=1'],
    says: 'A recount: how many are in a container. The record keeps its number to itself until yours is given.',
    examples: ['count 2 = 8', 'count bag 2: valve cover bolts=8, others=1'],
    read(line) {
      const [name = '', counts = ''] = line.take(/^([^:=]*?) ?[:=] ?(.*)$/) ?? []
      if (name === '') line.missing(line.rest === '' ? 'N' : '= NUMBER')
      if (counts === '') line.missing('NUMBER')
      const container = line.container(name)
      return { do: 'count', container, counts: readCounts(line, container, counts) }
    },
  },
  {
    words: ['explain'],
    topic: 'counting',
    forms: [
      'explain d1 missing because REASON',
      'explain d1 PIECE from|to PLACE because REASON',
      'explain d1 unknown NAME because REASON',
    ],
    says: 'Explains a count that did not agree; so the record is put right.',
    examples: [
      'explain d1 missing because looked under the bench and in the sump',
      'explain d1 valve cover bolts from bag 2 because two bags were open',
      'explain d1 unknown black washer because nobody knows it',
    ],
    read(line) {
      const reason = line.reason()
      const [number] =
        line.take(/^d(\d{1,9})(?= |$)/i) ??
        (line.rest === '' ? line.missing('d1') : line.notUnderstood(line.rest))
      return {
        do: 'explain',
        difference: `d${Number(number)}`,
        how: explanation(line, `d${Number(number)}`),
        reason,
      }
    },
  },
]

function readCounts(line: Line, container: number, text: string): Counts {
  const { ledger } = line.state
  const there = [...new Set(holdingsIn(ledger, container).map(({ piece }) => piece))]
  if (!text.includes('=')) return oneCount(there, line.number(text))
  return text.split(/[,;]/).flatMap((part): Counts => {
    const [, words = '', number = ''] =
      /^ ?(.*?) ?= ?(.*?) ?$/.exec(part) ?? line.notUnderstood(part.trim(), `count ${container}: p1=4`)
    const counted = line.number(number)
    if (/^(?:others?|unknown|\?)$/i.test(words)) return [{ piece: null, counted }]
    const isThere = ({ piece }: Account) => there.includes(piece.id)
    const pieces = findPieces(words, line.state, isThere)
    // Of a whole set in a tray, all or none needs no further telling.
    if (
      pieces.length > 1 &&
      pieces.every((id) => there.includes(id)) &&
      (counted === 0 || counted === pieces.length)
    ) {
      return pieces.map((piece) => ({ piece, counted: counted === 0 ? 0 : 1 }))
    }
    return [{ piece: line.piece(words, isThere), counted }]
  })
}

/** One number stands for the one piece there; nothing at all stands for each of them. */
function oneCount(there: PieceId[], counted: number): Counts {
  if (counted === 0)
    return there.length > 0 ? there.map((piece) => ({ piece, counted })) : [{ piece: null, counted }]
  if (there.length > 1) return []
  return [{ piece: there[0] ?? null, counted }]
}

function explanation(line: Line, id: DifferenceId): Explanation {
  if (line.take(/^missing$/i)) return { kind: 'missing' }
  const [name] = line.take(/^unknown(?: (.*))?$/i) ?? []
  if (name !== undefined) return name === '' ? line.missing('NAME') : { kind: 'unknown-piece', name }
  if (line.rest === '') line.missing('missing')
  const [words = '', place = ''] =
    line.take(/^(.*?) ?(?:\b(?:from|to)\b) (.+)$/i) ??
    line.notUnderstood(line.rest, `explain ${id} missing because ...`)
  const other = readPlace(place, line.state) ?? line.place(place)
  const difference = line.state.differences.get(id)
  const isThere = ({ at }: Account) =>
    [...at.keys()].some((each) => containerOf(each) === difference?.container)
  const piece = words === '' ? difference?.piece : line.piece(words, isThere)
  return piece ? { kind: 'moved', piece, other } : line.missing('PIECE')
}
