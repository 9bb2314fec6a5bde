import { findVerb, isOffLine, readLine, readOff } from '../../lines/read-line.ts'
import type { Reading } from '../../lines/reading.ts'
import type { LayoutView } from '../../session/layout-view.ts'
import { workOut } from '../../session/work-out.ts'
import { misreadingText } from '../../words/misreadings.ts'
import { sumText } from '../../words/sum-text.ts'
import { NOT_A_SPECIFICATION } from '../../words/sums/figures.ts'
import type { Command } from '../act.ts'
import { bagReading } from '../model/bag-reading.ts'
import { commandReading } from '../model/command-reading.ts'
import type { Scene } from '../model/scene.ts'
import type { Screen } from '../navigation.ts'
import { type Line, line } from '../text/line.ts'
import { act, go, type Meaning, no } from './meaning.ts'

/** What a line in the language of the record means on a screen: a bag line where things come off, else a command. */
export function language(text: string, scene: Scene, screen: Screen): Meaning {
  const { session, hand } = scene
  const found = findVerb(text)
  if (screen.at === 'off' && !found) {
    return read(
      readOff(text, session.state, hand === null ? undefined : { kind: 'container', no: hand }),
      scene,
    )
  }
  const reading = readLine(text, session.stateNow())
  if (reading.kind === 'commands' || reading.kind === 'errand')
    return read(reading, scene, found ? `${found.verb.words[0]}: ${found.verb.says}` : '')
  // A bag line elsewhere: its words are understood, only not from here. While nothing comes off, words alone are no part.
  const comesOff = session.state.strip !== null
  if (!found && (comesOff ? readOff(text, session.state).kind === 'commands' : isOffLine(text))) {
    return no(
      'What comes off is typed on the screen OFF.',
      `Write "off ${text}", or go there with .1 and write it again.`,
    )
  }
  return read(reading, scene)
}

function read(reading: Reading, { session }: Scene, says = ''): Meaning {
  switch (reading.kind) {
    case 'commands':
      return {
        kind: 'act',
        act: { do: 'send', commands: reading.commands, to: afterwards(reading.commands) },
        says: reading.bag
          ? bagReading(reading.bag)
          : (commandReading(session, reading.commands[0]) ?? [line(says)]),
      }
    case 'errand':
      return act({ do: 'errand', errand: reading.errand }, says)
    case 'ask':
      return asked(reading.ask, session.state)
    case 'which-piece': {
      const { words, pieces, again } = reading
      return go(`which one? ${pieces.length} answer to "${words}"`, {
        at: 'which',
        words,
        pieces,
        lines: pieces.map(again),
      })
    }
    case 'misread':
      return { kind: 'not-understood', told: misreadingText(session.state, reading.misreading) }
    default:
      return reading satisfies never
  }
}

/** Where one wants to be after a command. */
function afterwards(commands: readonly Command[]): Screen | undefined {
  const last = commands.at(-1)
  if (last?.do === 'count') return { at: 'differences', container: last.container }
  if (last?.do === 'begin-build') return { at: 'step', step: last.step }
  // What was passed over is what one goes on with.
  const step =
    last?.do === 'override' ? /^(?:start|finish|look|check) (\d+)$/.exec(last.target)?.[1] : undefined
  if (step !== undefined) return { at: 'step', step: Number(step) }
  if (last?.do === 'begin-strip') return { at: 'off' }
  if (last?.do === 'lay-out' || last?.do === 'point') return drawing(last.piece)
  return undefined
}

function asked(ask: Extract<Reading, { kind: 'ask' }>['ask'], state: Scene['session']['state']): Meaning {
  switch (ask.ask) {
    case 'card':
      return go('where you are', { at: 'now' })
    case 'scan':
      return go('scan', { at: 'scan', text: ask.text })
    case 'back':
      return go('what goes back', { at: 'back' })
    case 'step':
      return go(`step ${ask.step}`, { at: 'step', step: ask.step })
    case 'where':
      return go(`look for ${ask.words}`, { at: 'lies', words: ask.words })
    case 'left':
      return go('what is left over', { at: 'left' })
    case 'found':
      return go(`where may ${ask.found.words} belong?`, { at: 'found', found: ask.found })
    case 'log':
      return go('what happened', { at: 'log' })
    case 'label':
      return go(`what to write on ${ask.container}, and its symbol`, labelOf(ask.container))
    case 'qr':
      return go(`QR code of container ${ask.container}`, labelOf(ask.container))
    case 'photos':
      return go('pictures', { at: 'photos', of: ask.of })
    case 'finish':
      return go('when it is together, at the earliest', { at: 'finish' })
    case 'proposals':
      return go('what else the way back asks for', { at: 'proposals' })
    case 'shopping':
      return go('what is to be bought and what is ordered', { at: 'buy' })
    case 'due':
    case 'checks':
      return go('what is judged and awaited', { at: 'due' })
    case 'compare':
      return ask.piece === null
        ? go('what is judged and awaited', { at: 'due' })
        : go('the new one beside the old', { at: 'compare', piece: ask.piece })
    case 'layout':
      return go('where they lie on the machine', drawing(ask.piece))
    case 'sum':
      // Shown as it is typed: Enter only keeps it on the screen.
      return {
        kind: 'act',
        act: { do: 'go', to: { at: 'sum', sum: ask.sum } },
        says: inBrief(sumText(state, workOut(state, ask.sum))),
      }
    case 'help':
      return go('help', { at: 'help', about: ask.about })
    default:
      return ask satisfies never
  }
}

/** What a sum comes to, and that it is no specification. */
function inBrief([result = '', ...more]: readonly string[]): Line[] {
  return more.includes(NOT_A_SPECIFICATION) ? [line(result), line(NOT_A_SPECIFICATION)] : [line(result)]
}

function drawing(piece: LayoutView['piece']): Screen {
  return { at: 'draw', piece, set: 'belongs', placing: null }
}

function labelOf(container: number): Screen {
  return { at: 'qr', container, invert: false }
}
