import type { GateSwitch } from './gate-switch.ts'

/** The gates that can be switched off, from the hand to the last gate. */
export const SWITCHES = [
  // What is refused as it is said.
  {
    gate: 'own position only',
    file: 'ledger/laws.ts',
    find: 'own !== undefined && move.position !== own',
    becomes: 'false',
  },
  {
    gate: 'no more than lie there, to fit',
    file: 'journal/decide/fitting.ts',
    find: 'there < wanted',
    becomes: 'false',
  },
  {
    gate: 'own step only',
    file: 'journal/decide/build.ts',
    find: 'piece.step !== no',
    becomes: 'false',
  },
  {
    gate: 'used once, to fit',
    file: 'journal/decide/fitting.ts',
    find: 'state.used.has(id)',
    becomes: 'false',
  },
  {
    gate: 'replaced, to fit',
    file: 'journal/decide/fitting.ts',
    find: 'owed <= 0',
    becomes: 'false',
  },
  {
    gate: 'accepted, to fit',
    file: 'journal/decide/fitting.ts',
    within: 'if (reasons.length > 0) refuse',
    find: 'reasons.length > 0',
    becomes: 'false',
  },
  {
    gate: 'turned in order',
    file: 'journal/decide/tightening.ts',
    find: 'fastener !== undefined && fastener !== next.fastener',
    becomes: 'false',
  },
  {
    gate: 'angle in doubt, to turn',
    file: 'journal/decide/tightening.ts',
    within: 'if (suspect)',
    find: 'suspect',
    becomes: 'false',
  },
  {
    gate: 'home, to turn a bolt',
    file: 'journal/decide/tightening.ts',
    find: 'notHome(state, account)',
    becomes: '[]',
  },
  {
    gate: 'home, to confirm a mark',
    file: 'journal/decide/build.ts',
    find: 'notHome(state, knownPiece(state, mark.piece))',
    becomes: '[]',
  },
  {
    gate: 'check digits of a label',
    file: 'label/code.ts',
    find: 'digits.slice(7) === checkDigits(body)',
    becomes: 'true',
  },
  {
    gate: 'label of this job',
    file: 'session/scan.ts',
    find: 'reading.job === state.job.no',
    becomes: 'true',
  },
  {
    gate: 'scanned for the step in hand',
    file: 'session/scan.ts',
    find: 'step !== inHand',
    becomes: 'false',
  },
  {
    gate: 'scanned for a step that could start',
    file: 'session/scan.ts',
    find: 'takesPieces(session, candidate)',
    becomes: 'true',
  },
  {
    gate: 'a torque pass starts again',
    file: 'plan/tightening.ts',
    within: 'else if (next.through > 0 &&',
    find: 'next.through > 0',
    becomes: 'false',
  },
  {
    gate: 'an angle is in doubt',
    file: 'plan/tightening.ts',
    find: 'next.through > 0 || abrupt',
    becomes: 'false',
  },
  // What keeps a step from starting.
  {
    gate: 'steps before, to start',
    file: 'plan/gates.ts',
    within: ', this.before(no, step))',
    find: 'this.before(no, step)',
    becomes: '[]',
  },
  {
    gate: 'pieces at hand, to start',
    file: 'plan/gates.ts',
    within: '...this.pieceReasons(no)',
    find: 'this.pieceReasons(no)',
    becomes: '[]',
  },
  {
    gate: 'counts settled, to start',
    file: 'plan/gates.ts',
    within: '...this.countReasons(contents)',
    find: 'this.countReasons(contents)',
    becomes: '[]',
  },
  {
    gate: 'last look, before it is hidden',
    file: 'plan/gates.ts',
    find: '!step?.hides || step.looked',
    becomes: 'true',
  },
  {
    gate: 'second look, before the next step',
    file: 'plan/gates.ts',
    find: 'secondReasons(this.facts, step, this.contentsOf(step))',
    becomes: '[]',
  },
  {
    gate: 'steps before, to take the last look',
    file: 'journal/decide/build.ts',
    find: 'gates.stepsBefore(no)',
    becomes: '[]',
  },
  // What keeps a step from being closed.
  {
    gate: 'home, to close a step',
    file: 'plan/gates.ts',
    within: 'const reasons: Reason[] = this.notHome(contents)',
    find: 'this.notHome(contents)',
    becomes: '[]',
  },
  {
    gate: 'accepted, to close a step',
    file: 'plan/gates.ts',
    within: 'for (const { piece } of contents.pieces) reasons.push(...this.judging(piece.id))',
    find: 'this.judging(piece.id)',
    becomes: '[]',
  },
  {
    gate: 'put on, to close a step',
    file: 'plan/gates.ts',
    find: 'consumableReasons(this.facts, contents)',
    becomes: '[]',
  },
  {
    gate: 'marks, to close a step',
    file: 'plan/gates.ts',
    find: '!mark.confirmed && !this.facts.overrides.has(mark.id)',
    becomes: 'false',
  },
  {
    gate: 'tightening, to close a step',
    file: 'plan/gates.ts',
    find: 'nextTurn(tightening) && !this.facts.overrides.has(tightening.id)',
    becomes: 'false',
  },
  {
    gate: 'aids out, to close a step',
    file: 'plan/gates.ts',
    within: 'reasons.push(...this.aidsIn(contents))',
    find: 'this.aidsIn(contents)',
    becomes: '[]',
  },
  {
    gate: 'fluids, to close a step',
    file: 'plan/gates.ts',
    find: 'fluid.filledLitres === null && !this.facts.overrides.has(fluid.id)',
    becomes: 'false',
  },
  {
    gate: 'counts settled, to close the last round',
    file: 'plan/gates.ts',
    within: '...this.openCounts()',
    find: 'this.openCounts()',
    becomes: '[]',
  },
  // The last look itself.
  {
    gate: 'home, at the last look',
    file: 'plan/gates.ts',
    within: '...this.aidsIn(contents), ...this.notHome(contents)',
    find: 'this.notHome(contents)',
    becomes: '[]',
  },
  {
    gate: 'aids out, at the last look',
    file: 'plan/gates.ts',
    within: '...this.aidsIn(contents), ...',
    find: 'this.aidsIn(contents)',
    becomes: '[]',
  },
  {
    gate: 'aids out, of what hides them itself',
    file: 'plan/gates.ts',
    find: 'this.aidsIn(this.contentsOf(no))',
    becomes: '[]',
  },
  // The last gate.
  {
    gate: 'home, at the last gate',
    file: 'plan/leftovers.ts',
    within: 'of lies)',
    find: 'lies',
    becomes: '[]',
  },
  {
    gate: 'aids and tools, at the last gate',
    file: 'plan/leftovers.ts',
    find: 'outOfToolbox(facts, account)',
    becomes: '[]',
  },
  {
    gate: 'accepted, at the last gate',
    file: 'plan/leftovers.ts',
    find: 'gates.judging(piece.id)',
    becomes: '[]',
  },
  {
    gate: 'put on, at the last gate',
    file: 'plan/leftovers.ts',
    find: 'consumableReasons(facts, gates.contentsOf(no))',
    becomes: '[]',
  },
  {
    gate: 'marks, at the last gate',
    file: 'plan/leftovers.ts',
    find: '!mark.confirmed && !overrides.has(mark.id)',
    becomes: 'false',
  },
  {
    gate: 'tightening, at the last gate',
    file: 'plan/leftovers.ts',
    find: 'nextTurn(tightening) && !overrides.has(tightening.id)',
    becomes: 'false',
  },
  {
    gate: 'fluids, at the last gate',
    file: 'plan/leftovers.ts',
    find: 'fluid.filledLitres === null && !overrides.has(fluid.id)',
    becomes: 'false',
  },
  {
    gate: 'counts settled, at the last gate',
    file: 'plan/leftovers.ts',
    find: 'difference.settled === null',
    becomes: 'false',
  },
  {
    gate: 'second look, at the last gate',
    file: 'plan/leftovers.ts',
    find: 'secondReasons(facts, no, gates.contentsOf(no))',
    becomes: '[]',
  },
  {
    gate: 'steps, at the last gate',
    file: 'plan/leftovers.ts',
    find: '!gates.isDone(step.no)',
    becomes: 'false',
  },
  // What is proposed.
  {
    gate: 'the last round is proposed',
    file: 'plan/proposals.ts',
    within: 'if (wasPutAway(facts)',
    find: 'wasPutAway(facts)',
    becomes: 'false',
  },
  // What is only asked.
  {
    gate: 'asked about passes that were never set',
    file: 'session/heeds.ts',
    find: 'untightened(state, entry.step)',
    becomes: '[]',
  },
] as const satisfies readonly GateSwitch[]

export type Gate = (typeof SWITCHES)[number]['gate']
