import { readFileSync } from 'node:fs'
import { performLine } from '../../src/cli/perform-line.ts'
import type { Result } from '../../src/cli/result.ts'
import { type Entry, parseEntry } from '../../src/journal/entry.ts'
import { auditLedger } from '../../src/ledger/laws.ts'
import { verbs } from '../../src/lines/verbs.ts'
import { Session } from '../../src/session/session.ts'
import { type Chance, chanceOf } from '../support/damage/chance.ts'
import { JournalInMemory } from '../support/journal-in-memory.ts'
import { type FuzzReport, faultOf, newReport, note, steers } from './fuzz-report.ts'
import { HOSTILE_TEXTS } from './hostile-texts.ts'

/** How many lines are told to one session before it is back where it began. */
const BATCH = 250

/** Lines as nobody would type them, told to jobs in memory; each has to be answered, and the laws to hold. */
export function fuzzLines(jobs: readonly (readonly Entry[])[], count: number, seed: number): FuzzReport {
  const chance = chanceOf(seed)
  const report = newReport()
  while (report.tried < count) {
    const session = new Session(new JournalInMemory(jobs[(report.tried / BATCH) % jobs.length]).opened(), {
      now: CLOCK,
    })
    for (let told = 0; told < BATCH && report.tried < count; told += 1)
      tell(session, lineByChance(chance), report)
    const broken = auditLedger(session.state.ledger)
    if (broken.length > 0) report.faults.push(`a law: ${JSON.stringify(broken)}`)
    const again = new Session(new JournalInMemory(session.entries()).opened(), { now: CLOCK })
    if (again.unlawful) report.faults.push(`not read back: ${again.unlawful.message}`)
  }
  return report
}

const CLOCK = () => new Date(Date.UTC(2030, 0, 15, 8))

function tell(session: Session, line: string, report: FuzzReport): void {
  const from = performance.now()
  const came = answerTo(session, line)
  note(report, line, came, performance.now() - from)
}

function answerTo(session: Session, line: string): string {
  try {
    const result = performLine(session, line, {
      drawing: { colour: false, invert: false },
      otherJob: () => null,
    })
    return 'errand' in result ? `errand ${result.errand.errand}` : judged(result)
  } catch (error) {
    return faultOf(error)
  }
}

/** What an answer must be: words for a person in single lines, and entries that are read back as they are. */
function judged(result: Result): string {
  const words = result.ok ? result.text : [result.told.what, ...result.told.lines, result.told.cure]
  const steering = words.find(steers)
  if (steering !== undefined) return `fault: said ${JSON.stringify(steering.slice(0, 200))}`
  if (!result.ok && (result.told.what.trim() === '' || result.code === '')) return 'fault: nothing was said'
  for (const entry of result.entries ?? []) {
    const again = parseEntry(JSON.parse(JSON.stringify(entry)))
    if (JSON.stringify(again) !== JSON.stringify(entry)) return 'fault: read back as something else'
  }
  return result.ok ? (result.entries ? 'recorded' : 'answered') : result.code
}

/** Lines and parts of lines that the program itself gives as examples, and those of the demo. */
const EXAMPLES = verbs.flatMap(({ examples }) => examples)
const DEMO = readFileSync(new URL('jobs/demo/blue-twin.txt', `file://${process.cwd()}/`), 'utf8')
  .split('\n')
  .filter((line) => line !== '' && !/^(?:#|==)/.test(line))
const WORDS = [...new Set([...EXAMPLES, ...DEMO].flatMap((line) => line.split(/[ ,:]+/)))]
const BEGINNINGS = verbs.flatMap(({ words }) => words)
const GLUE = [
  ' ',
  ' ',
  ' ',
  ' ',
  '',
  ', ',
  ': ',
  ' / ',
  '; ',
  '..',
  ' x ',
  ' to ',
  ' into ',
  ' with ',
  ' because ',
  ' and ',
]

const NUMBERS = [
  '0',
  '-0',
  '1',
  '2',
  '7',
  '99',
  '9999',
  '10000',
  '99999999999999999999',
  '1e999',
  '-1',
  '1.5',
  '1,5',
  '0x10',
  'NaN',
  'Infinity',
  '1/0',
  '1/2',
  '½',
  '٣',
  '１２',
  '1..4',
  '4..1',
  '1..99999999',
  '1-2-3',
  '+1',
  '1e-9',
  '.5',
  '5.',
  '1.2.3',
]
const IDS = 'pcstmxqgkobhdflyw'
const PROTOTYPE = [
  'constructor',
  '__proto__',
  'prototype',
  'toString',
  'valueOf',
  'hasOwnProperty',
  'then',
  'length',
]

/** A line out of real words and near misses, numbers, codes and any characters. */
export function lineByChance(chance: Chance): string {
  const pick = <T>(list: readonly T[]): T => list[chance.whole(0, list.length - 1)] as T
  const word = (): string => {
    switch (chance.whole(0, 11)) {
      case 0:
        return pick(NUMBERS)
      case 1:
        return `${pick([...IDS])}${pick(NUMBERS)}`
      case 2:
        return pick(HOSTILE_TEXTS)[1]
      case 3:
        return pick(PROTOTYPE)
      case 4:
        return codeByChance(chance)
      case 5:
        return String.fromCodePoint(
          ...Array.from({ length: chance.whole(1, 6) }, () => pointByChance(chance)),
        )
      default:
        return pick(WORDS)
    }
  }
  const words = (most: number) =>
    Array.from({ length: chance.whole(1, most) }, word).reduce((line, next) => `${line}${pick(GLUE)}${next}`)
  switch (chance.whole(0, 9)) {
    case 0:
      return words(8)
    case 1:
    case 2:
      return `${pick(BEGINNINGS)} ${words(6)}`
    case 3:
    case 4:
      return slipped(pick(EXAMPLES), chance)
    case 5:
      return slipped(pick(DEMO), chance)
    case 6:
      return `${pick([...EXAMPLES, ...DEMO])}${pick(GLUE)}${words(3)}`
    case 7:
      return crossed(pick(EXAMPLES), pick(DEMO), chance)
    case 8:
      return pick(DEMO)
    default:
      return chance.whole(0, 60) === 0 ? veryLong(words(4), chance) : `${pick(BEGINNINGS)} ${word()}`
  }
}

function codeByChance(chance: Chance): string {
  const digits = Array.from({ length: chance.whole(7, 10) }, () => chance.whole(0, 9)).join('')
  return chance.whole(0, 2) === 0 ? digits : `${digits.slice(0, 3)} ${digits.slice(3, 7)} ${digits.slice(7)}`
}

/** Any character: most of them from where scripts, signs and controls lie close together. */
function pointByChance(chance: Chance): number {
  const point = chance.whole(0, 3) === 0 ? chance.whole(0, 0x10ffff) : chance.whole(0, 0x2fff)
  return point >= 0xd800 && point <= 0xdfff ? 0xfffd : point
}

/** A line with some slips of the finger: a sign lost, doubled, exchanged, put in. */
function slipped(line: string, chance: Chance): string {
  let text = line
  for (let slips = chance.whole(1, 4); slips > 0; slips -= 1) {
    const at = chance.whole(0, text.length)
    const length = chance.whole(0, 3)
    const put = [
      '',
      text.slice(at, at + length).repeat(2),
      String.fromCodePoint(pointByChance(chance)),
      NUMBERS[chance.whole(0, NUMBERS.length - 1)] ?? '',
      ' ',
    ][chance.whole(0, 4)]
    text = `${text.slice(0, at)}${put}${text.slice(at + length)}`
  }
  return text
}

function crossed(one: string, other: string, chance: Chance): string {
  return one.slice(0, chance.whole(0, one.length)) + other.slice(chance.whole(0, other.length))
}

/** Up to a million signs: the same again and again, which is what patterns are slowest with. */
function veryLong(text: string, chance: Chance): string {
  const length = 10 ** chance.whole(3, 6)
  return `${text}${chance.whole(0, 1) === 0 ? '' : ' '}`
    .repeat(Math.ceil(length / (text.length + 1)))
    .slice(0, length)
}
