import { offBalance } from '../../session/off-balance.ts'
import { stepNumbers } from '../../words/grammar.ts'
import { placeName } from '../../words/places.ts'
import { SCREENS } from '../keys.ts'
import type { Screen, ScreenName } from '../navigation.ts'
import { chip, SIGNS } from '../signs.ts'
import { cut, type Line, line, plain, type Span, spread, strong, widthOf } from '../text/line.ts'
import { cardNow, type Hall, perVersion, type Scene, type State } from './scene.ts'

/** The two rows at the top: the job with its balance, and the screens by name. */
export function headRows(scene: Hall | Scene, screen: Screen): [Line, Line] {
  const { width } = scene
  if (!('session' in scene)) {
    return [spread(line(strong('putback')), line('every piece in one place'), width), line(' ')]
  }
  const { session } = scene
  const { job } = session.state
  const isReadOnly = session.store.readOnly !== null || session.unlawful !== null
  const now = line(
    ` ${String(job.no).padStart(3, '0')}  `,
    ...(isReadOnly ? [chip(SIGNS.onlyToRead), plain('  ')] : []),
    strong(cardNow(session).phase),
    `  ${inHandText(scene)}`,
  )
  // A long name gives way to what is in hand and the space behind it, and never all of it.
  const name = cut(line(strong(job.name)), Math.max(LEAST_NAME, width - widthOf(now) - 1))
  const left = line(...name, ...now)
  const { long, short, brief } = perVersion(session, 'balance', () => balanceTexts(session.state))
  // Every part of the sum stands there where it has room, else in fewer letters, else the sum alone.
  const room = width - widthOf(left) - 2
  const balance = [long, short, brief].find((text) => widthOf(text) <= room) ?? ''
  return [spread(left, line(balance), width), tabs(screen, width)]
}

const LEAST_NAME = 8

/** What the next line fills, or the step that is being built up. */
function inHandText({ session, hand }: Scene): string {
  const { state } = session
  const container = hand ?? state.hand
  const steps = [state.build, state.strip].filter((no) => no !== null)
  const isFilled = container !== null && (state.strip !== null || state.build === null)
  const parts = [
    steps.length === 0 ? '' : stepNumbers(steps),
    isFilled ? bearerBrief(state, container) : '',
  ].filter(Boolean)
  return parts.length === 0 ? 'hands free' : `in hand: ${parts.join(', ')}`
}

function bearerBrief(state: State, no: number): string {
  return state.containers.has(no) ? placeName(state, `c${no}`) : `label ${no}`
}

/** The account of what is off, as a sum: `off 41 = 38 in containers + 3 on the bench`, `off 41 = 38 stored + 3 bench`. */
function balanceTexts(state: State): Record<'long' | 'short' | 'brief', string> {
  const { inContainers, onBench, onOthers, out, toCome, lost } = offBalance(state)
  const parts = [
    [inContainers, 'in containers', 'stored'],
    [onBench, 'on the bench', 'bench'],
    [onOthers, 'on other pieces', 'on others'],
    [out, 'out', 'out'],
    [toCome, 'to come', 'to come'],
    [lost, 'lost', 'lost'],
  ] as const
  const sum = parts.reduce((total, [count]) => total + count, 0)
  if (sum === 0) return { long: 'off 0', short: 'off 0', brief: 'off 0' }
  const there = parts.filter(([count]) => count > 0)
  return {
    brief: `off ${sum}`,
    long: `off ${sum} = ${there.map(([count, where]) => `${count} ${where}`).join(' + ')}`,
    short: `off ${sum} = ${there.map(([count, , where]) => `${count} ${where}`).join(' + ')}`,
  }
}

function tabs(screen: Screen, width: number): Line {
  const here = HOME_OF[screen.at] ?? screen.at
  // Closer together where the terminal is narrow.
  const isNarrow = width < SPACIOUS
  const gap = isNarrow ? '' : ' '
  const spans = SCREENS.flatMap(({ digit, name, screen: { at } }): Span[] => {
    const label = `.${digit} ${name}`
    return at === here ? [{ text: `[${label}]`, tone: 'here' }, plain(gap)] : [plain(` ${label} ${gap}`)]
  })
  return spread(spans, line(isNarrow ? '? ' : '? help '), width)
}

const SPACIOUS = 73

/** The main screen that a screen belongs to. */
const HOME_OF: Partial<Record<ScreenName, ScreenName>> = {
  step: 'back',
  proposals: 'back',
  qr: 'lies',
  count: 'lies',
  differences: 'lies',
  scan: 'lies',
  photos: 'lies',
  found: 'lies',
  finish: 'back',
  judge: 'due',
  compare: 'due',
  buy: 'due',
  arrivals: 'due',
  order: 'due',
  outing: 'due',
}
