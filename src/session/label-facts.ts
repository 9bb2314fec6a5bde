import type { Account } from '../ledger/account.ts'
import type { StepContents } from '../plan/contents.ts'
import type { Leftover } from '../plan/leftovers.ts'
import { entriesInForce } from './in-force.ts'
import type { Session } from './session.ts'
import { type PlanRow, planRows, type Todo, todoOf, trialBalance } from './views.ts'

/** What the tag on the machine has to say: all that stands before the first start. */
export interface Standing {
  leftovers: Leftover[]
}

/** What stands between the machine and its first start. */
export function standingOf(session: Session): Standing {
  return { leftovers: trialBalance(session) }
}

/** One step of the way back for paper: what belongs to it, not only what is still to be done. */
export interface PaperStep {
  row: PlanRow
  /** The steps that come before it. */
  needs: number[]
  contents: StepContents
  /** Its pieces in the order in which hands would fit them; those that are home already last. */
  pieces: Account[]
  todo: Todo[]
  /** What was written down when it was done; null where nothing was, or while it is not. */
  result: string | null
}

/** The whole way back, for paper. */
export interface PaperPlan {
  steps: PaperStep[]
  standing: Standing
}

/** Gathers what the printed plan says of each step, in an order in which they can be done. */
export function paperPlan(session: Session): PaperPlan {
  const gates = session.gates()
  const results = resultsOf(session)
  const steps = planRows(session).map((row): PaperStep => {
    const { no } = row.step
    const contents = gates.contentsOf(no)
    const todo = todoOf(session, no)
    const owed = todo.flatMap((each) => (each.kind === 'fit' ? [each.account] : []))
    return {
      row,
      needs: [...(gates.needs.get(no) ?? [])].sort((a, b) => a - b),
      contents,
      pieces: [...owed, ...contents.pieces.filter((account) => !owed.includes(account))],
      todo,
      result: row.step.built === 'done' ? (results.get(no) ?? null) : null,
    }
  })
  return { steps, standing: standingOf(session) }
}

/** The last result of each step among the entries in force. */
function resultsOf(session: Session): Map<number, string> {
  const results = new Map<number, string>()
  for (const entry of entriesInForce(session)) {
    if (entry.type !== 'build-done') continue
    if (entry.result === undefined) results.delete(entry.step)
    else results.set(entry.step, entry.result)
  }
  return results
}
