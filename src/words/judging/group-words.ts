import type { State } from '../../journal/state.ts'
import type { JudgingReason } from '../../plan/judging/judging.ts'
import { newWords, say } from '../cures.ts'
import { sentence } from '../grammar.ts'
import { checkWords } from './names.ts'
import { judgedText, measureFirst, offFirst } from './reason-words.ts'
import { checkNumbers, setNames, typedChecks } from './set-names.ts'

type OfAPiece = Extract<JudgingReason, { code: 'check-due' | 'piece-judged' }>

/**
 * Reasons or leftovers in the order given, those together that are told in one line: the same check of each of a set, or the
 * same verdict on each. `apart`: what else has to be alike.
 */
export function inSets<Thing extends { code: string }>(
  state: State,
  things: readonly Thing[],
  apart: (thing: Thing) => string = () => '',
): Thing[][] {
  const sets = new Map<string, Thing[]>()
  for (const [index, thing] of things.entries()) {
    const key = isOfAPiece(thing) ? `${setKey(state, thing)}\n${apart(thing)}` : `${index}`
    sets.set(key, [...(sets.get(key) ?? []), thing])
  }
  return [...sets.values()]
}

/** Whether it is a check, or a verdict, that others of a set may have alike. */
export function isOfAPiece<Thing extends { code: string }>(thing: Thing): thing is Thing & OfAPiece {
  return thing.code === 'check-due' || thing.code === 'piece-judged'
}

function setKey(state: State, reason: OfAPiece): string {
  const { piece, home } = state.ledger.accounts.get(reason.piece) ?? {}
  if (!piece || home?.position === undefined) return JSON.stringify(reason)
  return [piece.name, home.at, piece.step, ...whatOf(state, reason)].join('\n')
}

/** Reasons of one set, all alike: `cam caps I1, I2 not checked (k1 and k2, look for score): ...`. */
export function groupText(state: State, reasons: readonly OfAPiece[]): string {
  const { what, cure } = groupParts(state, reasons)
  return sentence(`${what}: ${cure}`)
}

/** The same, taken apart for a table. */
export function groupParts(state: State, reasons: readonly OfAPiece[]): { what: string; cure: string } {
  const [first] = reasons
  if (!first) return { what: '', cure: '' }
  const pieces = reasons.map(({ piece }) => piece)
  const names = setNames(state, pieces)
  if (first.code === 'piece-judged') {
    const cure =
      first.verdict === 'replace'
        ? `${newWords(state, first.piece, first.piece)} and so on, when the new ones are here`
        : `${say(`judge ${first.piece} fit again because ...`)} and so on, when that is done`
    return { what: `${names} are ${judgedText(state, first)}`, cure: `${offFirst(state, pieces)}${cure}` }
  }
  const check = state.checks.get(first.check)
  const ids = reasons.flatMap((reason) => (reason.code === 'check-due' ? [reason.check] : []))
  const asks = check ? `, ${checkWords(check)}` : ''
  return {
    what: `${names} not checked (${checkNumbers(ids)}${asks})`,
    cure: `${measureFirst(state, first, ' and so on')}${say(`ok ${typedChecks(ids)}`)} if good, else ${say(`judge ${first.piece} replace because ...`)} for the one that is not`,
  }
}

function whatOf(state: State, reason: OfAPiece): string[] {
  if (reason.code === 'check-due') {
    const check = state.checks.get(reason.check)
    return ['check', check ? checkWords(check) : reason.check]
  }
  const { reason: why = '', along = '' } = state.verdicts.get(reason.piece) ?? {}
  return ['judged', reason.verdict, why, along]
}
