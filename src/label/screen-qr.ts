import qrcode from 'qrcode-terminal'

/**
 * The QR symbol of a nine-digit label code for the terminal: 15 lines of 29 columns, two modules a character in
 * half blocks, with the quiet zone of four modules that ISO/IEC 18004 asks for.
 *
 * With `colour` every line sets black on white by itself, so the theme of the terminal does not matter. Without,
 * the terminal's own colours are used: a dark theme is assumed, and `invert` draws for a light one. Drawn for the
 * wrong theme the symbol comes out as its negative, which many hand scanners do not read.
 * @throws RangeError when the code is not nine digits.
 */
export function screenQr(code: string, options: { colour: boolean; invert?: boolean }): string[] {
  const matrix = qrMatrix(code)
  const drawn = options.colour || options.invert === true
  const isDark = (row: number, column: number) => matrix[row]?.[column] ?? false
  const lines: string[] = []
  for (let row = -quietZone; row < matrix.length + quietZone; row += 2) {
    let line = ''
    for (let column = -quietZone; column < matrix.length + quietZone; column++) {
      line += halfBlock(isDark(row, column) === drawn, isDark(row + 1, column) === drawn)
    }
    lines.push(options.colour ? blackOnWhite + line + plain : line)
  }
  return lines
}

/**
 * The modules of the QR symbol of a nine-digit label code, row by row from the top left, true for dark, without a
 * quiet zone. Error correction level Q: the highest at which nine characters in byte mode fit version 1 (21 by 21).
 * @throws RangeError when the code is not nine digits.
 */
export function qrMatrix(code: string): boolean[][] {
  if (!/^[0-9]{9}$/.test(code)) throw new RangeError(`Not nine digits: "${code}"`)
  let drawing = ''
  // setErrorLevel sets a property of what it is called on, the shared module as a rule. On an object that
  // inherits from it the level stays ours.
  const atLevelQ: typeof qrcode = Object.create(qrcode)
  atLevelQ.setErrorLevel('Q')
  atLevelQ.generate(code, { small: true }, (text) => {
    drawing = text
  })
  return readDrawing(drawing)
}

const quietZone = 4
// Entries 16 and 231 of the 256-colour palette are pure black and white, and unlike the first sixteen
// no theme changes them.
const blackOnWhite = '\x1b[38;5;16;48;5;231m'
const plain = '\x1b[0m'

function halfBlock(top: boolean, bottom: boolean): string {
  if (top) return bottom ? '█' : '▀'
  return bottom ? '▄' : ' '
}

// The library draws light modules as blocks, two rows a line, with a border of one module all round.
function readDrawing(drawing: string): boolean[][] {
  const lines = drawing.split('\n').slice(1)
  const size = (lines[0]?.length ?? 0) - 2
  return Array.from({ length: size }, (_, row) => {
    const light = row % 2 === 0 ? '█▀' : '█▄'
    return [...(lines[row >> 1] ?? '').slice(1, -1)].map((character) => !light.includes(character))
  })
}
