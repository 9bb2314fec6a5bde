import type { Fitting } from '../../journal/command.ts'
import type { Account } from '../../ledger/account.ts'
import { holdingsIn } from '../../ledger/ledger.ts'
import { belongsInToolbox, isMatched, type PieceId } from '../../ledger/piece.ts'
import { slotOf } from '../../ledger/place.ts'
import { owedAtHome } from '../../plan/contents.ts'
import { readVolume } from '../../trade/quantity.ts'
import { findFluid } from '../find-fluid.ts'
import { namesPosition } from '../find-piece.ts'
import type { Line } from '../line.ts'
import { readPlace } from '../read-place.ts'
import type { Verb } from '../verb.ts'

export const buildVerbs: readonly Verb[] = [
  {
    words: ['take'],
    topic: 'build-up',
    forms: ['take N'],
    says: 'Takes a step of the way back in hand.',
    examples: ['take 3'],
    read(line) {
      const step = line.takeNumber()
      line.end()
      return { do: 'begin-build', step }
    },
  },
  {
    words: ['fit'],
    topic: 'build-up',
    forms: ['fit PIECE [COUNT] [at POSITION] [in step N]', 'fit bag 4'],
    says: 'Puts pieces home: all that are owed unless a number is said. A matched piece needs its position said.',
    examples: [
      'fit cam cap I3',
      'fit p5 at I3',
      'fit 4 valve cover bolts',
      'fit coolant hose at pump',
      'fit bag 4',
    ],
    read(line) {
      const step = line.take(/,? in step (\d+)$/i)?.[0]
      const at = line.take(/ at (?!.* at )(.+)$/i)?.[0]
      const fittings = fromContainer(line, at) ?? [onePiece(line, at)]
      return { do: 'fit', step: step === undefined ? undefined : Number(step), fittings }
    },
  },
  {
    words: ['confirm'],
    topic: 'build-up',
    forms: ['confirm m1'],
    says: 'Confirms a mark: it has been seen, and it stands as noted.',
    examples: ['confirm m1'],
    read(line) {
      const [mark] =
        line.take(/^m?(\d{1,9})$/i) ??
        (line.rest === '' ? line.missing('m1') : line.notUnderstood(line.rest, 'confirm m1'))
      return { do: 'confirm', mark: `m${Number(mark)}` }
    },
  },
  {
    words: ['turned over', 'crank'],
    topic: 'build-up',
    forms: ['turned over [N]'],
    says: 'One full turn of the machine by hand: the way it runs, in the step that counts them.',
    examples: ['turned over', 'turned over 2'],
    // A crank pulley comes off as well.
    meant: /^(?:\d*|once|twice|.* (?:turns?|times))$/i,
    read(line) {
      const step = line.rest === '' ? undefined : line.takeNumber()
      line.end()
      return { do: 'turn-over', step }
    },
  },
  {
    words: ['fill'],
    topic: 'build-up',
    forms: ['fill FLUID 2.1 L'],
    says: 'Records a fluid filled in, with its amount.',
    examples: ['fill coolant 2.1 L', 'fill f1 2.2 L'],
    read(line) {
      const [name = '', amount = ''] = line.take(/^(.*?)[:,]? ?((?:\d|[.,]\d|[½¼¾]).*)$/) ?? []
      const [fluid, volume] = splitFluid(name, amount)
      if (fluid === '' && line.rest === '') line.missing('FLUID')
      if (volume === '') line.missing('2.1 L')
      const found = findFluid(fluid, line.state)
      // A bare number, as from a number pad, is meant in the unit in which the fluid came out.
      const unit = /^[\d.,]+$/.test(volume) ? unitOf(line.state.fluids.get(found)?.typed) : ''
      const litres = readVolume(`${volume}${unit}`, { units: line.state.job.units })
      if (!litres.understood) return line.notUnderstood(litres.part, `fill ${fluid} ${litres.nearest}`)
      return { do: 'fill', fluid: found, ...litres.value }
    },
  },
  {
    words: ['look'],
    topic: 'build-up',
    forms: ['look N'],
    says: 'The last look before a step hides what lies beneath: all in place, clean, nothing left inside.',
    examples: ['look 1'],
    read(line) {
      const step = line.takeNumber()
      line.end()
      return { do: 'look', step }
    },
  },
  {
    words: ['done'],
    topic: 'build-up',
    forms: ['done [N] [: RESULT]'],
    says: 'Closes the step in hand, or the one named: with what was found or measured.',
    examples: ['done', 'done 3', 'done 3: all within limits', 'done: 4 % leak-down'],
    read(line) {
      const step = line.take(/^(?:step )?(\d+)(?=:| |$)/i)?.[0]
      const result = line.take(/^:? ?(.*)$/)?.[0] ?? ''
      return {
        do: 'close-step',
        step: step === undefined ? undefined : Number(step),
        result: result === '' ? undefined : result,
      }
    },
  },
  {
    words: ['fail'],
    topic: 'build-up',
    forms: ['fail N: RESULT[, reopen 3,4]'],
    says: 'A check failed: says what was found, and which steps are to be done again.',
    examples: ['fail 5: marks one link off, reopen 3,4', 'fail 5: leaks at the hose'],
    read(line) {
      const again = line.take(/(?:,|;)? reopen (?:steps? )?(\d[\d, ]*(?:and \d+)?)$/i)?.[0] ?? ''
      const step = line.takeNumber()
      line.take(/^[:,] ?/)
      return { do: 'fail', step, result: line.takeRest('RESULT'), steps: line.numbers(again) }
    },
  },
  {
    words: ['reopen'],
    topic: 'build-up',
    forms: ['reopen 3,4 because REASON'],
    says: 'Takes steps back, with all that was built on top of them: their pieces come to the bench.',
    examples: ['reopen 3 because a bolt was left over', 'reopen 3,4 because the chain is one link off'],
    read(line) {
      const reason = line.reason()
      return { do: 'reopen', steps: line.numbers(line.takeRest('N')), reason }
    },
  },
  {
    words: ['override'],
    topic: 'build-up',
    forms: [
      'override start|finish|look|check N because REASON',
      'override m1|t1|f1|x1|k1|b1|s1 because REASON',
    ],
    says: 'Passes over a gate or a thing owed. The reason is shown wherever the step is shown. No law can be overridden.',
    examples: [
      'override start 3 because the part comes on Monday',
      'override m1 because the mark has worn off',
    ],
    read(line) {
      const reason = line.reason()
      const [gate = '', step] = line.take(/^(start|finish|look|check) (?:step )?(\d+)$/i) ?? []
      if (step !== undefined) {
        return { do: 'override', target: `${gate.toLowerCase() as 'start'} ${Number(step)}`, reason }
      }
      const [kind = '', number] = line.take(/^([mtlfxkbs])(\d{1,9})$/i) ?? []
      if (number === undefined) {
        return line.rest === ''
          ? line.missing('start N')
          : line.notUnderstood(line.rest, 'override start 3 because ...')
      }
      return { do: 'override', target: `${kind.toLowerCase() as 'm'}${Number(number)}`, reason }
    },
  },
]

/** Everything in a container that belongs to the step in hand, or else to the step of the first wanted piece. */
function fromContainer(line: Line, at: string | undefined): Fitting[] | null {
  if (!/^(?:(?:bag|bin|tray|tag) ?\d|c?\d{1,4}\/)/i.test(line.rest)) return null
  const place = readPlace(line.rest, line.state)
  if (place?.kind !== 'container') return null
  line.takeRest('PIECE')
  const { state } = line
  const wanted = holdingsIn(state.ledger, place.no)
    .filter(({ place: lies }) => place.slot === undefined || slotOf(lies) === place.slot)
    .flatMap(({ piece, count }) => {
      const account = line.account(piece)
      const owed = account ? owedAtHome(state, account) : 0
      return account && owed > 0 && !belongsInToolbox(account.piece)
        ? [{ account, count: Math.min(owed, count) }]
        : []
    })
  const step =
    wanted.find(({ account }) => account.piece.step === state.build)?.account.piece.step ??
    wanted[0]?.account.piece.step
  const own = wanted.filter(({ account }) => account.piece.step === step)
  // Nothing in it goes home: that is refused by the name of what it is.
  const [old] = holdingsIn(state.ledger, place.no)
  if (own.length === 0 && old) return [{ piece: old.piece, count: old.count }]
  return own.map(({ account, count }) => ({
    piece: account.piece.id,
    count,
    position: isMatched(account.piece) && at !== undefined ? positionFor(account, at) : undefined,
  }))
}

function onePiece(line: Line, at: string | undefined): Fitting {
  const { state } = line
  const owed = (account: Account) => !belongsInToolbox(account.piece) && owedAtHome(state, account) > 0
  const inHand = ({ piece }: Account) => state.build === null || piece.step === state.build
  const { count, words, pieces } = line.countAndPiece(({ should }) => should > 0, owed, inHand)
  const piece = pieces.length === 1 ? pieces[0] : hoseEnd(line, pieces, at)
  if (piece === undefined) return line.which(words, pieces, (id) => withPosition(line, words, id, at))
  const account = line.account(piece)
  const said = at ?? (account && namesPosition(words, account) ? account.home.position : undefined)
  return { piece, count, position: said === undefined || !account ? said : positionFor(account, said) }
}

/** A hose end goes by its port. Where one hose has no such port, the end still off stands for it, to be refused. */
function hoseEnd(line: Line, pieces: PieceId[], at: string | undefined): PieceId | undefined {
  const ends = pieces.flatMap((id) => line.account(id) ?? [])
  if (at === undefined || ends.some(({ piece }) => piece.kind !== 'connection')) return undefined
  const own = ends.filter(({ home }) => home.position?.toLowerCase() === at.toLowerCase())
  if (own.length === 1) return own[0]?.piece.id
  const isOneHose = new Set(ends.map(({ piece }) => piece.set)).size === 1
  return own.length === 0 && isOneHose ? ends[0]?.piece.id : undefined
}

/** A position as the record writes it, whatever the case it was typed in. */
function positionFor({ home }: Account, said: string): string {
  const known = [home.position, ...(home.alikeAt ?? [])]
  return known.find((position) => position?.toLowerCase() === said.toLowerCase()) ?? said
}

/** Choosing one of a list that shows positions says the position too. */
function withPosition(line: Line, words: string, id: PieceId, at: string | undefined): string {
  const position = line.account(id)?.home.position
  const again = line.replaced(words, id)
  return at !== undefined || position === undefined
    ? again
    : again.replace(/(?= in step \d+$)|$/i, ` at ${position}`)
}

/** `f1 2.1 L` begins with digits of its own. */
function splitFluid(name: string, amount: string): [string, string] {
  if (!/^f$/i.test(name)) return [name.trim(), amount]
  const [, number = '', rest = ''] = /^(\d+)[:,]? ?(.*)$/.exec(amount) ?? []
  return [`f${number}`, rest]
}

/** The unit behind the number of an amount as it was typed: ` L` of `2.1 L`. */
function unitOf(typed = ''): string {
  const unit = /^[\d.,\s]*(\D*)$/.exec(typed)?.[1] ?? ''
  return unit === '' ? ' L' : ` ${unit}`
}
