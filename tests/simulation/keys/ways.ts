import type { Act, Command } from '../../../src/ui/act.ts'
import { pageOf } from '../../../src/ui/model/page-of.ts'
import { type Scene, withHand } from '../../../src/ui/model/scene.ts'
import type { Screen, Trail } from '../../../src/ui/navigation.ts'
import { placeOf } from '../../../src/ui/navigation.ts'
import type { Choice, Page } from '../../../src/ui/page.ts'
import { meaningOf } from '../../../src/ui/typed/read-typed.ts'
import type { About } from './about.ts'
import type { Aim } from './aim.ts'
import { afterAct } from './terminal.ts'
import { restsOf, verbOf, wordings } from './wordings.ts'

/** What is pressed in one go, up to an Enter or a Backspace, and the act that it comes to. */
interface Stroke {
  keys: string
  act: Act
}

/** How something is done at the screens: what is pressed, and which of the things wanted it is. */
export interface WayThere<Wanted> {
  strokes: Stroke[]
  keys: number
  wanted: Wanted
}

/** Something that may be done next. `line`: how it is said in words; null where only Enter or a number would do. */
export interface Wanted {
  aim: Aim
  about: About
  line: string | null
}

interface Node {
  trail: Trail
  hand: number | null
  strokes: Stroke[]
  keys: number
}

/** So many screens on the way are no shorter than words. */
const MOST_STEPS = 3

/**
 * The way with the fewest keys to one of several things: Enter where it does that very thing, the number of a row that is
 * shown, a screen where one of them does, a short form, or the words. Null where none leads to any of them.
 */
export function fewestKeys<Thing extends Wanted>(
  from: { scene: Scene; trail: Trail; hasLine: boolean },
  wanted: readonly Thing[],
): WayThere<Thing> | null {
  return new Search(from.scene, wanted).from(from.trail, from.hasLine)
}

class Search<Thing extends Wanted> {
  readonly #scene: Scene
  readonly #wanted: readonly Thing[]
  readonly #seen = new Set<string>()
  #best: WayThere<Thing> | null = null

  constructor(scene: Scene, wanted: readonly Thing[]) {
    this.#scene = scene
    this.#wanted = wanted
  }

  from(trail: Trail, hasLine: boolean): WayThere<Thing> | null {
    let open: Node[] = [{ trail, hand: this.#scene.hand, strokes: [], keys: 0 }]
    while (open.length > 0) {
      open.sort((a, b) => a.keys - b.keys)
      const [node, ...rest] = open as [Node, ...Node[]]
      open = rest
      if (this.#isTooLong(node.keys + 1)) break
      const key = `${JSON.stringify(placeOf(node.trail).screen)} ${node.hand}`
      if (this.#seen.has(key)) continue
      this.#seen.add(key)
      // A line that was not taken is cleared by an Enter of its own, unless something is typed over it.
      open.push(...this.#look(node, hasLine && node.strokes.length === 0))
    }
    return this.#best
  }

  #isTooLong(keys: number): boolean {
    return this.#best !== null && keys >= this.#best.keys
  }

  #look(node: Node, hasLine: boolean): Node[] {
    const scene = node.hand === this.#scene.hand ? this.#scene : handed(this.#scene, node.hand)
    const { screen } = placeOf(node.trail)
    const page = pageOf(scene, screen, '')
    const next: Node[] = []
    const clear = hasLine ? '\r' : ''
    const tryAct = (keys: string, act: Act) => {
      const after = this.#step(node, keys, act)
      if (after) next.push(after)
      if (act.do === 'write') this.#complete(node, { keys, act, scene, page })
    }
    if (page.enter) tryAct(`${clear}\r`, page.enter.act)
    for (const [no, { act }] of choicesOf(page)) tryAct(`${no}\r`, act)
    if (node.strokes.length < MOST_STEPS) {
      for (const [keys, to] of SCREENS) next.push(...this.#lead(node, keys, { do: 'go', to }))
      if (clear === '' && node.trail.length > 1 && page.keys?.back === undefined)
        next.push(...this.#lead(node, '\x7f', { do: 'back' }))
    }
    this.#inWords(node, scene, page)
    return next
  }

  #lead(node: Node, keys: string, act: Act): Node[] {
    const after = this.#step(node, keys, act)
    return after ? [after] : []
  }

  /** What a key comes to: the thing itself, which is kept where no way is shorter, or another screen. */
  #step(node: Node, keys: string, act: Act): Node | null {
    const cost = node.keys + keys.length
    if (this.#isTooLong(cost)) return null
    if (act.do === 'send') {
      this.#reach(node, { keys, act })
      return null
    }
    if (act.do !== 'go' && act.do !== 'turn' && act.do !== 'back' && act.do !== 'take') return null
    const trail = afterAct(node.trail, act)
    if (!trail || node.strokes.length >= MOST_STEPS || !this.#mayHelp(placeOf(trail).screen)) return null
    return {
      trail,
      hand: act.do === 'take' ? act.container : node.hand,
      strokes: [...node.strokes, { keys, act }],
      keys: cost,
    }
  }

  #reach(node: Node, ...strokes: Stroke[]): void {
    const { act } = strokes.at(-1) as Stroke
    const keys = strokes.reduce((sum, stroke) => sum + stroke.keys.length, node.keys)
    if (act.do !== 'send' || this.#isTooLong(keys)) return
    const wanted = this.#wanted.find(({ aim }) => aim.isMetBy(act.commands))
    if (wanted) this.#best = { strokes: [...node.strokes, ...strokes], keys, wanted }
  }

  /** The screen put words into the line: what is left to type. */
  #complete(node: Node, { keys, act, scene, page }: Stroke & { scene: Scene; page: Page }): void {
    if (act.do !== 'write' || act.past !== undefined) return
    const { screen } = placeOf(node.trail)
    for (const { line } of this.#wanted) {
      if (line === null) continue
      const { before, after = '' } = act
      for (const rest of restsOf(line, before, after)) {
        if (this.#isTooLong(node.keys + keys.length + rest.length + 1)) break
        const typed = { before: before + rest, after }
        const meaning = meaningOf(typed, { scene, screen, page })
        if (meaning.kind === 'act') this.#reach(node, { keys, act }, { keys: `${rest}\r`, act: meaning.act })
      }
    }
  }

  #inWords(node: Node, scene: Scene, page: Page): void {
    const { screen } = placeOf(node.trail)
    for (const { line } of this.#wanted) {
      if (line === null) continue
      for (const text of wordings(line)) {
        // What begins with its verb means the same everywhere, and was tried where one stands.
        const isTried = node.strokes.length > 0 && verbOf(text) === verbOf(line)
        if (isTried) continue
        if (this.#isTooLong(node.keys + text.length + 1)) break
        const meaning = meaningOf({ before: text, after: '' }, { scene, screen, page })
        if (meaning.kind === 'act') this.#reach(node, { keys: `${text}\r`, act: meaning.act })
      }
    }
  }

  /** Screens about something else lead nowhere that is wanted. */
  #mayHelp(screen: Screen): boolean {
    switch (screen.at) {
      case 'step':
        return this.#wanted.some(({ about }) => about.steps.has(screen.step))
      case 'judge':
      case 'compare':
      case 'draw':
        return this.#wanted.some(({ about }) => about.pieces.has(screen.piece) || screen.at === 'judge')
      default:
        return this.#wanted.some(({ aim }) => screensFor(aim.commands[0]?.do).has(screen.at))
    }
  }
}

function handed(scene: Scene, hand: number | null): Scene {
  return hand === null ? scene : withHand(scene, hand)
}

const SCREENS: readonly [string, Screen][] = [
  ['.\r', { at: 'now' }],
  ['.1\r', { at: 'off' }],
  ['.3\r', { at: 'back' }],
  ['.4\r', { at: 'left' }],
  ['.6\r', { at: 'due' }],
]

/** The screens that may have something of a command: what comes off is on no screen of the way back. */
function screensFor(command: Command['do'] | undefined): ReadonlySet<Screen['at']> {
  if (command === undefined || COMING_OFF.has(command)) return OFF
  return ASKED_IN_WORDS.has(command) ? PLANNING : ALL
}

const COMING_OFF: ReadonlySet<Command['do']> = new Set([
  'begin-strip',
  'end-strip',
  'take-off',
  'put-in',
  'open-container',
  'mark',
  'drain',
  'lay-out',
])
const ASKED_IN_WORDS: ReadonlySet<Command['do']> = new Set([
  'ask-checks',
  'set-consumable',
  'add-step',
  'change-step',
])

const OFF: ReadonlySet<Screen['at']> = new Set(['off', 'scan'])
const PLANNING: ReadonlySet<Screen['at']> = new Set(['now', 'off', 'proposals'])
const ALL: ReadonlySet<Screen['at']> = new Set([
  'now',
  'off',
  'back',
  'left',
  'due',
  'buy',
  'proposals',
  'arrivals',
  'scan',
])

/** The rows that can be chosen by a number of one digit or two. */
function choicesOf(page: Page): [number, Choice][] {
  const found: [number, Choice][] = []
  for (let no = 1; no <= 99; no += 1) {
    const choice = page.choice(no)
    if (choice) found.push([no, choice])
    // Numbers stand in a row, but for a gap before those that always mean the same.
    else if (no - (found.at(-1)?.[0] ?? 0) > 10) break
  }
  return found
}
