import type { PassQuestion } from '../trade/tightening-passes/question-passes.ts'

/** What is worth asking about the passes of a tightening, as the words of a sentence. */
export function passQuestionWords(question: PassQuestion): string {
  switch (question.code) {
    case 'torque-falls':
      return `${passOf(question)} is less than ${lowerThan(question)}, and nothing is backed off in between: is it so in the manual?`
    case 'check-below':
      return `${passOf(question)} is less than ${lowerThan(question)}: the wrench would click before a loose fastener shows`
    case 'angle-from-loose':
      return `${passOf(question)} begins from a loose fastener: an angle counts from a torque or from snug`
    case 'angle-over-a-turn':
      return `the angles up to pass ${question.pass + 1} add up to ${question.degrees}°, more than a full turn: is it so in the manual?`
    case 'ends-backed-off':
      return `nothing is tightened after pass ${question.pass + 1}, ${question.typed}: are passes missing?`
    default:
      return question satisfies never
  }
}

function passOf({ pass, typed }: { pass: number; typed: string }): string {
  return `pass ${pass + 1}, ${typed},`
}

function lowerThan({ before }: Extract<PassQuestion, { before: unknown }>): string {
  return `pass ${before.pass + 1}, ${before.typed}`
}
