import type { State } from '../journal/state.ts'
import type { PieceId } from '../ledger/piece.ts'
import type { Place } from '../ledger/place.ts'
import type { DifferenceId, TighteningId } from '../plan/facts.ts'
import type { Leftover } from '../plan/leftovers.ts'
import {
  asideWords,
  doneWords,
  explainWords,
  faultWords,
  fillWords,
  homeWords,
  leftOutWords,
  neverThere,
  newWords,
  say,
  sendWords,
  shortageWords,
  toolboxWords,
  turnWords,
} from './cures.ts'
import { isAre, sentence, stepNumbers } from './grammar.ts'
import { groupParts, isOfAPiece } from './judging/group-words.ts'
import { judgingParts } from './judging/reason-words.ts'
import { heirOf, isGone, nextFastener } from './lookups.ts'
import {
  differenceName,
  fastenerName,
  faultName,
  fluidName,
  looseningName,
  markName,
  passName,
  stepName,
  tighteningName,
} from './names.ts'
import { countedPiece, homeName, isStray } from './pieces.ts'
import { containerPath, containerPlace, goneText, placeName, whereName } from './places.ts'
import { suspectsTold } from './suspects.ts'
import { outWhere } from './waiting/out-words.ts'
import { waitingParts } from './waiting/reason-words.ts'

/** The label code of a container, as it stands on the label. */
export type LabelCode = (container: number) => string

/** One leftover, taken apart for a table. `undo` is empty when its home can be reached. */
export interface LeftoverTold {
  what: string
  where: string
  undo: string
  cure: string
}

/** What is left over, where it is, what to undo to reach its home, and what to do about it. */
export function leftoverText(state: State, leftover: Leftover, code: LabelCode): LeftoverTold {
  return { undo: 'undo' in leftover ? undoText(leftover.undo) : '', ...parts(state, leftover, code) }
}

/** Several of one set of which the same is asked or was decided, as one; a single one by itself. */
export function leftoverSetText(
  state: State,
  [first, ...others]: readonly [Leftover, ...Leftover[]],
  code: LabelCode,
): LeftoverTold {
  if (others.length === 0 || !isOfAPiece(first)) return leftoverText(state, first, code)
  const set = [first, ...others.filter(isOfAPiece)]
  const { what, cure } = groupParts(state, set)
  const { home, at } = state.ledger.accounts.get(first.piece) ?? {}
  const on = at?.has('machine') ? 'are on the machine, at' : 'belong to'
  return {
    what,
    where: `${on} ${home?.at}, step ${stepOf(state, first.piece)}`,
    undo: undoText(first.undo),
    cure: sentence(cure),
  }
}

function undoText(undo: readonly number[]): string {
  return undo.map((no) => `step ${no}`).join(', then ')
}

function parts(state: State, leftover: Leftover, code: LabelCode): Omit<LeftoverTold, 'undo'> {
  switch (leftover.code) {
    case 'piece-off': {
      const { piece, count, place, step, undo } = leftover
      return {
        what: countedPiece(state, piece, count),
        where: `${place === 'out' ? outWhere(state, piece) : labelled(state, place, code)}: ${belongsTo(state, piece, count, step)}`,
        cure: atHome(undo, step, homeWords(state, piece, count, place)),
      }
    }
    case 'piece-short': {
      const { piece, count, step, undo } = leftover
      const should = state.ledger.accounts.get(piece)?.should ?? count
      const had = should > 1 ? `${should - count} of ${should} to be had` : 'none to be had'
      const never = neverThere(state, piece, count)
      const began = never > 0 ? `, ${never} missing when the job began` : ''
      const went = `${goneText(state, piece, ['spare', 'scrap', 'lost'])}${began}`
      return {
        what: countedPiece(state, piece, count),
        where: `short, ${had}${went}: ${belongsTo(state, piece, count, step)}`,
        cure: atHome(undo, step, shortageWords(state, piece, count)),
      }
    }
    case 'piece-lost': {
      const { piece, count } = leftover
      return {
        what: countedPiece(state, piece, count),
        where: `lost, and nobody has said that ${count === 1 ? 'it' : 'they'} may stay so`,
        cure: sentence(
          `look for it: ${sendWords(state, 'move', piece, 'lost', { count, to: 'bench' })} when found, or ${say(`accept lost ${piece} because ...`)}`,
        ),
      }
    }
    case 'piece-left-in': {
      const { piece, count } = leftover
      return {
        what: countedPiece(state, piece, count),
        where: `too many on the machine, at ${homeName(state, piece)}`,
        cure: sentence(`take it off again: ${say(`reopen ${stepOf(state, piece)} because ...`)}`),
      }
    }
    case 'old-lying':
      return oldLying(state, leftover.piece, leftover.count, leftover.place, code)
    case 'aid-in': {
      const { piece, count, place, step, undo } = leftover
      return {
        what: `${countedPiece(state, piece, count)} ${isAre(count)}`,
        where: `still in the machine, put in during ${stepName(state, step)}`,
        cure: atHome(undo, step, `${toolboxWords(state, piece, { place, count })} when out`),
      }
    }
    case 'tool-out': {
      const { piece, count, place } = leftover
      return {
        what: `${countedPiece(state, piece, count)} ${isAre(count)}`,
        where: `not back in the toolbox, ${labelled(state, place, code)}`,
        cure: sentence(`${toolboxWords(state, piece, { place, count })} when it is back`),
      }
    }
    case 'fluid-open': {
      const { step } = state.fluids.get(leftover.fluid) ?? {}
      return {
        what: fluidName(state, leftover.fluid),
        where: `not filled${ofStep(state, step)}`,
        cure: inStep(state, step, fillWords(state, leftover.fluid)),
      }
    }
    case 'mark-open': {
      const { step } = state.marks.get(leftover.mark) ?? {}
      return {
        what: markName(state, leftover.mark),
        where: `not confirmed${ofStep(state, step)}`,
        cure: inStep(state, step, `see it, then ${say(`confirm ${leftover.mark}`)}`),
      }
    }
    case 'tighten-open': {
      const { step } = state.tightenings.get(leftover.tightening) ?? {}
      return {
        what: tighteningName(state, leftover.tightening),
        where: `not tightened through${ofStep(state, step)}`,
        cure: inStep(state, step, tightenCure(state, leftover.tightening)),
      }
    }
    case 'eased-on': {
      const { loosening, step } = leftover
      return {
        what: looseningName(state, loosening),
        where: `eased and still on the machine, so they are loose${ofStep(state, step)}`,
        cure: sentence(
          `${say('off ...')} if they are off; if tight again as the manual has it, ${say(`override ${loosening} because ...`)}`,
        ),
      }
    }
    case 'fault-open': {
      const { piece, step } = state.faults.get(leftover.fault) ?? {}
      return {
        what: faultName(state, leftover.fault),
        where: `not put right${piece === undefined ? '' : `, at ${homeName(state, piece)}`}${ofStep(state, step)}`,
        cure: sentence(faultWords(state, leftover.fault)),
      }
    }
    case 'count-open':
      return {
        what: `count ${differenceName(state, leftover.difference)}`,
        where: `not explained${mayBe(state, leftover.difference)}`,
        cure: sentence(explainWords(state, leftover.difference)),
      }
    case 'left-out-open': {
      const { says = '', by } = state.leftOut.get(leftover.leftOut) ?? {}
      return {
        what: `${leftover.leftOut}, left out of a copy${by === undefined ? '' : `, by ${by}`}`,
        where: says,
        cure: sentence(leftOutWords(leftover.leftOut)),
      }
    }
    case 'step-open':
      return {
        what: stepName(state, leftover.step),
        where: openText(state, leftover.step),
        cure: stepCure(state, leftover.step),
      }
    case 'check-due':
    case 'piece-judged':
    case 'compare-due':
    case 'compare-wrong': {
      const { what, cure } = judgingParts(state, leftover)
      return { what, where: ofHome(state, leftover), cure: sentence(cure) }
    }
    default: {
      const { what, cure } = waitingParts(state, leftover)
      return { what, where: 'to be done before the first start', cure: sentence(cure) }
    }
  }
}

/** What was found too many in a bag, where the record knows what that held. */
function mayBe(state: State, id: DifferenceId): string {
  const difference = state.differences.get(id)
  const [first, ...others] = difference ? suspectsTold(state, difference) : []
  if (!first) return ''
  return `; it may be ${first.text}${others.length > 0 ? ', or another that lay in it' : ''}`
}

function ofHome(state: State, { piece }: { piece: PieceId }): string {
  const account = state.ledger.accounts.get(piece)
  const on = account?.at.has('machine') ? 'is on the machine, at' : 'belongs to'
  return `${on} ${homeName(state, piece)}, step ${stepOf(state, piece)}`
}

function tightenCure(state: State, id: TighteningId): string {
  const tightening = state.tightenings.get(id)
  const next = tightening && nextFastener(tightening)
  if (!tightening || !next) return turnWords(state, id)
  const then = `${passName(tightening, next.pass)}, ${fastenerName(next.fastener)}`
  return tightening.suspect
    ? `${say(`turned ${id} yes because ...`)} or ${say(`turned ${id} no because ...`)}: ${then}`
    : `${turnWords(state, id)}: ${then}`
}

const OPEN = { open: 'not begun', underway: 'under way', redo: 'reopened, to be done again', done: 'done' }

function openText(state: State, no: number): string {
  const step = state.steps.get(no)
  return step?.stripping ? 'still coming off' : OPEN[step?.built ?? 'open']
}

function labelled(state: State, place: Place, code: LabelCode): string {
  const inside = containerPlace(place)
  if (!inside) return whereName(state, place)
  const container = placeName(state, `c${inside.container}`)
  const outer = containerPath(state, inside.container).slice(container.length)
  return `${whereName(state, place)} (${code(inside.container)})${outer}`
}

function belongsTo(state: State, piece: PieceId, count: number, step: number): string {
  return `${count === 1 ? 'belongs' : 'belong'} to ${homeName(state, piece)}, step ${step}`
}

function oldLying(
  state: State,
  piece: PieceId,
  count: number,
  place: Place,
  code: LabelCode,
): Omit<LeftoverTold, 'undo'> {
  const account = state.ledger.accounts.get(piece)
  const where = labelled(state, place, code)
  const isUnknown = account !== undefined && isStray(account)
  const fresh = heirOf(state, piece)?.piece.id
  const { verdict, old } = (fresh && state.comparisons.get(fresh)) ?? {}
  if (fresh !== undefined && old === piece && verdict !== 'right') {
    const isToCompare = verdict === 'due' && !isGone(state, fresh)
    return {
      what: countedPiece(state, piece, count),
      where: `${where}: kept until ${isToCompare ? fresh : 'the right one'} is held beside ${count === 1 ? 'it' : 'them'}`,
      cure: sentence(
        isToCompare
          ? `lay them side by side, then ${say(`compare ${fresh}: alike`)}`
          : `${newWords(state, fresh, fresh)} when the right one is here`,
      ),
    }
  }
  return {
    what: countedPiece(state, piece, count),
    where: `${where}: ${isUnknown ? 'nobody has said where it belongs' : `nothing on the machine waits for ${count === 1 ? 'it' : 'them'}`}`,
    cure: sentence(
      `put ${count === 1 ? 'it' : 'them'} out of the way: ${asideWords(state, piece, place, count)}`,
    ),
  }
}

/** What was recorded as fitted and is not: where it belongs, what is to be opened to reach that, and how it goes home. */
export function offAgainText(
  state: State,
  { piece, count, place, step, undo }: Extract<Leftover, { code: 'piece-off' }>,
): string {
  return `${countedPiece(state, piece, count)} ${belongsTo(state, piece, count, step)}: ${atHome(undo, step, homeWords(state, piece, count, place))}`
}

/** Opens what is closed over a home first: one reopening takes all that was built on top with it. */
function atHome(undo: readonly number[], step: number, then: string): string {
  if (undo.length === 0) return sentence(then)
  return sentence(`${opensText(undo, step)}, then ${then}`)
}

/** What opens the home of a step again, and all the steps that are opened with it. */
export function opensText(undo: readonly number[], step: number): string {
  return `${say(`reopen ${step} because ...`)} opens ${stepNumbers(undo)}`
}

function stepOf(state: State, piece: PieceId): number {
  return state.ledger.accounts.get(piece)?.piece.step ?? 0
}

function ofStep(state: State, no: number | undefined): string {
  return no === undefined ? '' : `, ${stepName(state, no)}`
}

/** What is owed within a step is done while that step is under way. */
function inStep(state: State, no: number | undefined, then: string): string {
  const built = no === undefined ? undefined : state.steps.get(no)?.built
  if (built === 'underway' || built === undefined) return sentence(then)
  const first = built === 'done' ? say(`reopen ${no} because ...`) : say(`take ${no}`)
  return sentence(`${first}, then ${then}`)
}

function stepCure(state: State, no: number): string {
  const step = state.steps.get(no)
  if (step?.stripping) return sentence(`${say('end')} when it is off, ${say(`take ${no}`)} on the way back`)
  if (step?.built === 'underway') return sentence(`${doneWords(state, no)} when it is complete`)
  return sentence(say(`take ${no}`))
}
