import type { Command } from '../../journal/command.ts'
import type { PieceId } from '../../ledger/piece.ts'
import type { Arrow } from '../../plan/facts.ts'
import { layoutOf, patternOf } from '../../plan/pattern.ts'
import { readLayout } from '../../trade/position-layout/read-layout.ts'
import { readPositions } from '../../trade/positions.ts'
import type { Line } from '../line.ts'
import type { Ask } from '../reading.ts'
import { misread } from '../stopped.ts'
import { takePattern } from '../take-pattern.ts'
import type { Verb } from '../verb.ts'

export const positionVerbs: readonly Verb[] = [
  {
    words: ['layout', 'draw'],
    topic: 'tightening',
    forms: ['layout PIECE: 2x4 | row | circle | 1 2 / . 3 [arrow left]', 'layout PIECE'],
    says: 'Draws where the positions of a set lie on the machine: as seen by who stands before it; alone, shows it.',
    examples: [
      'layout valve cover bolts: 2x4',
      'layout cam caps: I1 I2 / I3 I4 arrow left',
      'layout valve cover bolts',
    ],
    read(line): Command | Ask {
      const [words = '', typed = ''] = line.take(/^([^:]*?) ?(?:: ?(.*))?$/) ?? []
      const piece = takePattern(line, words)
      if (typed === '') return { ask: 'layout', piece }
      return drawn(line, { words, piece }, typed)
    },
  },
  {
    words: ['arrow', 'arrows'],
    topic: 'tightening',
    forms: ['arrow PIECE [POSITIONS] up|down|left|right'],
    says: 'Says which way the arrows of positions point in a drawing; all of them where none is named.',
    examples: ['arrow cam caps left', 'arrow cam caps: I3 up'],
    read(line): Command {
      const arrow = takeArrow(line, /(?:^|[: ]+)(up|down|left|right)$/i) ?? line.missing('up|down|left|right')
      const [words = '', typed = ''] = line.take(/^([^:]*?)(?: ?: ?(.*))?$/) ?? []
      const piece = takePattern(line, words)
      if (typed !== '') {
        const read = readPositions(typed)
        if (!read.understood)
          return line.notUnderstood(read.part || typed, `arrow ${words}: ${read.nearest} ${arrow}`)
        return { do: 'point', piece, positions: read.value, arrow }
      }
      const own = line.account(piece)?.home.position
      const isNamed = own !== undefined && ` ${words.trim()}`.toLowerCase().endsWith(` ${own.toLowerCase()}`)
      const all = layoutOf(line.state, piece)?.places.map(({ position }) => position) ?? []
      return { do: 'point', piece, positions: isNamed ? [own] : all, arrow }
    },
  },
]

function drawn(line: Line, { words, piece }: { words: string; piece: PieceId }, typed: string): Command {
  const [, form = '', , word] = /^(.*?)(?:(?:^|,? )(arrows? (up|down|left|right)))?$/i.exec(typed) ?? []
  const arrow = word?.toLowerCase() as Arrow | undefined
  const pattern = patternOf(line.state, piece)
  // What is no pattern is refused with its reason where it is decided.
  const names = 'code' in pattern ? [] : pattern.places.map(({ position }) => position)
  const known = layoutOf(line.state, piece)
  if (form.trim() === '' && known) return { do: 'lay-out', piece, layout: known, arrow }
  const read = readLayout(form, names)
  if (read.understood) return { do: 'lay-out', piece, layout: read.value, arrow }
  const { fault } = read
  if (fault.code !== 'layout-positions' && fault.code !== 'layout-too-many' && names.length > 0)
    misread({ code: 'layout', fault, before: `layout ${words}:` })
  return { do: 'lay-out', piece, layout: { shape: 'free', places: placesOf(form) }, arrow }
}

/** An outline as typed, right or wrong: the refusal says what is missing and what stands twice. */
function placesOf(form: string) {
  return form.split('/').flatMap((row, y) =>
    row
      .trim()
      .split(/\s+/)
      .flatMap((position, x) => (position === '.' || position === '' ? [] : [{ position, x, y }])),
  )
}

function takeArrow(line: Line, pattern: RegExp): Arrow | undefined {
  return line.take(pattern)?.[0]?.toLowerCase() as Arrow | undefined
}
