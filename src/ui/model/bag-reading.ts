import type { Reading } from '../../lines/reading.ts'
import { driveText } from '../../trade/drive.ts'
import { type Thread, threadsPerInch } from '../../trade/thread.ts'
import { type Line, line, strong } from '../text/line.ts'

type Bag = NonNullable<Extract<Reading, { kind: 'commands' }>['bag']>
type Item = Bag['items'][number]
type Piece = Extract<Item, { kind: 'fastener' | 'part' }>
type Question = Piece['questions'][number]

/** A bag line as it was understood, a row for each item: what will be recorded, and what to look at again. */
export function bagReading(bag: Bag): Line[] {
  return bag.items.flatMap((item) => [itemLine(item), ...questions(item).map((text) => line('  ? ', text))])
}

function itemLine(item: Item): Line {
  switch (item.kind) {
    case 'fastener':
    case 'part':
      return pieceLine(item)
    case 'connection':
      return line(strong(item.label ?? item.name), ` · ends: ${item.ends.join(' – ')}`)
    case 'aid':
      return line(
        strong(`${item.count} × ${item.name}`),
        ` · into the machine at ${item.positions?.join(', ') ?? item.where} · must come out`,
      )
    case 'tool':
      return line(strong(`${item.count} × ${item.name}`), ' · out of the toolbox')
    case 'fluid':
      return line(
        strong(`${item.name} ${item.direction}`),
        ` · ${litres(item.litres)} L`,
        item.direction === 'out' ? ' · to be filled again' : '',
      )
    case 'mark':
      return line(
        strong(item.on === undefined ? 'mark' : `mark on ${item.on}`),
        ` · ${item.text} · to be seen again`,
      )
    case 'note':
    case 'caution':
    case 'used':
      return line(strong(item.kind), ` · ${item.text}`)
    case 'minutes':
      return line(strong(`${item.minutes} min`))
    default:
      return item satisfies never
  }
}

function pieceLine(item: Piece): Line {
  const { count, should, missing, broken, thread, drive, washers, positions, alikeAt, singleUse } = item
  const facts = [
    ...(thread ? [threadFacts(thread)] : []),
    ...(drive ? [driveText(drive)] : []),
    ...(washers === undefined ? [] : [`with ${washers}`]),
    ...(missing > 0 ? [`${missing} of ${should} missing`] : []),
    ...(broken > 0 ? [`${broken} ${item.brokenHow ?? 'broken'}`] : []),
    ...(positions ? [`each to its own home: ${positions.join(' ')}`] : []),
    ...(alikeAt ? [`any of them at ${alikeAt.join(' ')}`] : []),
    ...(singleUse ? ['not fitted again'] : []),
    item.kind,
  ]
  return line(strong(`${count} × ${item.name}`), ` · ${facts.join(' · ')}`)
}

function threadFacts(thread: Thread): string {
  const perInch = threadsPerInch(thread)
  const pitch = perInch === undefined ? thread.pitchMm : `${perInch} per inch`
  const parts = [thread.size]
  if (pitch !== undefined && thread.system !== 'npt')
    parts.push(`pitch ${pitch}${thread.pitchAssumed ? ' assumed' : ''}`)
  if (thread.lengthMm !== undefined) parts.push(`length ${Number(thread.lengthMm.toFixed(2))} mm`)
  return parts.join(', ')
}

function questions(item: Item): string[] {
  return 'questions' in item ? item.questions.flatMap((question) => questionText(question) ?? []) : []
}

/** A question in words; null for what the row itself already says. */
function questionText(question: Question): string | null {
  switch (question.code) {
    case 'pitch-assumed':
    case 'count-assumed':
      return question.code === 'count-assumed' ? `no count: ${question.count} taken` : null
    case 'pitch-not-standard':
      return `${question.thread.size} has no pitch ${question.thread.pitchMm} in the standard: ${question.standardMm.join(', ')}?`
    case 'usually-single-use':
      return `a ${question.noun} is not often fitted again: "single-use" behind it says so`
    case 'count-large':
      return `${question.count} is a large number`
    case 'broken-or-missing':
      return `${question.broken} broken and ${question.missing} missing: the same ones?`
    case 'which-missing':
      return `which ${question.missing} of ${question.positions.join(', ')} are missing?`
    case 'drive-or-position':
      return `${question.typed} is taken for the drive; "at ${question.typed}" makes it a position`
    case 'drive-unusual':
      return `${driveText(question.drive)} is unusual on ${question.thread.size}${usual(question.usual)}`
    case 'unit-mix':
      return `${driveText(question.drive)} on ${question.thread.size} mixes millimetres and inches${usual(question.usual)}`
    default:
      return question satisfies never
  }
}

function usual(drives: readonly { drive: Parameters<typeof driveText>[0] }[]): string {
  const names = [...new Set(drives.map(({ drive }) => driveText(drive)))]
  return names.length === 0 ? '' : `: usual is ${names.join(' or ')}`
}

function litres(value: number): string {
  return String(Number(value.toFixed(2)))
}
