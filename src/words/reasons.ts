import type { State } from '../journal/state.ts'
import type { PieceId } from '../ledger/piece.ts'
import type { Place } from '../ledger/place.ts'
import type { Built, TighteningId } from '../plan/facts.ts'
import type { Reason } from '../plan/reasons.ts'
import {
  doneWords,
  explainWords,
  faultWords,
  fillWords,
  homeWords,
  neverThere,
  say,
  shortageWords,
  toolboxWords,
  turnWords,
  usedWords,
} from './cures.ts'
import { isAre, sentence } from './grammar.ts'
import { judgingWords } from './judging/reason-words.ts'
import { nextFastener } from './lookups.ts'
import {
  differenceName,
  fastenerName,
  faultName,
  fluidName,
  markName,
  passName,
  stepName,
  tighteningName,
} from './names.ts'
import { passDone } from './pass-work.ts'
import { agree, countedPiece, pieceName } from './pieces.ts'
import { goneText, whereName } from './places.ts'
import { outWhere } from './waiting/out-words.ts'
import { waitingWords } from './waiting/reason-words.ts'

/** One reason why a step may not start or finish: a line with what lifts it. */
export function reasonText(state: State, reason: Reason): string {
  return sentence(reasonWords(state, reason))
}

function reasonWords(state: State, reason: Reason): string {
  switch (reason.code) {
    case 'still-stripping':
      return `${stepName(state, reason.step)}, is still coming off: ${say('end')} when it is off`
    case 'step-before':
      return stepBefore(state, reason.step, reason.built)
    case 'not-cleared':
      return state.cleared
        ? `it comes after the first start: ${say('started')} when the machine has run`
        : `it comes after the first start: ${say('clear')}, then ${say('started')}`
    case 'piece-short':
      return `${shortText(state, reason.piece, reason.should, reason.have)}. ${shortageWords(state, reason.piece, reason.should - reason.have)}`
    case 'piece-away':
      return awayText(state, reason.piece, reason.count, reason.place)
    case 'piece-used':
      return usedText(state, reason.piece)
    case 'left-on-old':
      return `${countedPiece(state, reason.piece, reason.count)} ${isAre(reason.count)} still ${whereName(state, reason.on)}, the old one: ${say(`move over from ${reason.on} to ${reason.to}`)}, or ${say(`new ${reason.piece} instead`)}`
    case 'fault-open':
      return `${faultName(state, reason.fault)}: ${faultWords(state, reason.fault)}`
    case 'count-open':
      return `count not explained: ${differenceName(state, reason.difference)}. ${sentence(explainWords(state, reason.difference))}`
    case 'aid-in':
      return `${countedPiece(state, reason.piece, reason.count)} ${isAre(reason.count)} still in the machine: ${toolboxWords(state, reason.piece, reason)} when out`
    case 'not-home':
      return `${countedPiece(state, reason.piece, reason.count)} not home, ${whereName(state, reason.place)}: ${homeWords(state, reason.piece, reason.count, reason.place)}`
    case 'look-due':
      return `last look before ${stepName(state, reason.step)}: see that all beneath is in place, counted, clean, nothing left inside, then ${say(`look ${reason.step}`)}`
    case 'mark-open':
      return `${markName(state, reason.mark)} not confirmed: see it, then ${say(`confirm ${reason.mark}`)}`
    case 'tighten-open':
      return tightenText(state, reason.tightening)
    case 'fluid-open':
      return `${fluidName(state, reason.fluid)} not filled: ${fillWords(state, reason.fluid)}`
    case 'turns-open':
      return `turned over by hand ${reason.turned} of ${reason.turns} full turns: ${say(`turned over ${reason.step}`)} after each, the way the machine runs, never back`
    case 'check-open':
      return `${stepName(state, reason.step)}, is not done: ${doneWords(state, reason.step)}, or ${say(`fail ${reason.step}: ...`)} with what was found`
    case 'check-due':
    case 'piece-judged':
    case 'compare-due':
    case 'compare-wrong':
      return judgingWords(state, reason)
    default:
      return waitingWords(state, reason)
  }
}

/** A shortage with its arithmetic and where the missing ones went: `8 belong there, 6 to be had, 2 in scrap`. */
function shortText(state: State, piece: PieceId, should: number, have: number): string {
  const never = neverThere(state, piece, should - have)
  const began = never > 0 ? `, ${never} missing when the job began` : ''
  const went = `${goneText(state, piece, ['scrap', 'lost'])}${began}`
  const name = pieceName(state, piece)
  if (should === 1) return `${name} is missing${went}`
  return `${name}: ${should} belong there, ${have} to be had${went}: ${should - have} short`
}

/** Where a tightening stands and what is turned next. */
function tightenText(state: State, id: TighteningId): string {
  const tightening = state.tightenings.get(id)
  const next = tightening && nextFastener(tightening)
  if (!tightening || !next) return `${tighteningName(state, id)}: every pass is through`
  const { suspect, order, done } = tightening
  const where = `${tighteningName(state, id)}: ${passName(tightening, next.pass)}`
  if (suspect) {
    return `${where}: ${fastenerName(suspect.fastener)} may be turned already: ${say(`turned ${id} yes because ...`)} or ${say(`turned ${id} no because ...`)}`
  }
  const through = done[next.pass]?.size ?? 0
  const pass = tightening.passes[next.pass]
  return `${where}: ${through} of ${order.length} ${pass ? passDone(pass) : 'turned'}, next ${fastenerName(next.fastener)}: ${turnWords(state, id)}`
}

function stepBefore(state: State, no: number, built: Built): string {
  const name = stepName(state, no)
  if (built === 'underway')
    return `${name}, comes before and is under way: ${doneWords(state, no)} when complete`
  if (built === 'redo') return `${name}, comes before and was reopened: ${say(`take ${no}`)}`
  return state.steps.get(no)?.stripping
    ? `${name}, comes before and is still coming off: ${say('end')} when it is off`
    : `${name}, comes before and is not begun: ${say(`take ${no}`)}`
}

function awayText(state: State, piece: PieceId, count: number, place: Place): string {
  const where = place === 'out' ? outWhere(state, piece) : whereName(state, place)
  return `${countedPiece(state, piece, count)} ${isAre(count)} ${where}: ${homeWords(state, piece, count, place)}`
}

function usedText(state: State, piece: PieceId): string {
  return `${pieceName(state, piece)} ${agree(state, piece, 'is single-use and used, a new one goes', 'are single-use and used, new ones go')} in: ${usedWords(state, piece)}`
}
