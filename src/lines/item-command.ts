import type { Command, Into } from '../journal/command.ts'
import type { State } from '../journal/state.ts'
import type { PieceId } from '../ledger/piece.ts'
import type { BagItem, ConnectionItem, FluidItem, MarkItem, PieceItem } from '../trade/bag-line/bag-item.ts'
import { isPlural } from '../trade/bag-line/nouns.ts'
import { sizeText } from '../trade/size-text.ts'
import { findFluid } from './find-fluid.ts'
import { findPieces } from './find-piece.ts'

/** The command that one item of a bag line asks for. `into`: where pieces go, when the line or the screen says so. */
export function itemCommand(item: BagItem, state: State, into: Into | undefined): Command {
  switch (item.kind) {
    case 'fastener':
    case 'part':
      return { do: 'take-off', item: takenOff(item.kind, item), into: into ?? { kind: 'hand' } }
    case 'connection':
      // A hose or a cable mostly hangs where it is: nothing is opened for it unless asked.
      return { do: 'take-off', item: connection(item), into: into ?? { kind: 'place', place: 'bench' } }
    case 'aid': {
      const { name, count, where, positions } = item
      const place = isPlural(where) ? where.replace(/e?s$/, '') : where
      const each = positions?.map((position) => `${place} ${position}`)
      return { do: 'put-in', kind: 'aid', name, count, where, positions: each }
    }
    case 'tool':
      return { do: 'put-in', kind: 'tool', name: item.name, count: item.count }
    case 'fluid':
      return fluid(item, state)
    case 'mark':
      return mark(item, state)
    case 'note':
    case 'caution':
    case 'used':
      return { do: 'note', kind: item.kind, text: item.text }
    case 'minutes':
      return { do: 'note', kind: 'minutes', text: `${item.minutes} min`, minutes: item.minutes }
    default:
      return item satisfies never
  }
}

function takenOff(kind: 'fastener' | 'part', item: PieceItem): Extract<Command, { do: 'take-off' }>['item'] {
  const { name, count, should, broken, brokenHow, positions, alikeAt, singleUse } = item
  return {
    kind,
    name,
    found: count,
    should,
    broken: broken > 0 ? { kind: brokenHow ?? 'broken', count: broken } : undefined,
    missingAt: item.missingAt,
    brokenAt: item.brokenAt,
    size: sizeText(item) || undefined,
    positions,
    alikeAt,
    singleUse,
  }
}

function connection({ name, label, ends }: ConnectionItem): Extract<Command, { do: 'take-off' }>['item'] {
  return {
    kind: 'connection',
    name: label ?? name,
    found: ends.length,
    should: ends.length,
    positions: [...ends],
  }
}

function fluid({ name, direction, litres, typed }: FluidItem, state: State): Command {
  if (direction === 'out') return { do: 'drain', name, litres, typed }
  return { do: 'fill', fluid: findFluid(name, state), litres, typed }
}

/** A mark stays with its piece where the words name one; else they stay with the text, so that nothing is lost. */
function mark({ text, on }: MarkItem, state: State): Command {
  if (on === undefined) return { do: 'mark', text }
  const pieces = findPieces(on, state, ({ piece }) => piece.step === (state.strip ?? state.build))
  if (pieces.length === 1) return { do: 'mark', text, piece: pieces[0] as PieceId }
  return { do: 'mark', text: `${on}: ${text}` }
}
