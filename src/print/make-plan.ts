import { planPages } from '../label/layout/plan-pages.ts'
import { paperPlan } from '../session/label-facts.ts'
import { codeOf } from '../session/scan.ts'
import type { Session } from '../session/session.ts'
import { planText } from '../words/label-text/plan-text.ts'
import type { Choice } from './choose-print.ts'
import { typeface } from './fonts.ts'
import { jobPart, type Made, madePages, type NotMade, notMade } from './made.ts'

/** The way back on paper, on as many sheets as it takes. */
export function makePlan(session: Session, { stock, dpi }: Choice, date: string): Made | NotMade {
  const { state } = session
  const plan = planText(state, paperPlan(session), date, (no) => codeOf(state, no))
  const laid = planPages(plan, stock.page, { typeface: typeface(), dpi })
  if (!laid.ok) return notMade(laid.refusal)
  return madePages(laid.pages, { title: 'plan of the way back', name: `${jobPart(state.job.no)}-plan` })
}
