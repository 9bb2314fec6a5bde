import type { Command } from '../../journal/command.ts'
import { joined } from '../../trade/shims/read-length.ts'
import { readShims } from '../../trade/shims/read-shims.ts'
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
      'shims [VALVE CLEARANCE SHIM, ...] [wanted I LEAST..MOST E LEAST..MOST] [for sale LEAST..MOST step STEP] [bench SIZE ...] [nearest]',
    ],
    says: 'Plans which shim goes where: the fewest bought, then the fewest valves touched ("nearest": the middle of the ranges first). Alone, from the clearances in the record.',
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
        const { code, part, nearest } = said
        const again =
          part !== '' && line.whole.includes(part) ? line.whole.replace(part, () => nearest) : nearest
        misread({ code: 'shims', fault: code, part, nearest: again })
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
    read(line): Command {
      const [words, list] = line.take(/^([^:]+?) ?: ?(.+)$/) ?? []
      if (words === undefined || list === undefined) {
        const [name, size] = line.take(/^(.+?) (?:is )?(\S*\d\S*(?: (?:mm|in|"))?)$/i) ?? []
        if (name === undefined || size === undefined) {
          line.piece(line.takeRest('PIECE'))
          return line.missing('SIZE')
        }
        return { do: 'size', sizes: [{ piece: line.piece(name), size }] }
      }
      const items = joined(list)
        .split(/;|,(?=\s|\p{L}|$)/u)
        .map((item) => /^(\S+?)[:=]? (.+)$/.exec(item.trim()))
      const at = items.map((item) => findPieces(`${words} ${item?.[1] ?? ''}`, line.state))
      // `size cover bolts: M6x25 hex 8` is one size.
      const isList = at.some((pieces) => pieces.length > 0)
      if (!isList) return { do: 'size', sizes: [{ piece: line.piece(words), size: list }] }
      const sizes = items.map((item) => {
        const [whole = list, position = '', size = ''] = item ?? []
        if (!item) return line.notUnderstood(whole, `size ${words}: E1 2.50, E2 2.475`)
        return { piece: line.piece(`${words} ${position}`), size: size.trim() }
      })
      return { do: 'size', sizes }
    },
  },
]

/** Neither said nor recorded: one line says of which valves, and how it is said. */
function lacking(line: Line, { lacks, positions }: Lacking): never {
  const [first = 'I1'] = positions
  const letters = /^\p{L}+(?=\d)/u.exec(first)?.[0] ?? first
  const nearest = {
    clearance: 'shims I1 CLEARANCE SHIM, I2 CLEARANCE SHIM wanted I LEAST..MOST',
    fitted: `size shim ${first} SIZE`,
    wanted: `${line.whole}${/ wanted /i.test(line.whole) ? '' : ' wanted'} ${letters} LEAST..MOST`,
  }[lacks]
  misread({ code: 'shims', fault: `no-${lacks}`, part: positions.join(', '), nearest })
}
