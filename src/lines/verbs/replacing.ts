import type { Command } from '../../journal/command.ts'
import type { Account } from '../../ledger/account.ts'
import type { PieceId } from '../../ledger/piece.ts'
import type { PieceItem } from '../../trade/bag-line/bag-item.ts'
import { readBagLine } from '../../trade/bag-line/read-bag-line.ts'
import { featuresFor } from '../../trade/inspection/compare-features.ts'
import { sizeText } from '../../trade/size-text.ts'
import type { Line } from '../line.ts'
import { readComparison } from '../read-comparison.ts'
import { misread } from '../stopped.ts'
import type { Verb } from '../verb.ts'

type Of<Name extends Command['do']> = Extract<Command, { do: Name }>

export const replacingVerbs: readonly Verb[] = [
  {
    words: ['compare'],
    topic: 'parts and decisions',
    forms: [
      'compare PIECE: alike [keep old]',
      'compare PIECE: FEATURE alike|differs WORDS|wrong WORDS, ... [rest alike]',
      'compare PIECE: wrong, WORDS',
      'compare [PIECE]',
    ],
    says: 'Holds a new piece beside the old one; that then goes to scrap. Alone it shows what to look at.',
    examples: [
      'compare head gasket: alike',
      'compare p9: 1 alike, 3 differs two studs longer, rest alike keep old',
      'compare head gasket: wrong, one water hole is missing',
      'compare head gasket',
      'compare',
    ],
    read(line) {
      if (line.rest === '') return { ask: 'compare', piece: null }
      const [said] = line.take(/ ?: ?(.*)$/) ?? line.take(/ ((?:all )?alike(?: keep old)?|wrong .*)$/i) ?? []
      const pieces = compared(line, line.takeRest('PIECE'))
      const [first] = pieces
      if (said === undefined && first !== undefined && pieces.length === 1)
        return { ask: 'compare', piece: first }
      const text = said || line.missing('alike')
      return pieces.map((piece): Command => {
        const proposed = featuresFor(line.account(piece)?.piece.name ?? '')
        const read = readComparison(text, proposed)
        return read ? { do: 'compare', piece, ...read } : line.notUnderstood(text, `compare ${piece}: alike`)
      })
    },
  },
  {
    words: ['on'],
    topic: 'pieces',
    forms: ['on PIECE: BAG LINE'],
    says: 'Makes sub-parts that sit on a piece lines of their own: they go where it goes until they are taken off.',
    examples: ['on cylinder head: 3 studs M6x25; seal ring', 'on p5: 2 dowels'],
    read(line): Of<'carry'> {
      const [words = ''] = line.take(/^([^:]*?) ?(?=:|$)/) ?? []
      const on = line.piece(words, ({ should, at }) => should > 0 && !at.has('machine'))
      line.take(/^: ?/)
      const text = line.takeRest('BAG LINE')
      const bag = readBagLine(text, { units: line.state.job.units })
      if (!bag.understood) misread({ code: 'bag-line', bag })
      return {
        do: 'carry',
        on,
        items: bag.items.map((item) =>
          (item.kind === 'fastener' || item.kind === 'part') && item.broken === 0
            ? subPart(item)
            : line.notUnderstood(text, `on ${on}: 2 studs M6x25`),
        ),
      }
    },
  },
  {
    words: ['move over', 'carry over'],
    topic: 'pieces',
    forms: ['move over from PIECE to PIECE', 'move over PIECE[, PIECE] [from PIECE] to PIECE'],
    says: 'Says what was taken off one piece and put onto another: all that is owed when no pieces are named.',
    examples: ['move over from p1 to p2', 'move over exhaust studs to cylinder head'],
    read(line): Of<'move-over'> {
      line.everToo = true
      const target = line.take(/(?:^| )(?:on|in)?to (?!.* to )(.+)$/i)?.[0] ?? line.missing('to PIECE')
      const source = line.take(/(?:^| )from (?!.* from )(.+)$/i)?.[0]
      const isHere = ({ should, at }: Account) => should > 0 && !at.has('machine')
      const to = line.piece(target, isHere)
      const carries = ({ piece }: Account) => line.state.ledger.byPlace.has(piece.id)
      const from =
        source === undefined ? undefined : line.piece(source, ({ at }) => !at.has('machine'), carries)
      if (line.rest === '' && from === undefined) line.missing('from PIECE')
      const sits = ({ at, piece }: Account) =>
        piece.id !== to && (from === undefined ? !at.has('machine') : at.has(from))
      const pieces = listOf(line.rest).flatMap((words) =>
        line.pieces(words, sits, ({ should }) => should > 0),
      )
      return { do: 'move-over', from, to, ...(pieces.length > 0 && { pieces }) }
    },
  },
]

/** One piece, or several named one by one. */
function compared(line: Line, words: string): PieceId[] {
  const isDue = ({ piece }: Account) => {
    const verdict = line.state.comparisons.get(piece.id)?.verdict
    return verdict === 'due' || verdict === 'wrong'
  }
  const one = (text: string) => line.piece(text, ({ should }) => should > 0, isDue)
  const list = listOf(words)
  return list.length > 1 ? list.map(one) : [one(words)]
}

function listOf(words: string): string[] {
  return words
    .split(/,| and /i)
    .map((part) => part.trim())
    .filter((part) => part !== '')
}

function subPart(item: PieceItem): Of<'carry'>['items'][number] {
  const { kind, name, count, should, positions, singleUse } = item
  return { kind, name, count, should, size: sizeText(item) || undefined, positions, singleUse }
}
