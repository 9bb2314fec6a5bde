import { type Answer, saying } from '../answer.ts'
import type { Pressed } from '../controls/line/key-reader.ts'
import { type LineEvent, lineEditor, type Standing } from '../controls/line/line-editor.ts'
import type { Typed } from '../typed/meaning.ts'

/** A line, and the place that its words are for. */
interface Kept {
  typed: Typed
  place: string
}

/** What is typed, and what is said to it: an answer stands as long as the line is as it was when it was given. */
export class Talk {
  readonly #line = lineEditor()
  /** The line that is not recorded yet, or was last. */
  #kept: Kept | null = null
  /** Lines that are not recorded yet and that something else has taken the place of. */
  readonly #aside: Kept[] = []
  #answer: { answer: Answer; beside: string } | null = null

  press(pressed: Pressed): Iterable<LineEvent> {
    return this.#line.take(pressed)
  }

  /** Some time without a key. */
  settle(): void {
    this.#line.settle()
  }

  typed(): Typed {
    return { before: this.#line.before(), after: this.#line.after() }
  }

  text(): string {
    return this.#line.before() + this.#line.after()
  }

  /** Puts words into the line, to be completed or mended there. */
  write({ before, after }: Typed): void {
    this.#line.set(before, after)
  }

  /** Words that were not taken: mended there, or replaced by what is typed next. */
  offer({ before, after }: Typed): void {
    this.#line.offer(before, after)
  }

  /** What is typed next replaces the line, by what Enter does with it; null where the line goes on. */
  standing(): Standing | null {
    return this.#line.standing()
  }

  /** Words that the disk would not take: Enter sends them again. Typed over, they come back at the place that they are for. */
  keep(typed: Typed, place: string): void {
    const kept = { typed, place }
    this.#kept = kept
    this.#line.keep(typed.before, typed.after, () => this.#aside.push(kept))
  }

  /** What was typed over and is not recorded stands in the line again, where that is empty; what was said stands on. */
  putBack(place: string): void {
    const last = this.#aside.at(-1)
    if (this.text() !== '' || last?.place !== place) return
    const answer = this.answer()
    this.#aside.pop()
    this.keep(last.typed, place)
    if (answer) this.say(answer)
  }

  /** Words of an errand, to be tried again or said otherwise; the number of a choice says nothing there. */
  giveBack(typed: Typed): void {
    if (/^\d*$/.test((typed.before + typed.after).trim())) return
    if (this.standing() === 'kept' && this.#kept) this.#aside.push(this.#kept)
    this.#kept = null
    this.#line.keep(typed.before, typed.after, () => {})
  }

  say(answer: Answer): void {
    this.#answer = { answer, beside: this.text() }
  }

  /** What was said last stands beside the line as it is now. */
  sayAgain(): void {
    if (this.#answer) this.say(this.#answer.answer)
  }

  /** One line more to what was said last. */
  sayToo(text: string): void {
    const last = this.#answer?.answer ?? saying('')
    this.say({ ...last, told: { ...last.told, lines: [...last.told.lines, text] } })
  }

  /** The same where that is not said already; by itself where nothing was said. */
  sayOnce(text: string): void {
    const said = this.answer()?.told
    if (!said) this.say(saying(text))
    else if (said.what !== text && !said.lines.includes(text)) this.sayToo(text)
  }

  /** What is said to the last line, as long as nothing else is being typed. */
  answer(): Answer | null {
    return this.#answer?.beside === this.text() ? this.#answer.answer : null
  }

  forgetAnswer(): void {
    this.#answer = null
  }
}
