import type { JobShelf } from '../../../src/session/jobs.ts'
import { Session } from '../../../src/session/session.ts'
import type { Act } from '../../../src/ui/act.ts'
import { keyReader } from '../../../src/ui/controls/line/key-reader.ts'
import { Desk } from '../../../src/ui/desk/desk.ts'
import type { Scene } from '../../../src/ui/model/scene.ts'
import { type Trail, walk } from '../../../src/ui/navigation.ts'
import type { JournalInMemory } from '../../support/journal-in-memory.ts'

/** The screens of one person, without a terminal around them: keys go in. */
export class Terminal {
  readonly desk: Desk
  readonly session: Session
  readonly #reader = keyReader()
  /** The way one came, kept beside the desk's own, so that ways from here can be thought through. */
  #trail: Trail = [{ screen: { at: 'now' }, scroll: null }]

  constructor(journal: JournalInMemory, by: string, now: () => Date) {
    this.session = new Session(journal.opened(), { now, by })
    this.desk = new Desk({ shelf: shelfOf(this.session), colour: false, errands: NO_ERRANDS, now })
  }

  /** What others wrote since is read, as the screens do when the file changes. */
  look(): void {
    this.session.refresh()
  }

  get scene(): Scene {
    return this.desk.scene() as Scene
  }

  get trail(): Trail {
    return this.#trail
  }

  /** Presses keys that come to such an act, as far as it leads to another screen. */
  press(keys: string, led: Act | null): void {
    for (const pressed of [...this.#reader.push(keys), ...this.#reader.flush()]) this.desk.press(pressed)
    if (led) this.#trail = afterAct(this.#trail, led) ?? this.#trail
    if (JSON.stringify(this.#trail.at(-1)?.screen) !== JSON.stringify(this.desk.screen))
      throw new Error(
        `another screen than thought: ${JSON.stringify(this.desk.screen)}, not ${JSON.stringify(this.#trail.at(-1)?.screen)}, after ${JSON.stringify(keys)}`,
      )
  }
}

/** The way after an act that leads somewhere; null for one that does not. */
export function afterAct(trail: Trail, act: Act): Trail | null {
  switch (act.do) {
    case 'go':
      return walk(trail, { go: act.to })
    case 'turn':
      return walk(trail, { turn: act.to })
    case 'back':
      return walk(trail, { back: true, past: act.past })
    case 'take':
      return walk(trail, { go: { at: 'off' } })
    case 'send':
      return act.to ? walk(trail, act.isTurn ? { turn: act.to } : { go: act.to }) : null
    default:
      return null
  }
}

/** A home with this one job in it. */
function shelfOf(session: Session): JobShelf {
  const none = (): never => {
    throw new Error('one job is enough')
  }
  return {
    home: '/nowhere',
    list: () => [],
    open: () => session,
    // The other terminal stays open: nothing was broken off.
    enter: () => ({ othersHere: () => true, othersDied: () => false, leave: () => {} }),
    create: none,
    addDemo: none,
    addPractice: none,
    chosen: () => '/nowhere/job',
    choose: () => {},
    hasSound: () => false,
    setSound: () => {},
  }
}

const NO_ERRANDS = {
  run: async (): Promise<never> => {
    throw new Error('no errand was meant')
  },
}
