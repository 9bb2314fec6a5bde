import type { Command } from '../../journal/command.ts'
import type { NotUnderstood } from '../../trade/reading.ts'
import { joined } from '../../trade/shims/read-length.ts'
import { readShims } from '../../trade/shims/read-shims.ts'
import type { ShimFault } from '../../trade/shims/shim-fault.ts'
import type { Lacking } from '../../trade/shims/whole-valves.ts'
import { findPieces } from '../find-piece.ts'
import type { Line } from '../line.ts'
import type { Ask } from '../reading.ts'
import { shimSum } from '../shim-sum.ts'
import { misread } from '../stopped.ts'
import type { Verb } from '../verb.ts'

export const shimVerbs: readonly Verb[] = [
  {
    words: ['shims'],
    topic: 'arithmetic',
    forms: [
      'shims VALVE CLEARANCE SHIM, ... wanted I LEAST..MOST E LEAST..MOST',
      'shims [...] [for sale LEAST..MOST step STEP] [bench SIZE SIZE] [nearest]',
    ],
    says: 'Plans which shim goes where: buys the fewest, then touches the fewest valves ("nearest": is nearest the middle). Clearances that are not said are those in the record.',
    examples: [
      'shims E1 0.26 2.50, E2 0.21 2.50, E3 0.31 2.50 wanted E 0.22..0.28 for sale 2.30..3.00 step 0.025',
      'shims I1 0.14 2.45, I2 0.12 2.40 wanted I 0.13..0.17 bench 2.40 2.55',
    ],
    // `shims I1..I4` is what came off.
    meant:
      /^(?:$|(?:wanted|for sale|bench|nearest)(?=[ :]|$)|\S+(?: ?[:=])? (?:0|[.,]\d|[\d.,]+[^\s,;]* [\d.,]))/i,
    read(line): Ask {
      const said = readShims(line.rest)
      if (!said.understood) {
        const { code, part } = said
        misread({ code: 'shims', fault: code, part, nearest: again(line.whole, said) })
      }
      const sum = shimSum(said.value, line.state)
      if ('lacks' in sum) return lacking(line, sum)
      return { ask: 'sum', sum }
    },
  },
  {
    words: ['size', 'sizes'],
    topic: 'pieces',
    forms: ['size PIECE SIZE', 'size PIECES: POSITION SIZE, POSITION SIZE'],
    says: 'Says what size pieces are: what is marked on each shim, or what was read wrongly.',
    examples: ['size shim E1 2.50', 'size shims: E1 2.50, E2 2.475', 'size valve cover bolts: M6x25 hex 8'],
    read: (line): Command => ({ do: 'size', sizes: sizesOf(line) }),
  },
]

type Sizes = Extract<Command, { do: 'size' }>['sizes']

function sizesOf(line: Line): Sizes {
  const [words, list] = line.take(/^([^:]+?) ?: ?(.+)$/) ?? []
  if (words === undefined || list === undefined) return [oneSize(line)]
  const set = findPieces(words, line.state)
  const positions = set.map((piece) => line.account(piece)?.home.position?.toLowerCase())
  const isAbout = positions.includes(/^[^\s:=]+/.exec(list)?.[0]?.toLowerCase())
  // `size cover bolts: M6x25 hex 8` is one size for one piece.
  if (positions.includes(undefined) || (set.length < 2 && !isAbout))
    return [{ piece: line.piece(words), size: list }]
  const items = joined(list).split(/;|,(?=\s|\p{L}|$)/u)
  return items.map((item) => {
    const [, position, size] = /^(\S+?)[:=]? (\S.*)$/.exec(item.trim()) ?? []
    if (position === undefined || size === undefined)
      return line.notUnderstood(item.trim(), `size ${words}: POSITION SIZE, POSITION SIZE`)
    return { piece: line.piece(`${words} ${position}`), size }
  })
}

function oneSize(line: Line): Sizes[number] {
  const whole = line.takeRest('PIECE')
  const [, name = '', size = ''] = /^(.+?) (?:is )?(\S*\d\S*(?: (?:mm|in|"))?)$/i.exec(whole) ?? []
  // `shim E1` alone names a piece, and no size.
  const isPosition = findPieces(whole, line.state).some(
    (piece) => line.account(piece)?.home.position?.toLowerCase() === size.toLowerCase(),
  )
  if (name === '' || isPosition) {
    line.piece(whole)
    line.missing('SIZE')
  }
  return { piece: line.piece(name), size }
}

/** The line once more, with what would be understood in the place of what is not. */
function again(whole: string, { code, part, nearest }: NotUnderstood<ShimFault>): string {
  if (part === '') return `${whole} ${nearest}`
  const words = part.replace(/[.*+?^${}()|[\]\\]/g, '\\$&')
  const found = [...whole.matchAll(new RegExp(`(?<![\\p{L}\\d.,])${words}(?![\\p{L}\\d]|[.,]\\d)`, 'giu'))]
  // Valves come first in the line: the same figure may stand in both.
  const at = (aboutValves.has(code) ? found[0] : found.at(-1))?.index
  if (at === undefined) return nearest
  const before = whole.slice(0, at)
  const after = whole.slice(at + part.length)
  if (code === 'twice') return `${before.replace(/[ ,;]+$/, '')}${after}`
  return `${before}${nearest}${after}`
}

const aboutValves = new Set<ShimFault>(['valve', 'comma', 'inches', 'turned-round', 'too-large', 'code'])

/** Neither said nor recorded: one line says of which valves, and how it is said. */
function lacking(line: Line, { lacks, positions }: Lacking): never {
  const [first = 'I1'] = positions
  const groups = [...new Set(positions.map((position) => /^\p{L}+(?=\d)/u.exec(position)?.[0] ?? position))]
  const nearest = {
    clearance: 'shims I1 CLEARANCE SHIM, I2 CLEARANCE SHIM wanted I LEAST..MOST',
    fitted: `size shim ${first} SIZE`,
    wanted: `${line.whole} wanted ${groups.map((group) => `${group} LEAST..MOST`).join(' ')}`,
  }[lacks]
  const more = positions.length - 4
  const part = positions.slice(0, 4).join(', ') + (more > 0 ? ` and ${more} more` : '')
  misread({ code: 'shims', fault: `no-${lacks}`, part, nearest })
}
