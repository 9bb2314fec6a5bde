import { notUnderstood, type Reading, understood } from '../reading.ts'
import { partsOf } from './parts-of.ts'
import { MOST_PASSES, type PassesFault } from './read-passes.ts'
import { readPass, type TighteningPass } from './tightening-pass.ts'

const example = '1/4 turn, 1/2 turn, fully'

/** Reads the passes by which fasteners are loosened, all of them in each: `1/4 turn, 1/2 turn, fully`. */
export function readLoosening(text: string): Reading<TighteningPass[], PassesFault> {
  const parts = partsOf(text)
  if (parts.length === 0) return notUnderstood('empty', '', example)
  if (parts.length > MOST_PASSES)
    return notUnderstood('too-many', text.trim(), parts.slice(0, MOST_PASSES).join(', '))
  const passes: TighteningPass[] = []
  for (const [index, part] of parts.entries()) {
    const pass = readTurnBack(part)
    if (!pass.understood) {
      const nearest = [...parts.slice(0, index), pass.nearest, ...parts.slice(index + 1)]
      return notUnderstood(pass.code, pass.part, nearest.join(', '))
    }
    passes.push(pass.value)
  }
  return understood(passes)
}

/** What turns, turns back. */
function readTurnBack(part: string): Reading<TighteningPass, PassesFault> {
  if (/^(?:all the way|completely|fully|fully free|free|loose|off|out)$/i.test(part))
    return understood({ kind: 'back-off', typed: part })
  const pass = readPass(part)
  // Whatever it is near to, a torque loosens nothing.
  if (!pass.understood) return notUnderstood(pass.code === 'angle' ? 'angle' : 'form', part, 'fully')
  const { kind } = pass.value
  if (kind === 'angle') return understood({ ...pass.value, kind: 'back-off' })
  return kind === 'back-off' ? pass : notUnderstood('form', part, 'fully')
}
