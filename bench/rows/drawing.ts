import { stageCells } from '../../src/trade/position-drawing/cells.ts'
import { drawLayout } from '../../src/trade/position-drawing/draw-layout.ts'
import type { PositionLayout } from '../../src/trade/position-layout/position-layout.ts'
import { readLayout } from '../../src/trade/position-layout/read-layout.ts'
import { alternate, figure, median, type Printer, ratio, timeEach } from '../measure.ts'

const BOLTS = 200
const TIMES = 50

/** Drawing 200 bolts with the stage of each, against writing their names and signs in columns of one width. */
export async function run({ print }: Printer): Promise<void> {
  const names = Array.from({ length: BOLTS }, (_, index) => `${index + 1}`)
  const cells = stageCells({
    order: names,
    done: new Set(names.slice(0, BOLTS / 2)),
    next: { fastener: names[BOLTS / 2] ?? '', suspect: false },
    faulty: new Set(),
  })
  const drawn = (layout: PositionLayout, room: { width: number; height: number }) =>
    median(timeEach(TIMES, () => drawLayout(layout, cells, room)))
  const grid = laidOut('5x40', names)
  const circle = laidOut('circle', names)
  const [small = 0, large = 0, round = 0, plain = 0] = await alternate(5, [
    () => drawn(grid, { width: 80, height: 14 }),
    () => drawn(grid, { width: 240, height: 60 }),
    () => drawn(circle, { width: 240, height: 60 }),
    () => median(timeEach(TIMES, () => inColumns(names, cells, 80))),
  ])
  print(`in columns           ${figure(plain)}`)
  print(`5x40 on 80 by 24     ${figure(small)}, ${ratio(small, plain)}`)
  print(`5x40 on 240 by 70    ${figure(large)}, ${ratio(large, plain)}`)
  print(`circle on 240 by 70  ${figure(round)}, ${ratio(round, plain)}`)
}

function laidOut(form: string, names: readonly string[]): PositionLayout {
  const read = readLayout(form, names)
  if (!read.understood) throw new Error(`no layout: ${form}`)
  return read.value
}

/** The least that shows them all: no place of any of them. */
function inColumns(names: readonly string[], cells: ReturnType<typeof stageCells>, width: number): string[] {
  const texts = names.map((name) => ` ${name} ${cells.get(name)?.says ?? ''} `)
  const widest = Math.max(...texts.map(({ length }) => length))
  const perRow = Math.floor(width / widest)
  const rows: string[] = []
  for (let first = 0; first < texts.length; first += perRow) {
    rows.push(
      texts
        .slice(first, first + perRow)
        .map((text) => text.padEnd(widest))
        .join(''),
    )
  }
  return rows
}
