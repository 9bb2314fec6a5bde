import { type Answer, saying } from '../answer.ts'
import type { Pressed } from '../controls/line/key-reader.ts'
import { type LineEvent, lineEditor } from '../controls/line/line-editor.ts'
import type { Typed } from '../typed/meaning.ts'

/** What is typed, and what is said to it: an answer stands as long as the line is as it was when it was given. */
export class Talk {
  readonly #line = lineEditor()
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

  /** Whether what is typed next replaces the line. */
  isOffered(): boolean {
    return this.#line.isOffered()
  }

  /** Words of an errand, to be tried again; the number of a choice says nothing there. */
  giveBack(typed: Typed): void {
    if (!/^\d*$/.test((typed.before + typed.after).trim())) this.write(typed)
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
