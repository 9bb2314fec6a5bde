import type { Reading } from '../../lines/reading.ts'
import { driveText } from '../../trade/drive.ts'
import { type Thread, threadsPerInch, threadText } from '../../trade/thread.ts'
import { classText, type FastenerClass } from '../../trade/torque/fastener-class.ts'
import { questionText } from '../../words/bag-questions.ts'
import { type Line, line, strong } from '../text/line.ts'
import { withWords } from './rows.ts'

type Bag = NonNullable<Extract<Reading, { kind: 'commands' }>['bag']>
type Item = Bag['items'][number]
type Piece = Extract<Item, { kind: 'fastener' | 'part' }>

/** A bag line as it was understood, a row for each item: what will be recorded, and what to look at again. */
export function bagReading(bag: Bag): Line[] {
  return bag.items.flatMap((item) => [
    itemLine(item),
    ...questions(item).map((text) => line('? ', ...withWords(text))),
  ])
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
  const {
    count,
    should,
    missing,
    broken,
    thread,
    fastenerClass,
    drive,
    washers,
    positions,
    alikeAt,
    singleUse,
  } = item
  const facts = [
    ...(thread ? [threadFacts(thread)] : []),
    ...(fastenerClass ? [classFacts(fastenerClass)] : []),
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

/** `class 8.8`, `grade 5` */
function classFacts(fastenerClass: FastenerClass): string {
  return fastenerClass.standard === 'ISO 898-1'
    ? `class ${classText(fastenerClass)}`
    : classText(fastenerClass)
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
  if (!('questions' in item)) return []
  const open = item.questions.filter(({ code }) => code !== 'pitch-assumed')
  return open.map((question) => questionText(question, { thread: threadText, drive: driveText }))
}

function litres(value: number): string {
  return String(Number(value.toFixed(2)))
}
