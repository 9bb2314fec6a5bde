import { type NotUnderstood, notUnderstood, type Reading, understood } from '../reading.ts'
import { type Again, passesBefore, readAgain } from './again.ts'
import { partsOf } from './parts-of.ts'
import { fallingPercentage, spelledOut } from './spelled-out.ts'
import { type PassFault, readPass, type TighteningPass } from './tightening-pass.ts'

/**
 * Why passes were not understood: one of them was not, more than 20, falling percentages, a mark before everything is
 * turned, nothing turned yet that could be backed off, backed off already, nothing backed off that could be repeated.
 */
export type PassesFault =
  | PassFault
  | 'too-many'
  | 'percent-falling'
  | 'witness-early'
  | 'nothing-to-back-off'
  | 'backed-off-twice'
  | 'again'

/** The most passes of a tightening. */
export const MOST_PASSES = 20

/**
 * Reads the passes of a tightening in their order: `20 Nm, 40 Nm, 90 deg`, `40 Nm + 90° + 90°`, `hand tight, 30/70/100 %
 * of 60 Nm, check 60 Nm clockwise, mark`, `50, 105 and 155 lbf·ft, back off, then the three passes again`. A unit or a
 * torque that is written once holds for the numbers and percentages before it.
 */
export function readPasses(text: string): Reading<TighteningPass[], PassesFault> {
  const parts = partsOf(text)
  if (parts.length === 0) return notUnderstood('empty', '', '20 Nm, 40 Nm, 90 deg')
  const texts = spelledOut(parts)
  const falling = fallingPercentage(texts)
  if (falling !== null) {
    const kept = texts.filter((each) => each !== falling)
    return notUnderstood('percent-falling', falling, kept.join(', '))
  }
  const passes: TighteningPass[] = []
  for (const [index, each] of texts.entries()) {
    const again = readAgain(each)
    const read = again ? repeated(passes, again, each) : one(each)
    if (!read.understood) {
      const nearest = [...texts.slice(0, index), read.nearest, ...texts.slice(index + 1)]
      return notUnderstood(read.code, read.part, nearest.join(', '))
    }
    passes.push(...read.value)
    if (passes.length > MOST_PASSES)
      return notUnderstood('too-many', text.trim(), typedOf(passes.slice(0, MOST_PASSES)))
  }
  return outOfPlace(passes) ?? understood(passes)
}

function one(text: string): Reading<TighteningPass[], PassFault> {
  const pass = readPass(text)
  if (pass.understood) return understood([pass.value])
  // No number has two decimal commas.
  const isList = pass.code === 'form' && /^\d{1,4}(?:,\d{1,4}){2,}\D/.test(text)
  return isList ? notUnderstood('form', text, text.replace(/,/g, ', ')) : pass
}

function repeated(
  passes: readonly TighteningPass[],
  { count }: Again,
  text: string,
): Reading<TighteningPass[], PassesFault> {
  const before = passesBefore(passes)
  if (before.length === 0) return notUnderstood('again', text, 'back off, again')
  if (count !== null && count !== before.length) return notUnderstood('again', text, 'again')
  return understood(before)
}

/** What stands where no tightening has it: a mark before the end, nothing to back off. */
function outOfPlace(passes: readonly TighteningPass[]): NotUnderstood<PassesFault> | null {
  const turning = passes.filter(({ kind }) => kind !== 'witness')
  const [mark] = passes.filter(({ kind }) => kind === 'witness')
  const isEarly = passes.some(({ kind }, index) => kind === 'witness' && index < passes.length - 1)
  if (mark && (isEarly || turning.length === 0)) {
    const before = turning.length === 0 ? '20 Nm' : typedOf(turning)
    return notUnderstood('witness-early', mark.typed, `${before}, ${mark.typed}`)
  }
  const [first] = passes
  if (first?.kind === 'back-off') {
    const rest = passes.slice(passes.findIndex(({ kind }) => kind !== 'back-off'))
    const isBare = rest.every(({ kind }) => kind === 'back-off')
    return notUnderstood('nothing-to-back-off', first.typed, isBare ? `20 Nm, ${first.typed}` : typedOf(rest))
  }
  const twice = passes.findIndex((pass, index) => isFreeTwice(passes[index - 1], pass))
  const after = passes[twice]
  if (!after) return null
  return notUnderstood('backed-off-twice', after.typed, typedOf(passes.toSpliced(twice, 1)))
}

/** After backing off fully there is nothing to back off; by half a turn and half a turn again is published. */
function isFreeTwice(before: TighteningPass | undefined, pass: TighteningPass): boolean {
  return before?.kind === 'back-off' && before.degrees === undefined && pass.kind === 'back-off'
}

function typedOf(passes: readonly TighteningPass[]): string {
  return passes.map(({ typed }) => typed).join(', ')
}
