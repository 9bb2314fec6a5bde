import type { State } from '../journal/state.ts'
import type { PieceId } from '../ledger/piece.ts'
import type { Misreading } from '../lines/reading.ts'
import { say } from './cures.ts'
import { counted, joined } from './grammar.ts'
import { layoutFaultText } from './layout-faults.ts'
import { liesAt } from './lookups.ts'
import { measuringFaultText } from './measurements/measuring-faults.ts'
import { passFaultText } from './pass-faults.ts'
import { pieceName } from './pieces.ts'
import { whereName } from './places.ts'
import { saidFaultText } from './said-faults.ts'
import { shimFaultText } from './sums/shim-faults.ts'
import { type Told, told } from './told.ts'
import { orderMisreadingText } from './waiting/order-misreadings.ts'

/** Why a line was not understood, and how it could have been written. */
export function misreadingText(state: State, misreading: Misreading): Told {
  switch (misreading.code) {
    case 'empty':
      return told('nothing was written', HELP)
    case 'too-long':
      return told(
        `a line has at most ${misreading.limit} characters`,
        'say it in two lines, so that nothing is cut off',
      )
    case 'unknown-word':
      return unknownWord(misreading)
    case 'missing':
      return told(`${misreading.verb}: ${misreading.what} is missing`, `write ${say(misreading.form)}`)
    case 'not-a-number':
      return told(`${quoted(misreading.part)} is no number`, `write ${say(misreading.form)}`)
    case 'not-understood': {
      const { verb, part, nearest, form } = misreading
      return told(
        `${verb} does not understand ${quoted(part)}`,
        nearest === null ? `write ${say(form)}` : `perhaps ${say(nearest)}`,
      )
    }
    case 'amount': {
      const { part, fault, nearest, form } = misreading
      return told(
        part === '' ? 'the amount is missing' : `${quoted(part)} ${AMOUNT_FAULTS[fault]}`,
        part === '' || nearest === null ? `write ${say(form)}` : `perhaps ${say(nearest)}`,
      )
    }
    case 'layout':
      return layoutFaultText(misreading.fault, misreading.before)
    case 'passes':
      return passFaultText(misreading)
    case 'measuring':
      return measuringFaultText(misreading)
    case 'shims':
      return shimFaultText(misreading)
    case 'no-such-piece': {
      const { part, near } = misreading
      const cure =
        near.length > 0 ? 'name one of these, or another' : `${say('where')} shows every piece that is off`
      return told(`no piece is called ${quoted(part)}`, cure, pieceLines(state, near))
    }
    case 'no-such-place':
      return told(
        `${quoted(misreading.part)} is no place and no container`,
        `say a container, ${say('bag 3')} or ${say('tray 3/5')}, a new one, ${say('new bag')}, or bench, out, spare, scrap, lost, toolbox`,
      )
    case 'no-such-fluid': {
      const { part, known } = misreading
      const what = part === '' ? 'the fluid is not named' : `no one fluid is called ${quoted(part)}`
      return known.length === 0
        ? told(what, `no fluid is out; ${say('off coolant out 2.1 L')} when one is drained`)
        : told(what, 'name one of these by its id', known)
    }
    case 'no-such-proposal':
      return told(
        misreading.count === 0
          ? 'nothing is proposed'
          : `there is no proposal ${quoted(misreading.part)}, only 1 to ${misreading.count}`,
        `${say('proposals')} shows them`,
      )
    case 'no-such-want':
    case 'no-such-order':
      return orderMisreadingText(state, misreading)
    case 'reason-missing':
      return told(`${misreading.verb} needs a reason`, `write ${say(misreading.form)}`)
    case 'one-each': {
      const { verb, parts, nearest } = misreading
      return told(
        `${verb} is said of each by itself, and ${joined(parts.map(quoted))} are ${parts.length}`,
        `look at each, and write a line for it: ${say(nearest)}`,
      )
    }
    case 'date':
    case 'no-such-day':
    case 'two-ways':
    case 'duration':
    case 'price':
      return saidFaultText(misreading)
    case 'bag-line':
      return bagLine(misreading.bag)
    default:
      return misreading satisfies never
  }
}

/** That several pieces answer to words: which they are and where they lie. */
export function whichPieceText(state: State, words: string, pieces: readonly PieceId[]): Told {
  return told(
    `${counted(pieces.length, 'piece')} answer to ${quoted(words)}`,
    'say which, by its position or its id',
    pieceLines(state, pieces),
  )
}

const AMOUNT_FAULTS: Record<Extract<Misreading, { code: 'amount' }>['fault'], string> = {
  empty: 'is no amount',
  number: 'has no number that is understood',
  thousands: 'has a comma that may part thousands or be a decimal one: write a point or nothing',
  unit: 'has no unit that fits here',
  'us-or-imperial': 'may be the US measure or the imperial one, which differ by a fifth',
  'not-positive': 'is zero or less',
  'too-large': 'is more than it can be on a machine',
  kind: 'is of another kind',
}

const HELP = `${say('help')} shows what can be written`

function unknownWord({ part, nearest }: Extract<Misreading, { code: 'unknown-word' }>): Told {
  if (part.toLowerCase() === 'restore')
    return told(
      'a back-up becomes a job of its own, beside this one',
      `leave, and type ${say('putback restore FILE')} in a shell`,
    )
  const what = `no line begins with ${quoted(part)}`
  if (nearest === null) return told(what, HELP)
  return told(what, nearest === 'off' ? `what came off begins with ${say('off')}` : `perhaps ${say(nearest)}`)
}

type BagFault = Extract<Misreading, { code: 'bag-line' }>['bag']['code']

function bagLine({ code, part, nearest }: Extract<Misreading, { code: 'bag-line' }>['bag']): Told {
  const what = part === '' ? `this ${FAULTS[code]}` : `${quoted(part)} ${FAULTS[code]}`
  // Behind the verb it is understood everywhere, on the strip-down screen too.
  return told(what, `nearest that is understood: ${say(/^off /i.test(nearest) ? nearest : `off ${nearest}`)}`)
}

const FAULTS: Record<BagFault, string> = {
  empty: 'says nothing that came off',
  count: 'is no count from 1 to 9999 that agrees with the rest',
  thread: 'is no thread that a standard has',
  class: 'is no property class that the standard has',
  drive: 'is no drive of that size',
  positions: 'are no positions that agree with each other and the count',
  volume: 'is no amount of a fluid',
  torque: 'is a torque: it belongs to a tightening, not on a bag',
  minutes: 'is no time in minutes',
  ends: 'does not name both ends of a connection',
  where: 'does not say where it was put',
  text: 'has no text behind it',
  kind: 'is nothing that a bag line knows',
}

function pieceLines(state: State, pieces: readonly PieceId[]): string[] {
  return pieces.map((id) => {
    const lies = liesAt(state, id).map(({ place, count }) => `${count} ${whereName(state, place)}`)
    return `${id}  ${pieceName(state, id)}${lies.length > 0 ? `: ${lies.join(', ')}` : ''}`
  })
}

/** The user's own words: double quotes are for words to type. */
function quoted(part: string): string {
  return `'${part}'`
}
