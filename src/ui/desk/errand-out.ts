import { withoutSteering } from '../../label/without-steering.ts'
import type { Errand } from '../../lines/errand.ts'
import type { ErrandOutcome, Errands } from '../../session/errands.ts'
import type { Session } from '../../session/session.ts'
import { type Answer, errandAnswer, faultAnswer } from '../answer.ts'

/** What came of an errand: in short, and line by line where it is more than an answer has room for. */
export interface News {
  answer: Answer
  /** The errand it came of. */
  of: Errand
  /** Every line of it. */
  lines: readonly string[]
  isOk: boolean
}

/**
 * The one errand that is out, how far it is, and the news it brought. News stays until it was seen: an errand ends at
 * any moment, in the middle of a line or on another screen.
 */
export class ErrandOut {
  readonly #errands: Errands
  readonly #changed: () => void
  #out: { name: string; progress: string } | null = null
  #news: News | null = null
  #last: News | null = null
  #isWhole = false

  constructor(errands: Errands, changed: () => void) {
    this.#errands = errands
    this.#changed = changed
  }

  /** How far the errand is that is out: `pictures: 3 of 40`. Null when none is. */
  get progress(): string | null {
    if (!this.#out) return null
    const { name, progress } = this.#out
    return progress === '' ? `${name} ...` : `${name}: ${progress}`
  }

  /** What has not been seen yet. */
  get news(): News | null {
    return this.#news
  }

  /** What came of the last errand, seen or not. */
  get last(): News | null {
    return this.#last
  }

  /** News for whoever is busy with something else: it stays until it was seen. */
  keep(news: News): void {
    this.#news = news
    this.#isWhole = false
  }

  /** Something is shown beside the news, or nothing, so that it stands there whole. */
  showBeside(text: string): void {
    this.#isWhole = text === ''
  }

  /** Somebody goes on: news that stood there whole was seen. */
  goOn(): void {
    if (this.#isWhole) this.#news = null
  }

  /** Goes on an errand; only while none is out. Answers what came of it. Never rejects. */
  async go(errand: Errand, session: Session): Promise<News> {
    this.#out = { name: NAMES[errand.errand], progress: '' }
    this.#news = null
    this.#changed()
    const news = await this.#newsOf(errand, session)
    this.#out = null
    this.#last = news
    return news
  }

  async #newsOf(errand: Errand, session: Session): Promise<News> {
    try {
      const outcome = printable(await this.#errands.run(errand, session, (progress) => this.#tell(progress)))
      return { answer: errandAnswer(outcome), of: errand, lines: linesOf(outcome), isOk: outcome.ok }
    } catch (error) {
      const answer = faultAnswer(error, session)
      return { answer, of: errand, lines: [answer.told.what, answer.told.cure], isOk: false }
    }
  }

  #tell(progress: string): void {
    if (!this.#out) return
    this.#out.progress = withoutSteering(progress)
    this.#changed()
  }
}

/** News of another job than the one that is open now. */
export function newsOfJob(news: News, job: string): News {
  const { sign, told } = news.answer
  return { ...news, answer: { sign, told: { ...told, what: `${job}: ${told.what}` } } }
}

const NAMES: Record<Errand['errand'], string> = {
  print: 'printing',
  'print-usual': 'keeping what is usual',
  stocks: 'reading the label stocks',
  record: 'telling the whole job',
  'photos-import': 'reading pictures',
  'photos-open': 'opening pictures',
  borrow: 'borrowing',
  merge: 'merging',
  backup: 'backing up',
  doctor: 'examining the record',
  'buy-csv': 'writing the list of what to buy',
}

/** An outcome without what would steer the terminal: paths hold whatever a disk holds. */
function printable(outcome: ErrandOutcome): ErrandOutcome {
  if (outcome.ok) return { ...outcome, text: outcome.text.map(withoutSteering) }
  const { what, lines, cure } = outcome.told
  return {
    ...outcome,
    told: { what: withoutSteering(what), lines: lines.map(withoutSteering), cure: withoutSteering(cure) },
    text: outcome.text?.map(withoutSteering),
  }
}

/** What it is and what to do come first, for they must be seen; the rest may stand below the last row. */
function linesOf(outcome: ErrandOutcome): string[] {
  if (outcome.ok) return outcome.text
  const { told, text = [] } = outcome
  return [told.what, told.cure, ...told.lines, ...text].filter((line) => line !== '')
}
