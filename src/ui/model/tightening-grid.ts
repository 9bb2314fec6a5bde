import type { Todo } from '../../session/views.ts'
import { cut, type Line, line, plain, strong } from '../text/line.ts'

type Turn = Extract<Todo, { kind: 'turn' }>
type Tightening = Pick<Turn['tightening'], 'passes' | 'order' | 'done'>

/** A tightening as a grid: a row for each pass, a column for each fastener in the order of turning. */
export function tighteningGrid(tightening: Tightening, next: Turn['next'] | null, width: number): Line[] {
  const { passes, order, done } = tightening
  const label = Math.min(18, Math.max(...passes.map(({ typed }) => typed.length)) + 3)
  const cell = Math.max(...order.map(({ length }) => length)) + 2
  const perRow = Math.max(1, Math.floor((width - 5 - label) / cell))
  const rows: Line[] = []
  for (let first = 0; first < order.length; first += perRow) {
    const part = order.slice(first, first + perRow)
    rows.push(line(' '.repeat(5 + label), ...part.map((name) => strong(name.padStart(cell)))))
    for (const [pass, { typed }] of passes.entries()) {
      const cells = part.map((name) => {
        const isNext = next?.pass === pass && next.fastener === name
        if (!isNext) return plain((done[pass]?.has(name) ? '✓' : '·').padStart(cell))
        return strong((next.suspect ? '?' : '>').padStart(cell))
      })
      rows.push(line('     ', ...padLabel(`${pass + 1}  ${typed}`, label), ...cells))
    }
  }
  return rows
}

function padLabel(text: string, width: number): Line {
  const [span] = cut([plain(text)], width)
  return [plain((span?.text ?? '').padEnd(width))]
}
