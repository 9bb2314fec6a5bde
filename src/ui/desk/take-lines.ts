import type { Act } from '../act.ts'
import { notUnderstood } from '../answer.ts'
import type { Meaning, Typed } from '../typed/meaning.ts'
import type { Talk } from './talk.ts'

/** Who takes lines: what they mean there, and how it is carried out. */
interface Taker {
  meaningOf(typed: Typed): Meaning
  /** Records what a line asks for. Answers whether all of it was. */
  send(act: Extract<Act, { do: 'send' }>, typed: Typed): boolean
  do(act: Act, typed: Typed): void
  talk: Talk
}

/**
 * Each line as if it had been typed, until one is not taken: that one stands in the line, to be mended, or what is left of
 * it. Answers how many were taken.
 */
export function takeLines(lines: readonly string[], taker: Taker): number {
  const { talk } = taker
  for (const [index, text] of lines.entries()) {
    const typed = { before: text, after: '' }
    const meaning = taker.meaningOf(typed)
    if (meaning.kind === 'act' && meaning.act.do === 'send' && taker.send(meaning.act, typed)) continue
    // What leads somewhere or takes its time can only be the last of several.
    if (index === lines.length - 1 && meaning.kind === 'act' && leads(meaning.act)) {
      taker.do(meaning.act, typed)
      return lines.length
    }
    if (meaning.kind === 'act' && meaning.act.do === 'go') taker.do(meaning.act, typed)
    else if (meaning.kind === 'not-understood') talk.say(notUnderstood(meaning.told))
    // What was sent put itself back: of several items only those that are not recorded, and as what it stands there.
    const isBack = talk.text() !== '' && text.endsWith(talk.text())
    if (!isBack) talk.write(typed)
    if (lines.length > 1)
      talk.sayToo(`${index} of ${lines.length} lines were taken; this one and those after it were not.`)
    return index
  }
  if (lines.length > 1) talk.sayToo(`All ${lines.length} lines were taken.`)
  return lines.length
}

/** Whether an act goes on by itself, and nothing of its words is to be mended. */
function leads(act: Act): boolean {
  return act.do === 'errand' || (act.do === 'go' && act.to.at !== 'which')
}
