import { proposedChecks, proposedSteps } from '../../session/proposed-steps.ts'
import type { Session } from '../../session/session.ts'
import { proposedName, proposedWords } from '../../words/judging/proposal-words.ts'

/** Steps of the way back, and checks of what goes back, that the record suggests, numbered for `accept`. */
export function proposalsAnswer(session: Session): { text: string[]; answer: unknown } {
  const found = proposedSteps(session)
  const checks = proposedChecks(session)
  const answer = [...found, ...checks]
  if (answer.length === 0) return { text: ['Nothing more is proposed.'], answer }
  const steps = found.map(({ kind, title, needs, before, due }, index) => {
    const links = [
      needs.length === 0 ? '' : `after ${needs.join(', ')}`,
      before.length === 0 ? '' : `before ${before.join(', ')}`,
      due === undefined ? '' : `due ${due}`,
    ]
    const where = links.filter(Boolean).join(', ')
    return `${String(index + 1).padStart(3)}  ${kind.padEnd(8)} ${title}${where === '' ? '' : ` (${where})`}`
  })
  const toCheck = checks.map((check, index) => {
    const number = String(found.length + index + 1).padStart(3)
    return `${number}  ${proposedName(session.state, check)}: ${proposedWords(check)}`
  })
  return {
    text: [
      ...(steps.length === 0
        ? []
        : ["Proposed for the way back. Common practice only: the machine's service manual decides."]),
      ...steps,
      ...(toCheck.length === 0
        ? []
        : ['Usually checked before it goes back. Limits are in the service manual, never here.']),
      ...toCheck,
      toCheck.length === 0
        ? 'Take them with: accept 1,2 or: accept all'
        : 'Take them with: accept 1,2 or: accept all (all steps) or: accept checks (all checks)',
    ],
    answer,
  }
}
