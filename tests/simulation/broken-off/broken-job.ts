import type { Entry } from '../../../src/journal/entry.ts'
import { labelCode } from '../../../src/label/code.ts'
import { type Card, cardOf } from '../../../src/session/views.ts'
import { textOf } from '../../../src/ui/text/line.ts'
import { type Chance, chanceOf } from '../../support/damage/chance.ts'
import { JOB } from '../job/build-acts.ts'
import type { Machine } from '../machines/machine.ts'
import { Book } from './book.ts'
import { type Deed, deedsOf } from './deeds.ts'
import type { Cut } from './disk.ts'
import { type Named, namedByCard, namedByCommand } from './named.ts'
import { type BreakHow, type BreakOffReport, type BreakPlace, emptyReport } from './report.ts'
import { type ScreensInUse, Shop } from './shop.ts'

const PEOPLE = ['Anna', 'Carla', 'Deniz', 'Emil', 'Frieda']

/** Minutes: a few, the night, a week, and sixty days. */
const AWAY = [3, 40, 4 * 60, 24 * 60, 9 * 24 * 60, 60 * 24 * 60]

/** Longer on the command line, where work goes on from one line to the next: a short pause there is none. */
const SHORTEST_BREAK = 31

const CUTS: readonly Cut[] = ['before the write', 'half of the write', 'after the write', 'after the flush']

/** One whole job that is broken off again and again, and taken up by whoever comes. */
export class BrokenJob {
  readonly #machine: Machine
  readonly #deeds: readonly Deed[]
  readonly #chance: Chance
  readonly #seed: number
  readonly #shop: Shop
  readonly #book: Book
  readonly #report: BreakOffReport = emptyReport()
  readonly #breaks: Set<number>
  readonly #most: number
  #seen = 0
  #place: BreakPlace = 'while waiting'
  #how: BreakHow = 'the program is gone'

  constructor(machine: Machine, { seed, interruptions }: { seed: number; interruptions: number }) {
    this.#machine = machine
    this.#deeds = deedsOf(machine)
    this.#seed = seed
    this.#chance = chanceOf(seed)
    this.#shop = new Shop(machine.shape)
    this.#book = new Book(machine, this.#deeds)
    this.#most = interruptions
    this.#breaks = this.#drawn(interruptions)
    this.#seen = this.#shop.session.entries().length
  }

  run(): BreakOffReport {
    const report = this.#report
    report.jobs = 1
    try {
      for (let at = this.#book.next(); at !== null; at = this.#book.next()) {
        if (this.#breaks.delete(at)) {
          this.#breakOffBefore(at)
          continue
        }
        this.#perform(at)
      }
      if (this.#shop.session.state.cleared) report.cleared = 1
      else report.stuck.push(`${this.#name()}: not cleared`)
    } catch (error) {
      if (!(error instanceof Stuck)) throw error
      report.stuck.push(`${this.#name()}: ${error.message}`)
    }
    report.acknowledged = this.#shop.acknowledged.length
    return report
  }

  /** Places by chance; more of them where bolts are turned, for there the next bolt matters most. */
  #drawn(count: number): Set<number> {
    const weighed = this.#deeds.flatMap(({ act, eases }, at) =>
      Array.from(
        { length: eases !== undefined || act.doing === 'scan' ? 1 : act.doing === 'turn' ? 3 : 2 },
        () => at,
      ),
    )
    const drawn = new Set<number>()
    while (drawn.size < Math.min(count, this.#deeds.length))
      drawn.add(weighed[this.#chance.whole(0, weighed.length - 1)] ?? 0)
    return drawn
  }

  #name(): string {
    return `${this.#machine.shape}, seed ${this.#seed}`
  }

  // --- the acts as they come -------------------------------------------------------------------------------------

  /** Does a deed and says so on the command line. */
  #perform(at: number): void {
    const { act, phase } = this.#deeds[at] as Deed
    if (act.doing === 'turn' && phase === 'build') this.#answerDoubt()
    if (this.#book.isDone(at)) return
    const worker = this.#shop.by
    if (act.doing === 'see again') this.#shop.handTo('Boris')
    this.#say(this.#book.line(at))
    this.#shop.handTo(worker)
    this.#book.did(at, this.#fresh())
  }

  #say(line: string): void {
    const result = this.#shop.say(line)
    if (!result.ok)
      throw new Stuck(`'${line}' was refused: ${[result.told.what, ...result.told.lines].join(' | ')}`)
  }

  /** Whoever takes it up looks at the bolt, and says what there is to see. */
  #answerDoubt(): void {
    const doubt = this.#book.doubt()
    if (!doubt) return
    const wasTurned = this.#chance.whole(0, 1) === 1
    this.#say(`turned ${doubt.id} ${wasTurned ? 'yes' : 'no'} because the paint mark shows it`)
    this.#book.settled(wasTurned)
    this.#fresh()
  }

  #fresh(): Entry[] {
    const entries = this.#shop.session.entries()
    const fresh = entries.slice(this.#seen)
    this.#seen = entries.length
    return [...fresh]
  }

  // --- broken off ------------------------------------------------------------------------------------------------

  #breakOffBefore(at: number): void {
    const { act } = this.#deeds[at] as Deed
    this.#place = this.#placeOf(at)
    const { thing, doing } = act
    if (
      doing === 'fit' &&
      thing?.kind === 'lot' &&
      thing.at === null &&
      thing.count > 1 &&
      this.#chance.whole(0, 2) > 0
    ) {
      const some = this.#chance.whole(1, thing.count - 1)
      this.#say(`fit ${some} ${thing.name}`)
      this.#book.fitted(thing, some)
      this.#fresh()
      this.#place = 'between two bolts of a lot'
    }
    const drawn = this.#chance.whole(0, 9)
    if (drawn < 4 && this.#cutIn(at)) this.#takeUp(SHORT)
    else if (drawn < 7) {
      this.#how = 'a stop with a note'
      this.#say('stop: back when the parts are here')
      this.#book.stop(false)
      this.#fresh()
      this.#shop.vanish()
      this.#takeUp(SHORT)
    } else {
      this.#how = 'the program is gone'
      this.#shop.vanish()
      this.#takeUp(LONG)
    }
  }

  #placeOf(at: number): BreakPlace {
    const { act, phase, eases } = this.#deeds[at] as Deed
    if (eases !== undefined) return 'while bolts are eased'
    if (phase === 'strip') return act.doing === 'begin' ? 'between steps coming off' : 'in a strip step'
    if (phase === 'wait') return 'while waiting'
    const turning = this.#book.turning()
    const kind = turning?.grid.kindOf(turning.next.pass)
    if (turning && kind === 'torque') return 'in a torque pass'
    if (turning && kind === 'angle') return 'in an angle pass'
    if (turning && kind === 'mark') return 'in a pass of witness marks'
    return ['take', 'look', 'extra', 'clear', 'see again'].includes(act.doing)
      ? 'between steps going back'
      : 'in a step going back'
  }

  /** The power goes while a deed is said. Answers false where it writes nothing. */
  #cutIn(at: number): boolean {
    const { act, phase } = this.#deeds[at] as Deed
    const isDoubt = this.#book.doubt() !== null && act.doing === 'turn' && phase === 'build'
    if (act.doing === 'scan' || act.doing === 'see again' || isDoubt) return false
    const cut = CUTS[this.#chance.whole(0, CUTS.length - 1)] as Cut
    this.#how = CUT_NAMES[cut]
    this.#shop.cutAtNextWrite(cut)
    const line = this.#book.line(at)
    const result = this.#shop.say(line)
    if (!this.#shop.disk.isDead)
      throw new Stuck(`'${line}' wrote nothing: ${result.ok ? 'taken' : result.told.what}`)
    if (result.ok) this.#report.lost.push(`${this.#name()}: said to be recorded while the power was gone`)
    this.#afterCut(at)
    return true
  }

  /** The computer is on again. What was on the disk before it could be said is done, and nobody heard of it. */
  #afterCut(at: number | null, named?: Named): void {
    const shop = this.#shop
    shop.restart(this.#chance)
    const there = shop.lying()
    const untold = there.ids.length - shop.acknowledged.length
    if (untold > 1) this.#report.broken.push(`${this.#name()}: ${untold} entries more than were said`)
    this.#untold = untold > 0 ? { at, named } : null
    if (untold > 0) this.#report.untold += 1
    shop.acknowledged.push(...there.ids.slice(shop.acknowledged.length))
  }

  #untold: { at: number | null; named: Named | undefined } | null = null
  /** The bag that was being counted. */
  #counted: number | null = null

  // --- taken up again --------------------------------------------------------------------------------------------

  #takeUp(least: number): void {
    const shop = this.#shop
    const chance = this.#chance
    const report = this.#report
    const isCut = this.#how.startsWith('the power')
    report.interruptions += 1
    report.byPlace[this.#place].interruptions += 1
    report.byHow[this.#how].interruptions += 1
    // A count that is asked for one after the other there is on the screens alone.
    const onScreens = this.#counted !== null || chance.whole(0, 1) === 1
    const aways = AWAY.filter((minutes) => onScreens || minutes >= least)
    shop.wait(aways[chance.whole(0, aways.length - 1)] ?? 60)
    if (isCut) shop.startedNow()
    const before = shop.by
    shop.handTo(PEOPLE[chance.whole(0, PEOPLE.length - 1)] ?? 'Anna')
    if (shop.by !== before) report.byOthers += 1
    if (onScreens) this.#onTheScreens(shop.screens())
    else this.#onTheLine()
  }

  /** Once the job is open again: what was written down stands, and the book takes over what the power let through. */
  #look(): void {
    const { session, acknowledged } = this.#shop
    const ids = new Set(session.entries().map(({ id }) => id))
    const lost = acknowledged.filter((id) => !ids.has(id))
    this.#report.lost.push(...lost.map((id) => `${this.#name()}: ${id} after ${this.#how}`))
    if (session.problem) this.#report.broken.push(`${this.#name()}: ${session.problem.kind}`)
    if (ids.size !== session.entries().length) this.#report.broken.push(`${this.#name()}: an entry twice`)
    const fresh = this.#fresh()
    const untold = this.#untold
    this.#untold = null
    if (untold && untold.at !== null)
      this.#book.did(
        untold.at,
        fresh.filter(({ type }) => type !== 'stopped'),
      )
    else if (untold?.named) this.#book.didNamed(untold.named)
    const isSaid = this.#how === 'a stop with a note' || this.#how === 'the screens left with a note'
    if (!isSaid) this.#book.stop(true)
  }

  #onTheLine(): void {
    this.#report.onTheLine += 1
    const result = this.#shop.say('card')
    if (!result.ok) throw new Stuck(`the card was refused: ${result.told.what}`)
    this.#look()
    let named = namedByCard(result.answer as Card)
    let text = result.text.find((line) => line.startsWith('Next: ')) ?? ''
    this.#judge(named, text)
    // Whoever came goes on by what the card says, and nothing else.
    for (
      let turn = this.#chance.whole(0, 4);
      turn > 0 && this.#report.interruptions <= this.#most;
      turn -= 1
    ) {
      const line = this.#lineIn(text, named)
      if (line === null) return
      const wasDoubt = this.#book.doubt() !== null
      const answer = this.#chance.whole(0, 1) === 1
      this.#say(
        wasDoubt
          ? line.replace('yes|no', answer ? 'yes' : 'no').replace('...', 'the paint mark shows it')
          : line,
      )
      if (wasDoubt) this.#book.settled(answer)
      else this.#book.didNamed(named)
      this.#fresh()
      const card = this.#shop.say('card')
      if (!card.ok) throw new Stuck(`the card was refused: ${card.told.what}`)
      named = namedByCard(card.answer as Card)
      text = card.text.find((each) => each.startsWith('Next: ')) ?? ''
      this.#judge(named, text)
    }
  }

  /** The line that the card says to say; null where it names none, or what only whoever knows the machine can answer. */
  #lineIn(text: string, named: Named): string | null {
    if (!this.#isFollowed(named)) return null
    const line = LAST_LINE.exec(text)?.[1] ?? ''
    return line.replace('AMOUNT', this.#litres(named)).replace('RESULT', 'as it should be')
  }

  /** While it is apart nobody takes up what goes back: more comes off, or is waited for, and only the mechanic knows. */
  #isFollowed(named: Named): boolean {
    const at = this.#book.next()
    const phase = at === null ? 'build' : this.#deeds[at]?.phase
    if (phase !== 'build') return named.does === 'strip' && named.bolt !== undefined
    return !['blocked', 'leftovers', 'other', 'begin'].includes(named.does)
  }

  #litres(named: Named): string {
    const { fluids } = this.#book.known
    const [fluid] = [...fluids].find(([, id]) => named.does === 'fill' && id === named.id) ?? []
    return fluid?.kind === 'fluid' ? fluid.litres : '1 L'
  }

  /** What is named against the book, and whether its words name it. */
  #judge(named: Named, text: string): void {
    const where = `${this.#name()}, ${this.#place}, ${this.#how}`
    const wrong = this.#book.wrongWith(named)
    if (wrong !== null) {
      this.#report.byPlace[this.#place].wrong += 1
      this.#report.byHow[this.#how].wrong += 1
      this.#report.wrongNext.push(`${where}: ${wrong}; named: ${text}`)
      throw new Stuck(`named wrongly: ${wrong}`)
    }
    const missing = this.#book
      .called(named)
      .filter((word) => !text.toLowerCase().includes(word.toLowerCase()))
    if (missing.length > 0)
      this.#report.vague.push(`${where}: no '${missing.join(`' and no '`)}' in '${text}'`)
  }

  #onTheScreens(use: ScreensInUse): void {
    const { screens, type } = use
    this.#report.onTheScreens += 1
    this.#look()
    this.#judgeScreen(use)
    this.#countAgain(use)
    let keys = 0
    let isRecorded = false
    const press = (text: string) => {
      type(text)
      keys += 1
    }
    for (let turn = this.#chance.whole(1, 12); turn > 0; turn -= 1) {
      const page = screens.page()
      const enter = page.enter?.act
      if (!enter) break
      if (enter.do === 'send' && enter.commands[0]) {
        const named = namedByCommand(enter.commands[0])
        if (!this.#isFollowed(named)) break
        this.#judge(named, this.#words(use))
        press('\r')
        this.#book.didNamed(named)
      } else if (enter.do === 'go' && this.#isOnTheWay(enter.to.at)) {
        press('\r')
        continue
      } else if (enter.do === 'say' && this.#book.doubt()) {
        const answer = this.#chance.whole(0, 1)
        press(answer === 1 ? '1\r' : '2\r')
        press('the paint mark shows it\r')
        this.#book.settled(answer === 1)
      } else break
      const fresh = this.#fresh()
      if (fresh.length === 0)
        throw new Stuck(`Enter recorded nothing: ${page.enter?.says}; ${this.#answer(use)}`)
      if (!isRecorded) this.#report.keys[keys] = (this.#report.keys[keys] ?? 0) + 1
      isRecorded = true
    }
    this.#leaveScreens(use)
  }

  /** The bag that is counted: its label is scanned, and the first number given. Answers whether there is one to count. */
  #beginCount({ type, screens }: ScreensInUse): boolean {
    const bags = [...this.#book.known.containers].flatMap(([thing, no]) =>
      thing.kind === 'lot' && !this.#book.isAnyOn(thing) ? [no] : [],
    )
    const bag = bags[this.#chance.whole(0, bags.length - 1)]
    if (bag === undefined) return false
    countBag(type, bag)
    type('1\r')
    const { screen } = screens
    if (screen.at !== 'count' || screen.given.length !== 1)
      throw new Stuck(`bag ${bag} is not being counted: ${JSON.stringify(screen)}`)
    this.#counted = bag
    return true
  }

  /** A count that was broken off begins with the first number again, and nothing of it is in the record. */
  #countAgain({ type, screens }: ScreensInUse): void {
    const bag = this.#counted
    this.#counted = null
    if (bag === null) return
    countBag(type, bag)
    const { screen } = screens
    const isFromNothing = screen.at === 'count' && screen.given.length === 0
    const hasRecorded = this.#shop.session.entries().some(({ type }) => type === 'counted')
    if (!isFromNothing || hasRecorded)
      this.#report.wrongNext.push(
        `${this.#name()}: the count of bag ${bag} goes on at ${JSON.stringify(screen)}`,
      )
    type('.\r')
  }

  #isOnTheWay(at: string): boolean {
    const next = this.#book.next()
    const phase = next === null ? 'build' : this.#deeds[next]?.phase
    return phase === 'build' ? at === 'step' : at === 'off' && this.#deeds[next ?? 0]?.eases !== undefined
  }

  #answer({ screens }: ScreensInUse): string {
    return JSON.stringify(screens.answer())
  }

  /** What the first screen says is next, against the card's own facts. */
  #judgeScreen(use: ScreensInUse): void {
    const result = this.#cardOnScreens(use)
    this.#judge(result.named, result.text)
  }

  #cardOnScreens(use: ScreensInUse): { named: Named; text: string } {
    const { session } = use.screens
    if (!session) throw new Stuck('no job is open on the screens')
    return { named: namedByCard(cardOf(session)), text: this.#words(use) }
  }

  /** What Enter does in words, and the large letters. */
  #words({ screens }: ScreensInUse): string {
    const page = screens.page()
    const large = page.large ? [page.large.letters, ...page.large.under.map(textOf)].join(' ') : ''
    return `${page.enter?.says ?? ''} / ${large}`
  }

  /** The screens end as well, in one way or another, and somebody comes back. */
  #leaveScreens({ type, screens }: ScreensInUse): void {
    const at = this.#book.next()
    if (at === null || this.#report.interruptions >= this.#most) {
      this.#shop.vanish()
      return
    }
    this.#place = this.#placeOf(at)
    if (this.#chance.whole(0, 2) === 0 && this.#beginCount({ type, screens })) this.#place = 'in a recount'
    const drawn = this.#chance.whole(0, 2)
    if (drawn === 0) {
      this.#how = 'the screens left at once'
      type('\x03')
    } else if (drawn === 1) {
      this.#how = 'the screens left with a note'
      type('quit\r')
      if (screens.ended === null) type('the light went\r')
      this.#book.stop(false)
    } else {
      this.#how = 'the program is gone'
    }
    this.#shop.vanish()
    this.#takeUp(drawn === 2 ? LONG : SHORT)
  }
}

/** From any screen to the blind count of a bag: its label, then what the page of the label offers. */
function countBag(type: (text: string) => void, bag: number): void {
  type(`${labelCode(JOB, bag)}\r`)
  type('2\r')
}

/** What the card says to say stands behind its last colon: `fit 5 × nuts (in bag 3): fit p7`, `done 9: RESULT`. */
const LAST_LINE = /^.*: ((?:done|take|look|fit|turn|turned|applied|confirm|fill|clear)\b.*)$/

const SHORT = 0
const LONG = SHORTEST_BREAK

const CUT_NAMES: Record<Cut, BreakHow> = {
  'before the write': 'the power goes before the write',
  'half of the write': 'the power goes in half of the write',
  'after the write': 'the power goes after the write',
  'after the flush': 'the power goes after the flush',
}

/** The job does not go on. */
class Stuck extends Error {
  override readonly name = 'Stuck'
}
