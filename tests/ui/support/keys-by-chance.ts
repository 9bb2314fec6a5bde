import { labelCode, MACHINE_NUMBER, stepNumber } from '../../../src/label/code.ts'
import { verbs } from '../../../src/lines/verbs.ts'
import type { Desk } from '../../../src/ui/desk/desk.ts'
import type { Chance } from '../../support/damage/chance.ts'

/** Keys that are pressed one after the other before anything else can be. */
export function keysByChance(chance: Chance, desk: Desk): string[] {
  return oneOf(KINDS, chance)(chance, desk)
}

type Maker = (chance: Chance, desk: Desk) => string[]

/** What may be pressed: what is named more often here is pressed more often. */
const KINDS: readonly Maker[] = [
  ...times(6, (chance) => [anyDigit(chance)]),
  ...times(12, () => ['\r']),
  ...times(12, (chance) => [anyDigit(chance), '\r']),
  ...times(3, () => ['\x7f']),
  ...times(3, (chance) => [oneOf([...'.*+-'], chance)]),
  ...times(3, (chance) => ['.', anyDigit(chance), '\r']),
  ...times(3, (chance, desk) => [...anyCode(chance, desk), oneOf(['\r', '\t', '\n'], chance)]),
  ...times(3, (chance) => [...anyLine(chance), '\r']),
  ...times(1, (chance) => [...anyLine(chance)]),
  ...times(5, (chance, desk) => ['\x15', ...aboutTheJob(chance, desk), '\r']),
  ...times(3, (chance) => [oneOf(SEQUENCES, chance)]),
  ...times(1, (chance) => [oneOf([...'abcdefghijklmnopqrstuvwxyz?@,;: '], chance)]),
  ...times(1, (chance) => [brokenText(chance)]),
  ...times(1, (chance) => [`\x1b[200~${anyLine(chance)}\n${anyLine(chance)}\x1b[201~`]),
  ...times(2, () => ['\x15', '0', '\r']),
  ...times(1, (chance) => [...oneOf(WORDS, chance), '\r']),
  ...times(2, () => ['\x15']),
]

function anyDigit(chance: Chance): string {
  return String(chance.whole(0, chance.whole(0, 2) === 0 ? 9 : 4))
}

function times(count: number, maker: Maker): Maker[] {
  return Array<Maker>(count).fill(maker)
}

const SEQUENCES = [
  ...['\x1b[A', '\x1b[B', '\x1b[C', '\x1b[D', '\x1b[H', '\x1b[F', '\x1b[5~', '\x1b[6~', '\x1b[3~'],
  ...['\x1b', '\x1b\x1b', '\x1bOP', '\x1b[15~', '\x1b[', '\x01', '\x05', '\x15', '\x03'],
]

const WORDS = ['quit', 'jobs', '?', '? tighten', 'told', 'sound', 'label', 'proposals', 'log', 'undo', 'redo']

const EXAMPLES = verbs.flatMap(({ examples }) => examples)

/** A line that somebody could write, with something of another one in it now and then. */
function anyLine(chance: Chance): string {
  const words = oneOf(EXAMPLES, chance).split(' ')
  const other = oneOf(EXAMPLES, chance).split(' ')
  switch (chance.whole(0, 5)) {
    case 0:
      words.splice(chance.whole(0, words.length - 1), 1)
      break
    case 1:
      words.splice(chance.whole(0, words.length), 0, oneOf(other, chance))
      break
    case 2:
      words[chance.whole(0, words.length - 1)] = oneOf(other, chance)
      break
  }
  return words.join(' ').replace(/\d+/g, (number) => (chance.whole(0, 2) === 0 ? number : anyNumber(chance)))
}

/** A line about what is there: its pieces, steps and tightenings by their ids. */
function aboutTheJob(chance: Chance, desk: Desk): string {
  const state = desk.session?.state
  if (!state) return ''
  const piece = oneOf([...state.ledger.accounts.keys()], chance) ?? 'p1'
  const name = state.ledger.accounts.get(piece)?.piece.name ?? ''
  const step = oneOf([...state.steps.keys()], chance) ?? 1
  const bag = oneOf([...state.containers.keys()], chance) ?? 1
  const tightening = oneOf([...state.tightenings.keys()], chance) ?? 't1'
  return oneOf(
    [
      `fit ${piece}`,
      `fit ${name}`,
      `move ${piece} to bench`,
      `move ${name} to ${bag}`,
      `take ${step}`,
      `reopen ${step} because it leaks`,
      `override start ${step} because I know`,
      `count ${bag}`,
      `turn ${tightening}`,
      `judge ${piece} replace because worn`,
      `accept ${piece}`,
      `scrap ${piece}`,
      `begin ${name} off`,
      `off 3 M6x20 bolts into ${bag}`,
      `void ${bag}`,
      `draw ${piece}`,
      `where ${name}`,
    ],
    chance,
  )
}

function anyCode(chance: Chance, { session }: Desk): string {
  if (!session) return labelCode(chance.whole(1, 3), chance.whole(1, 20))
  const { job, containers, steps } = session.state
  const numbers = [MACHINE_NUMBER, ...containers.keys(), ...[...steps.keys()].map(stepNumber)]
  const code = labelCode(job.no, oneOf(numbers, chance))
  // A digit misread, now and then.
  return chance.whole(0, 9) === 0 ? code.replace(/\d$/, (digit) => String((Number(digit) + 1) % 10)) : code
}

function anyNumber(chance: Chance): string {
  return String(chance.whole(0, chance.whole(0, 19) === 0 ? 99_999 : 12))
}

/** Bytes as they may come over a bad line, read as the terminal's text. */
function brokenText(chance: Chance): string {
  const bytes = Array.from({ length: chance.whole(1, 8) }, () => chance.whole(0, 255))
  // Ctrl-C would leave each time.
  return Buffer.from(bytes.filter((byte) => byte !== 3)).toString('utf8')
}

function oneOf<Thing>(things: readonly Thing[], chance: Chance): Thing {
  return things[chance.whole(0, things.length - 1)] as Thing
}
