import { proposedSteps } from '../../session/proposed-steps.ts'
import type { Session } from '../../session/session.ts'

/** Steps of the way back that the record suggests, numbered for `accept`. */
export function proposalsAnswer(session: Session): { text: string[]; answer: unknown } {
  const found = proposedSteps(session)
  if (found.length === 0) return { text: ['Nothing more is proposed.'], answer: found }
  const text = found.map(({ kind, title, needs, before, due }, index) => {
    const links = [
      needs.length === 0 ? '' : `after ${needs.join(', ')}`,
      before.length === 0 ? '' : `before ${before.join(', ')}`,
      due === undefined ? '' : `due ${due}`,
    ]
    const where = links.filter(Boolean).join(', ')
    return `${String(index + 1).padStart(3)}  ${kind.padEnd(8)} ${title}${where === '' ? '' : ` (${where})`}`
  })
  return {
    text: [
      "Proposed for the way back. Common practice only: the machine's service manual decides.",
      ...text,
      'Take them with: accept 1,2 or: accept all',
    ],
    answer: found,
  }
}
