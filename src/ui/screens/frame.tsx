import { Box } from 'ink'
import { useInsertionEffect } from 'react'
import { largeRows } from '../controls/big-letters/large-rows.ts'
import { lineView } from '../controls/line/line-view.ts'
import { windowAt } from '../controls/list-window.ts'
import type { Desk } from '../desk/desk.ts'
import { belowLine, bodyHeight, isTooSmall, type Size, SMALLEST } from '../layout.ts'
import { headRows } from '../model/head.ts'
import type { Page } from '../page.ts'
import type { Cursor } from '../terminal/terminal.ts'
import { blank, brief, cut, type Line, line, plain, strong, widthOf } from '../text/line.ts'
import { Row } from './row.tsx'

interface FrameProps {
  desk: Desk
  size: Size
  colour: boolean
  placeCursor(place: Cursor | undefined): void
}

/** Everything that is shown, drawn from what the desk says. */
export function Frame({ desk, size, colour, placeCursor }: FrameProps) {
  const { rows, cursor } = isTooSmall(size) ? tooSmall(size) : frameRows(desk, size)
  // The one kind of effect that runs before Ink hands the frame over.
  useInsertionEffect(() => {
    placeCursor(cursor)
  })
  return (
    <Box flexDirection="column" height={size.height} width={size.width}>
      {rows.map((row, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a row of the screen is its place and nothing else
        <Row key={index} line={row} colour={colour} />
      ))}
    </Box>
  )
}

interface Drawn {
  rows: Line[]
  cursor: Cursor | undefined
}

/** The rows of a whole frame, and where the cursor stands in it. */
export function frameRows(desk: Desk, size: Size): Drawn {
  const { width } = size
  const page = desk.page()
  const below = belowLine(size, desk)
  const height = bodyHeight(size, desk)
  const { rows: body, more } = bodyRows(page, desk, width, height)
  const { before, after } = desk.typed()
  const view = lineView(before, after, width)
  const above = desk.above()
  const [job, tabs] = headRows(desk.scene(), desk.screen)
  return {
    rows: [
      job,
      tabs,
      rule(page.title, [], width),
      ...above,
      ...body,
      rule(enterLabel(desk, page), more, width),
      view.row,
      ...below,
    ],
    cursor: { x: view.cursor, y: 3 + above.length + body.length + 1 },
  }
}

function bodyRows(page: Page, desk: Desk, width: number, height: number): { rows: Line[]; more: Line } {
  const large = desk.isLarge && page.large ? largeRows(page.large, width, height) : null
  if (large) return { rows: filled(large, height), more: [] }
  const top = page.top.slice(0, height)
  const window = windowAt(page.rows.length, height - top.length, desk.scroll ?? page.start ?? 0)
  const shown = Array.from({ length: window.count }, (_, index) =>
    cut(page.rows.at(window.first + index), width),
  )
  const { above, below } = window
  const more = [above > 0 ? `- ${above} above` : '', below > 0 ? `+ ${below} below` : '']
    .filter(Boolean)
    .join('  ')
  return { rows: filled([...top, ...shown], height), more: more === '' ? [] : line(strong(more)) }
}

function filled(rows: readonly Line[], height: number): Line[] {
  return [...rows.slice(0, height), ...Array<Line>(Math.max(0, height - rows.length)).fill(blank)]
}

/** What Enter does now, on the rule above the line. */
function enterLabel(desk: Desk, page: Page): Line {
  const { before, after } = desk.typed()
  if (before + after === '')
    return page.enter ? line(strong('Enter'), ` ${page.enter.says}`) : line('Type a number or words')
  const standing = desk.standing()
  if (standing === 'kept')
    return line('kept: ', strong('Enter'), ' tries it again; type over it, a space goes on with it')
  if (standing === 'not-taken')
    return line('not taken: type over it; ', strong('Enter'), ' clears it, a space mends it')
  const meaning = desk.meaning()
  if (meaning.kind !== 'act') return line('Enter: not yet; Esc clears the line')
  const isRecord = meaning.act.do === 'send'
  return meaning.says.length === 1 && !isRecord
    ? line(strong('Enter'), ' ', meaning.says[0] ?? '')
    : line(strong('Enter'), isRecord ? ' records' : '')
}

/** A rule with a text at its beginning and one at its end. */
function rule(left: Line, right: Line, width: number): Line {
  const end = right.length === 0 ? [] : line(' ', right, ' ─')
  const start = brief(line('─ ', left, left.length === 0 ? '' : ' '), width - widthOf(end) - 1)
  return [...start, plain('─'.repeat(Math.max(0, width - widthOf(start) - widthOf(end)))), ...end]
}

function tooSmall({ width, height }: Size): Drawn {
  const text = [
    `This window is too small:`,
    `${width} by ${height}.`,
    `putback needs ${SMALLEST.width} by ${SMALLEST.height}.`,
    'Nothing is lost.',
  ]
  return { rows: text.slice(0, Math.max(1, height)).map((row) => cut(line(row), width)), cursor: undefined }
}
