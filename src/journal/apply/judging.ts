import { accountOf } from '../../ledger/ledger.ts'
import type { Piece, PieceId } from '../../ledger/piece.ts'
import { openChecks } from '../../plan/judging/judging.ts'
import type { CheckFacts, VerdictFacts } from '../../plan/judging/judging-facts.ts'
import type { State } from '../state.ts'
import type { AppliersOf } from './appliers.ts'
import { endComparison, noteComparison } from './comparing.ts'
import { carry, enterPieces, newIn, stepOf } from './moves.ts'

type JudgingEntry =
  | 'checks-set'
  | 'checks-done'
  | 'check-dropped'
  | 'judged'
  | 'bound'
  | 'compared'
  | 'trigger-set'
  | 'trigger-dropped'
  | 'found-out'
  | 'carrying'

/** What follows from what was asked of pieces and decided about them. */
export const judgingAppliers: AppliersOf<JudgingEntry> = {
  'checks-set': (state, { checks }) => {
    for (const check of checks) setCheck(state, check)
  },
  'checks-done': (state, { n, checks, says, measure }) => {
    refuseUnknown(state, { measure })
    for (const id of checks) {
      const check = checkOf(state, id)
      check.done = { n, says, measure }
      // Cleaned and looked at again: that was what the verdict asked for.
      const isLast = openChecks(state, check.piece).length === 0
      if (isLast && state.verdicts.get(check.piece)?.verdict === 'clean') state.verdicts.delete(check.piece)
    }
  },
  'check-dropped': (state, { check }) => {
    checkOf(state, check)
    state.checks.delete(check)
  },
  judged: (state, { n, of: pieces, along, verdict, reason, checks, measure, picture, count, moves }) => {
    refuseUnknown(state, { measure, picture })
    for (const id of checks) checkOf(state, id).done = { n, says: reason, measure }
    carry(state, moves)
    // Some of a common lot left it; nothing is said about the rest.
    if (count !== undefined) return
    const facts: VerdictFacts = { verdict, reason, n, measure, picture }
    for (const piece of pieces) setVerdict(state, piece, facts)
    for (const piece of along) setVerdict(state, piece, { ...facts, along: pieces[0] })
  },
  bound: (state, { of: pieces, reason }) => {
    for (const piece of pieces) accountOf(state.ledger, piece)
    state.bonds.push({ pieces: [...pieces], reason })
  },
  compared: noteComparison,
  'trigger-set': (state, { trigger }) => {
    newIn(state.triggers, trigger.id)
    for (const { piece } of trigger.items) accountOf(state.ledger, piece)
    state.triggers.set(trigger.id, { ...trigger, items: [...trigger.items] })
  },
  'trigger-dropped': (state, { trigger }) => {
    if (!state.triggers.delete(trigger)) throw new Error(`no list ${trigger}`)
  },
  'found-out': (state, { n, finding, checks, condemned }) => {
    newIn(state.findings, finding.id)
    if (finding.piece !== undefined) accountOf(state.ledger, finding.piece)
    if (finding.step !== null) stepOf(state, finding.step)
    for (const id of finding.triggers) if (!state.triggers.has(id)) throw new Error(`no list ${id}`)
    state.findings.set(finding.id, { ...finding })
    for (const check of checks) setCheck(state, check)
    for (const piece of condemned) setVerdict(state, piece, { verdict: 'replace', reason: finding.text, n })
  },
  carrying: (state, { pieces, openings, moves }) => {
    enterPieces(state, pieces, openings)
    carry(state, moves)
    for (const { id, singleUse } of pieces) if (singleUse) state.used.add(id)
  },
}

/** What was to be measured is measured anew with the piece that takes the home; other checks leave with the old one. */
export function succeedChecks(state: State, { id, replaces }: Piece): void {
  for (const check of [...state.checks.values()]) {
    if (check.piece !== replaces) continue
    if (check.kind === 'measure') {
      check.piece = id
      check.done = null
      check.askedAfter = state.dealt.measure
    } else if (check.done === null) state.checks.delete(check.id)
  }
  state.bonds = state.bonds.map(({ pieces, reason }) => ({
    pieces: pieces.map((piece) => (piece === replaces ? id : piece)),
    reason,
  }))
}

function setCheck(state: State, check: Omit<CheckFacts, 'askedAfter' | 'done'>): void {
  newIn(state.checks, check.id)
  accountOf(state.ledger, check.piece)
  state.checks.set(check.id, {
    ...check,
    what: [...check.what],
    askedAfter: state.dealt.measure,
    done: null,
  })
}

function setVerdict(state: State, piece: PieceId, facts: VerdictFacts): void {
  accountOf(state.ledger, piece)
  state.verdicts.set(piece, facts)
  // A decision with its reason stands for the comparison as well.
  if (facts.verdict === 'fit-again') endComparison(state, piece, 'right')
}

/** Throws where a measurement or a picture that something rests on was never taken. */
function refuseUnknown(
  { measures, pictures }: State,
  { measure, picture }: Pick<VerdictFacts, 'measure' | 'picture'>,
): void {
  if (measure !== undefined && !measures.has(measure)) throw new Error(`no measurement ${measure}`)
  if (picture !== undefined && !pictures.has(picture)) throw new Error(`no picture ${picture}`)
}

function checkOf(state: State, id: CheckFacts['id']): CheckFacts {
  const check = state.checks.get(id)
  if (!check) throw new Error(`no check ${id}`)
  return check
}
