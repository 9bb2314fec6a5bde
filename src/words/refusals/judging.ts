import type { State } from '../../journal/state.ts'
import type { PieceId } from '../../ledger/piece.ts'
import { newWords, say } from '../cures.ts'
import { isAre, joined } from '../grammar.ts'
import { checkName, VERDICTS } from '../judging/names.ts'
import { judgingWords } from '../judging/reason-words.ts'
import { verdictLine } from '../measurements/measure-text.ts'
import { agree, pieceName } from '../pieces.ts'
import { told } from '../told.ts'
import type { Tellers } from './tellers.ts'

/** Refusals about checks, verdicts and comparisons. */
export const judgingRefusals: Tellers<
  | 'nothing-to-compare'
  | 'check-done'
  | 'check-unmeasured'
  | 'check-not-in'
  | 'judge-part'
  | 'nothing-to-bind'
  | 'not-accepted'
> = {
  'nothing-to-compare': (state, { piece }) =>
    told(
      `${pieceName(state, piece)} has no old one beside it to compare`,
      state.verdicts.get(piece)?.verdict === 'replace'
        ? `first the new one: ${newWords(state, piece, piece)} when here`
        : `${say(`judge ${piece} fit again because ...`)} says that it is right`,
    ),
  'check-done': (state, { check }) =>
    told(
      `check ${checkName(state, check)}, is answered already`,
      `${say('checks')} shows what is still to be checked`,
    ),
  'check-unmeasured': (state, { check, missing }) => {
    const piece = pieceOf(state, check)
    const what = missing.filter((each) => each !== 'it')
    const name = pieceName(state, piece)
    return told(
      what.length === 0
        ? `${name} was not measured since ${check} was asked`
        : `${joined(what)} of ${name}: not measured since ${check} was asked`,
      `${say(`measure ${what[0] ?? 'size'} of ${piece}: ...`)} with what was read, then ${say(`ok ${check}`)}`,
    )
  },
  'check-not-in': (state, { check, verdict, readings }) => {
    const piece = pieceOf(state, check)
    const lines = readings
      .filter(({ judged }) => judged.verdict === 'out' || judged.verdict === 'too-close')
      .map(
        ({ measure, judged }) => `${measure.id} ${measure.name}: ${verdictLine(measure.measurement, judged)}`,
      )
    return verdict === 'out'
      ? told(
          `${pieceName(state, piece)} is out of its limits, so ${check} is not passed by a word`,
          `${say(`judge ${piece} replace because ...`)} or ${say(`judge ${piece} machine because ...`)}; if it may stay, ${say(`judge ${piece} fit again because ...`)}`,
          lines,
        )
      : told(
          `${pieceName(state, piece)} is too close to its limit to call, so ${check} asks for your reason`,
          `measure again with a finer instrument, or ${say(`ok ${check}: ...`)} with why it is good`,
          lines,
        )
  },
  'judge-part': (state, { piece, count, verdict }) => {
    const should = state.ledger.accounts.get(piece)?.should ?? 1
    return told(
      should > 1
        ? `${count} of ${should} ${pieceName(state, piece)} cannot be told from the rest, so no verdict but to replace them is for some alone: ${VERDICTS[verdict]}`
        : `${pieceName(state, piece)} is one piece, not ${count}`,
      `for all of it ${say(`judge ${piece} ${verdict === 'fit-again' ? 'fit again' : verdict} because ...`)}`,
    )
  },
  'nothing-to-bind': (state, { piece }) =>
    told(
      `${pieceName(state, piece)} alone belongs together with nothing`,
      `name what belongs with it as well: ${say(`together ${piece}, PIECE because ...`)}`,
    ),
  'not-accepted': (state, { piece, reasons }) =>
    told(
      `${pieceName(state, piece)} ${agree(state, piece, 'is', 'are')} not accepted, so ${agree(state, piece, 'it does', 'they do')} not go back yet`,
      `${isAre(reasons.length) === 'is' ? 'lift that reason' : 'lift these reasons'} first, or leave ${agree(state, piece, 'it', 'them')} off the machine`,
      reasons.map((reason) => judgingWords(state, reason)),
    ),
}

function pieceOf(state: State, check: `k${number}`): PieceId {
  return state.checks.get(check)?.piece ?? 'p0'
}
