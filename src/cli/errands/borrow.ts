import type { Borrowing } from '../../lines/errand.ts'
import { type Borrowed, borrow } from '../../session/borrow.ts'
import type { ErrandOutcome } from '../../session/errands.ts'
import type { Session } from '../../session/session.ts'
import { say } from '../../words/cures.ts'
import { entryText } from '../../words/entries.ts'
import { sentence } from '../../words/grammar.ts'
import { liesText, pieceName } from '../../words/pieces.ts'
import { refusalText } from '../../words/refusals.ts'
import { type Told, told } from '../../words/told.ts'
import { label } from '../answers/labels.ts'
import type { Open } from '../desk.ts'
import { EXIT } from '../exit-codes.ts'
import type { Failure } from '../result.ts'
import { troubleOf } from '../trouble.ts'

/** Opens the job of that number beside the one in hand. */
export type OpenOther = (no: number) => Open | Failure

/** Takes pieces of another job for this one, and tells what both records say. */
export function runBorrow(asked: Borrowing, taker: Session, openOther: OpenOther): ErrandOutcome {
  if (asked.job === taker.state.job.no) return notOf('borrow-itself', itself(taker))
  const other = openOther(asked.job)
  if (!other.ok) {
    const exit = other.exit === EXIT.notRecorded ? 'not-recorded' : 'refused'
    return { ok: false, exit, code: other.code, told: other.told, entries: [] }
  }
  const lender = other.session
  return outcome(borrow(lender, taker, asked), { asked, lender, taker })
}

type StillLent = Extract<Borrowed, { kind: 'still-lent' }>

interface About {
  asked: Borrowing
  lender: Session
  taker: Session
}

function outcome(borrowed: Borrowed, { asked, lender, taker }: About): ErrandOutcome {
  switch (borrowed.kind) {
    case 'borrowed': {
      const { lent, taken } = borrowed
      return {
        ok: true,
        entries: [taken],
        text: [
          `${taken.n}  ${entryText(taker.state, taken)}`,
          `    in ${jobName(lender)}: ${lent.n}  ${entryText(lender.state, lent)}`,
        ],
        answer: { lent },
      }
    }
    case 'itself':
      return notOf('borrow-itself', itself(taker))
    case 'which':
      return notOf(
        'which-piece',
        told(
          `in ${jobName(lender)}, ${borrowed.pieces.length} pieces answer to '${asked.words}'`,
          `say which, by its id there: ${say(again(asked, borrowed.pieces[0] ?? 'PIECE'))}`,
          borrowed.pieces.map((id) => pieceLine(lender, id)),
        ),
      )
    case 'no-such-piece':
      return notOf(
        'no-such-piece',
        told(
          `in ${jobName(lender)}, no piece is called '${asked.words}'`,
          borrowed.near.length > 0 ? 'name one of these, or another' : 'look in that job what it is called',
          borrowed.near.map((id) => pieceLine(lender, id)),
        ),
      )
    case 'refused': {
      const session = borrowed.in === 'lender' ? lender : taker
      const { refusal } = borrowed
      const code = refusal.code === 'law' ? refusal.violation.law : refusal.code
      const words = refusalText(session.stateNow(), refusal, label(session.state))
      return notOf(code, borrowed.in === 'lender' ? ofOther(lender, words) : words)
    }
    case 'not-recorded': {
      const session = borrowed.in === 'lender' ? lender : taker
      const { code, told: words } = troubleOf(borrowed.error, session.store.path)
      return { ok: false, exit: 'not-recorded', code, told: words, entries: [] }
    }
    case 'still-lent':
      return {
        ok: false,
        exit: 'not-recorded',
        code: 'still-lent',
        told: stillLent(lender, taker, borrowed.outing),
        entries: [],
      }
    default:
      return borrowed satisfies never
  }
}

function notOf(code: string, words: Told): ErrandOutcome {
  return { ok: false, exit: 'refused', code, told: words, entries: [] }
}

function itself(session: Session): Told {
  return told(
    `${jobName(session)}, is this job itself`,
    'say the number of another: "putback jobs" lists them',
  )
}

/** A refusal of the other job: what it says to type is for that job. */
function ofOther(lender: Session, { what, lines, cure }: Told): Told {
  return { what: sentence(`in ${jobName(lender)}: ${what}`), lines, cure: sentence(`there: ${cure}`) }
}

function stillLent(lender: Session, taker: Session, outing: StillLent['outing']): Told {
  return told(
    `${jobName(taker)} did not take it, and ${jobName(lender)} has it as lent still (${outing})`,
    `in job ${lender.state.job.no}: ${say(`came back ${outing}`)}`,
  )
}

function pieceLine({ state }: Session, id: Parameters<typeof pieceName>[1]): string {
  return `${id}  ${pieceName(state, id)}: ${liesText(state, id)}`
}

function again({ count, job, piece, instead }: Borrowing, words: string): string {
  return `borrow ${count} ${words} from job ${job} for ${piece}${instead ? ' instead' : ''}`
}

function jobName({ state }: Session): string {
  return `job ${state.job.no}, ${state.job.name}`
}
