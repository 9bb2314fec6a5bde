import type { Errand } from '../../lines/errand.ts'
import type { Errands } from '../../session/errands.ts'
import type { JobShelf } from '../../session/jobs.ts'
import type { Session } from '../../session/session.ts'
import { type Act, type Command, records } from '../act.ts'
import { type Answer, answerNow, notUnderstood, outcomeAnswer, saying } from '../answer.ts'
import type { PasteWithoutEnd, Pressed } from '../controls/line/key-reader.ts'
import type { LineEvent, ScreenKey, Standing } from '../controls/line/line-editor.ts'
import { bodyHeight, hasRoom, isTooSmall, type Size } from '../layout.ts'
import type { Foot } from '../model/foot.ts'
import type { Hall, Scene } from '../model/scene.ts'
import { errorTold, recordTold } from '../model/trouble.ts'
import { wordsAgain } from '../model/words-again.ts'
import type { Screen, ScreenName } from '../navigation.ts'
import type { Page } from '../page.ts'
import { SIGNS } from '../signs.ts'
import type { Line } from '../text/line.ts'
import type { Meaning, Typed } from '../typed/meaning.ts'
import { Bell, type Rings } from './bell.ts'
import { ErrandOut, type News, newsOfJob } from './errand-out.ts'
import { OpenJob } from './open-job.ts'
import { Scrolling } from './scrolling.ts'
import { restOf, sendCommands } from './send-commands.ts'
import { Showing } from './showing.ts'
import { takeLines } from './take-lines.ts'
import { Talk } from './talk.ts'
import { Way } from './way.ts'

export interface DeskOptions {
  shelf: JobShelf
  colour: boolean
  errands: Errands
  now?: (() => Date) | undefined
  /** Makes itself heard, by so many rings of the bell. */
  ring?: ((times: Rings) => void) | undefined
}

/**
 * The screens without a terminal: what was pressed goes in, what is to be shown comes out. Holds where one is, the
 * line, and the last answer; what is true of the job it asks of the session every time.
 */
export class Desk {
  readonly #job: OpenJob
  readonly #colour: boolean
  readonly #now: () => Date
  readonly #bell: Bell
  readonly #errand: ErrandOut
  readonly #talk = new Talk()
  readonly #way = new Way({ at: 'jobs' })
  readonly #scrolling = new Scrolling(this.#way)
  readonly #shown = new Showing(this)
  readonly #listeners = new Set<() => void>()
  #hand: number | null = null
  #size: Size = { width: 80, height: 24 }
  #isLarge = false
  #ended: number | null = null
  #lastWords: readonly string[] = []
  /** How often something was pressed: an errand that ends knows by it whether anybody went on. */
  #presses = 0
  #version = 0
  /** What the times that run said when they were last looked at. */
  #timesShown = ''

  constructor({ shelf, colour, errands, now = () => new Date(), ring = () => {} }: DeskOptions) {
    this.#colour = colour
    this.#now = now
    this.#bell = new Bell(shelf, ring)
    this.#errand = new ErrandOut(errands, () => this.#changed())
    this.#job = new OpenJob(shelf, (refresh) => {
      this.#attempt(refresh)
      this.#changed()
    })
    this.#attempt(() => {
      const first = this.#job.first()
      if (first !== null) this.#openJob(first)
    })
  }

  /** Changes whenever anything to be shown does. */
  get version(): number {
    return this.#version
  }

  /** The exit code once the end is reached. */
  get ended(): number | null {
    return this.#ended
  }

  get session(): Session | null {
    return this.#job.session
  }

  get isLarge(): boolean {
    return this.#isLarge
  }

  /** Whether there is somewhere to go back to. */
  get hasWay(): boolean {
    return this.#way.isLong
  }

  get size(): Size {
    return this.#size
  }

  subscribe(listener: () => void): () => void {
    this.#listeners.add(listener)
    return () => this.#listeners.delete(listener)
  }

  resize(size: Size): void {
    if (size.width === this.#size.width && size.height === this.#size.height) return
    this.#size = size
    this.#changed()
  }

  press(pressed: Pressed): void {
    this.#presses += 1
    for (const event of this.#talk.press(pressed)) {
      if (this.#ended === null)
        this.#attempt(() => this.#handle(event), event.kind === 'line' ? event : undefined)
    }
    if (this.#ended === null) this.#talk.putBack(this.#place())
    this.#errand.showBeside(this.#talk.text())
    this.#changed()
  }

  /**
   * What Enter alone would do now, as a text to know it again by, where it must be meant: it records something, or takes
   * the answer to a scan away. Null where it does no harm.
   */
  get claim(): string | null {
    const act = this.#talk.text() === '' ? this.page().enter?.act : undefined
    return act && (records(act) || this.screen.at === 'scan') ? JSON.stringify(act) : null
  }

  /** An Enter was not taken: it came faster than a finger means it, or what it was pressed for is no longer next. */
  passOverEnter(why: keyof typeof PASSED_OVER): void {
    this.#talk.sayOnce(PASSED_OVER[why])
    this.#changed()
  }

  /** Some time without a key, perhaps in the middle of a paste: whoever types then sees nothing of it. */
  settle(paste: PasteWithoutEnd | null): void {
    this.#talk.settle()
    if (paste === null) return
    this.#talk.say(PASTE_WITHOUT_END[paste])
    this.#changed()
  }

  /** Whether a time runs that the screens show. */
  isTimed(): boolean {
    return this.#shown.times() !== ''
  }

  /** Some time has gone by: shows it where a time that runs says something else now, or is over. */
  tick(): void {
    const times = this.#shown.times()
    if (times === this.#timesShown) return
    this.#timesShown = times
    this.#changed()
  }

  /** Leaves the job to others. */
  close(): void {
    this.#job.close()
  }

  /** Leaves without asking. What was under way is noted as broken off. */
  leaveAtOnce(): void {
    this.#job.breakOff()
    this.#ended = 0
  }

  get screen(): Screen {
    return this.#way.screen
  }

  get scroll(): number | null {
    return this.#scrolling.row(this.page(), this.#talk.text())
  }

  /** Whether the line is one that what is typed next replaces, and what Enter does with it. */
  standing(): Standing | null {
    return this.#talk.standing()
  }

  typed(): Typed {
    return this.#talk.typed()
  }

  /** What is said to the last line, as long as nothing else is being typed. */
  answer(): Answer | null {
    return answerNow(this.#talk.answer(), this.#job.session)
  }

  /** What came of an errand while something else was done, until it was seen. */
  news(): News | null {
    return this.#errand.news
  }

  /** How far the errand is that is out; null when none is. */
  progress(): string | null {
    return this.#errand.progress
  }

  /** What is left to say on the terminal after the screens are gone. */
  get lastWords(): readonly string[] {
    return this.#lastWords
  }

  page(): Page {
    return this.#shown.page()
  }

  /** What stands above every screen of the job. */
  above(): readonly Line[] {
    return this.#shown.above()
  }

  /** What can be done now, for the last rows. */
  foot(): Foot {
    return this.#shown.foot()
  }

  /** What the line means as it stands. */
  meaning(): Meaning {
    return this.#shown.meaning()
  }

  /** Everything there is to show something of. The jobs are read from the disk when something asks for them. */
  scene(): Hall | Scene {
    const job = this.#job
    const hall = {
      get jobs() {
        return job.jobs
      },
      home: job.home,
      width: this.#size.width,
      height: this.#size.height,
      now: this.#now(),
      colour: this.#colour,
      errand: this.#errand,
    }
    return job.session ? Object.assign(hall, { session: job.session, hand: this.#hand }) : hall
  }

  #handle(event: LineEvent): void {
    this.#shown.forget()
    switch (event.kind) {
      case 'line':
        this.#goOn()
        this.#heard(() => this.#enter(event))
        break
      case 'paste':
        this.#talk.forgetAnswer()
        // What was pasted before and is not taken yet comes first.
        if (this.screen.at === 'paste')
          this.#way.turn({ at: 'paste', lines: [...this.screen.lines, ...event.lines] })
        else if (this.session) this.#way.go({ at: 'paste', lines: event.lines })
        else this.#talk.say(saying('A paste of several lines has no place here.', 'Open a job first.'))
        break
      case 'key':
        this.#key(event.key)
        break
      default:
        event satisfies never
    }
  }

  /** What came of it, by ear: the sign of an answer, else the verdict of the page that one came to. */
  #heard(what: () => void): void {
    const { screen } = this
    what()
    this.#shown.forget()
    const sign = this.#talk.answer()?.sign ?? (this.screen === screen ? null : this.page().verdict)
    if (sign) this.#bell.say(sign)
  }

  #enter(typed: Typed): void {
    // Nobody claims what nobody sees.
    if (isTooSmall(this.#size) && typed.before + typed.after === '') {
      this.#talk.say(
        saying('Enter did nothing while the window was too small.', 'Press it again if it was meant.'),
      )
      return
    }
    // What Enter alone would claim is not what was seen: the bolt that would be next may be half turned.
    if (this.#job.noteDied() && typed.before + typed.after === '') {
      this.#talk.say(
        saying(
          'Another program ended in the middle of this work: noted as broken off. That Enter was not taken.',
          'Look what is next now.',
        ),
      )
      return
    }
    const meaning = this.#shown.meaningOf(typed)
    if (meaning.kind === 'nothing') return
    if (meaning.kind === 'not-understood') {
      if (!meaning.drop) this.#talk.offer(typed)
      this.#talk.say(notUnderstood(meaning.told))
      return
    }
    if (meaning.keep) this.#talk.write(meaning.keep)
    this.#do(meaning.act, typed)
  }

  #key(key: ScreenKey): void {
    const own = this.#talk.text() === '' ? ownKey(this.page(), key) : undefined
    if (own) {
      this.#goOn()
      this.#do(own, this.typed())
      return
    }
    switch (key) {
      case 'leave':
        this.leaveAtOnce()
        break
      case 'escape':
        // Out of a question; a screen that asks nothing stays.
        if (this.page().question || this.screen.at === 'which') this.#back()
        break
      case 'back':
        this.#back()
        break
      case 'large':
        this.#turnLarge()
        break
      case 'up':
      case 'down':
        this.#scroll({ rows: key === 'up' ? -1 : 1 })
        break
      case 'page-up':
      case 'page-down':
        this.#scroll({ pages: key === 'page-up' ? -1 : 1 })
        break
      case 'left':
      case 'right':
        break
      default:
        key satisfies never
    }
  }

  /** Where nothing is to be seen of it, it is said. */
  #turnLarge(): void {
    this.#isLarge = !this.#isLarge
    if (this.page().large !== null) return
    this.#talk.say(
      this.#isLarge
        ? saying(
            'Large letters are on; this screen has none.',
            'One that has some shows them. * or .0 ends it.',
          )
        : saying('Large letters are off.'),
    )
  }

  #back(): void {
    this.#goOn()
    this.#way.back()
  }

  #scroll(by: { pages: number } | { rows: number }): void {
    const page = this.page()
    const height = bodyHeight(this.#size, this) - page.top.length
    this.#scrolling.move(by, page, { typed: this.#talk.text(), height })
  }

  #do(act: Act, typed: Typed): void {
    switch (act.do) {
      case 'send':
        if (this.#send(act.commands, typed) && act.to) {
          if (act.isTurn) this.#way.turn(act.to)
          else this.#way.go(act.to)
        }
        break
      case 'lines':
        this.#takeLines(act.lines)
        break
      case 'errand':
        void this.#goOnErrand(act.errand, typed)
        break
      case 'go':
        if (act.to.at === 'jobs') this.#job.forgetList()
        this.#way.go(act.to)
        break
      case 'turn':
        this.#way.turn(act.to)
        break
      case 'back':
        this.#way.back(act.past)
        break
      case 'write':
        if (act.past) this.#wayBackFor(act.before, act.past)
        this.#talk.write({ before: act.before, after: act.after ?? '' })
        this.#ask(act.before, act.asks)
        break
      case 'take':
        this.#hand = act.container
        this.#way.go({ at: 'off' })
        break
      case 'large':
        this.#turnLarge()
        break
      case 'sound':
        this.#talk.say(this.#bell.turn(act.on))
        break
      case 'say':
        this.#talk.say(saying(act.what, act.cure))
        break
      case 'open-job':
        this.#openJob(act.path)
        if (act.to) this.#way.go(act.to)
        break
      case 'new-job':
        this.#openJob(this.#job.create(act.job))
        this.#way.go({ at: 'off' })
        break
      case 'demo':
        this.#openJob(this.#job.addDemo())
        break
      case 'practice':
        this.#openJob(this.#job.addPractice())
        this.#way.go({ at: 'off' })
        break
      case 'leave':
        this.#leave(act.note, act.errand)
        break
      default:
        act satisfies never
    }
  }

  /** To the screen before, or to where one is in the job if that screen would take words for an answer of its own. */
  #wayBackFor(words: string, past: ScreenName): void {
    this.#way.back(past)
    this.#shown.forget()
    if (this.page().question?.take(words)) this.#way.go({ at: 'now' })
  }

  /** Says what is missing in the line, and which words may end it by their number. */
  #ask(before: string, asks: string | undefined): void {
    const scene = this.scene()
    const words = 'session' in scene ? wordsAgain(scene, before) : []
    const lines = words.map((each, index) => `${index + 1}  ${each}`)
    if (asks === undefined && lines.length === 0) return
    const cure = lines.length === 0 ? '' : 'The number alone will do.'
    this.#talk.say({ sign: null, told: { what: asks ?? 'Type why.', lines, cure } })
  }

  /** Sends commands until one is not taken; then the words go back into the line. Answers whether all were. */
  #send(commands: readonly Command[], typed: Typed): boolean {
    const session = this.session
    if (!session) return false
    const { done, isAll, answer } = sendCommands(session, commands, (type) => {
      // What comes off from now on goes where the record says.
      if (type !== 'noted' && type !== 'moved') this.#hand = null
    })
    const rest = restOf(typed, done, commands.length)
    // What was refused whole is mended or replaced; what the disk would not take, or the rest of a line, is never lost.
    if (answer?.sign === SIGNS.notRecorded) this.#talk.keep(rest, this.#place())
    else if (!isAll && done === 0 && answer?.sign === SIGNS.refused) this.#talk.offer(rest)
    else if (!isAll) this.#talk.write(rest)
    if (answer) this.#talk.say(answer)
    return isAll
  }

  /** Goes on an errand while the screens stay as they are. One at a time, so that each is seen to its end. */
  async #goOnErrand(errand: Errand, typed: Typed): Promise<void> {
    const { session } = this
    if (!session) return
    if (this.#errand.progress !== null) {
      this.#talk.giveBack(typed)
      this.#talk.say(
        saying('Something else is still under way.', 'One after the other: wait until it is done.'),
      )
      return
    }
    const { screen } = this
    const begun = this.#presses
    const news = await this.#errand.go(errand, session)
    if (this.#ended !== null) return
    // Whoever waits for it sees it like any other answer; whoever went on sees it beside what they do.
    if (this.session === session && this.screen === screen && this.#presses === begun)
      this.#tellNow(news, typed)
    else this.#errand.keep(this.session === session ? news : newsOfJob(news, session.state.job.name))
    this.#errand.showBeside(this.#talk.text())
    if (news.answer.sign) this.#bell.say(news.answer.sign)
    this.#afterErrand(news)
    this.#changed()
  }

  #tellNow(news: News, typed: Typed): void {
    if (!news.isOk) this.#talk.giveBack(typed)
    if (!hasRoom(this.#size, news.answer)) this.#way.go({ at: 'told' })
    else this.#talk.say(news.answer)
  }

  /** Whoever wanted to leave and waited for it leaves now, unless it went wrong. */
  #afterErrand(news: News): void {
    const { screen } = this
    if (screen.at !== 'wait') return
    this.#way.back()
    if (!screen.isWaiting || !news.isOk) return
    this.#attempt(() => this.#leave(screen.note))
    this.#lastWords = news.lines
  }

  #takeLines(lines: readonly string[]): void {
    this.#way.back()
    const taken = takeLines(lines, {
      meaningOf: (typed) => this.#shown.meaningOf(typed),
      send: ({ commands }, typed) => this.#send(commands, typed),
      do: (act, typed) => this.#do(act, typed),
      talk: this.#talk,
    })
    // What the disk would not take is not lost behind the line that it began with.
    if (this.#talk.answer()?.sign !== SIGNS.notRecorded || lines.length - taken < 2) return
    this.#way.go({ at: 'paste', lines: [this.#talk.text(), ...lines.slice(taken + 1)] })
    this.#talk.write({ before: '', after: '' })
    this.#talk.sayAgain()
  }

  #openJob(path: string): void {
    const session = this.#job.open(path)
    this.#hand = null
    this.#way.start({ at: 'now' })
    this.#attempt(() => this.#job.choose(path))
    const trouble = recordTold(session)
    if (trouble) this.#talk.say({ sign: SIGNS.notRecorded, told: trouble })
  }

  #leave(note: string | null, errand: 'wait' | 'drop' | 'ask' = 'ask'): void {
    if (this.#errand.progress !== null && errand !== 'drop') {
      const to: Screen = { at: 'wait', note, isWaiting: errand === 'wait' }
      if (this.screen.at === 'wait') this.#way.turn(to)
      else this.#way.go(to)
      return
    }
    if (note !== null && this.session) {
      const outcome = this.session.send({ do: 'stop', abrupt: false, note })
      if (outcome.kind !== 'recorded') {
        this.#talk.keep({ before: note, after: '' }, this.#place())
        this.#talk.say(outcomeAnswer(this.session, outcome))
        return
      }
    }
    this.#ended = 0
  }

  /** What was said before, and news that stood there whole, was seen by whoever goes on. */
  #goOn(): void {
    this.#talk.forgetAnswer()
    this.#errand.goOn()
  }

  /**
   * The disk and the lock may fail at any moment: then that is said, the words that were typed for it go back into the
   * line, and the screens go on.
   */
  #attempt(what: () => void, typed?: Typed): void {
    try {
      what()
    } catch (error) {
      const told = errorTold(error, this.session?.store.path ?? this.#job.home)
      if (!told) throw error
      if (typed) this.#talk.giveBack(typed)
      // A job may have been begun before that.
      this.#job.forgetList()
      this.#talk.say({ sign: SIGNS.notRecorded, told })
      this.#changed()
    }
  }

  /** Where words mean what they meant when they were typed: the screen of that job. */
  #place(): string {
    return JSON.stringify([this.session?.store.path, this.screen])
  }

  #changed(): void {
    this.#version += 1
    for (const listener of this.#listeners) listener()
  }
}

/** Why an Enter was not taken. */
const PASSED_OVER = {
  repeated: 'Enter came again at once, as from a key held down: that one was not taken.',
  overtaken: 'Another terminal was quicker: that Enter was not taken. Look what is next now.',
}

const PASTE_WITHOUT_END = {
  'goes on': saying('A paste has begun whose end has not come: keys go into it.', 'Esc gives it up.'),
  'given up': saying('The paste was given up: nothing of it was taken.'),
}

/** What a key does on a page that has a use of its own for it. */
function ownKey({ keys }: Page, key: ScreenKey): Act | undefined {
  return keys && key in keys ? keys[key as keyof typeof keys] : undefined
}
