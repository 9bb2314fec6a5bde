/**
 * Letters and digits five rows high, drawn for this program: strokes two columns wide, so that they are as thick as
 * a row is high. `#` is ink. The digits share one width, so that numbers under each other line up.
 */
const drawings = `
0 |######|1 |  ##  |2 |######|3 |######|4 |##  ##|5 |######|6 |######|7 |######|8 |######|9 |######
  |##  ##|  | ###  |  |    ##|  |    ##|  |##  ##|  |##    |  |##    |  |    ##|  |##  ##|  |##  ##
  |##  ##|  |  ##  |  |######|  | #####|  |######|  |######|  |######|  |   ## |  |######|  |######
  |##  ##|  |  ##  |  |##    |  |    ##|  |    ##|  |    ##|  |##  ##|  |  ##  |  |##  ##|  |    ##
  |######|  | #### |  |######|  |######|  |    ##|  |######|  |######|  |  ##  |  |######|  |######

A | #### |B |##### |C |######|D |##### |E |######|F |######|G |######|H |##  ##|I |####|J |    ##
  |##  ##|  |##  ##|  |##    |  |##  ##|  |##    |  |##    |  |##    |  |##  ##|  | ## |  |    ##
  |######|  |##### |  |##    |  |##  ##|  |##### |  |##### |  |## ###|  |######|  | ## |  |    ##
  |##  ##|  |##  ##|  |##    |  |##  ##|  |##    |  |##    |  |##  ##|  |##  ##|  | ## |  |##  ##
  |##  ##|  |##### |  |######|  |##### |  |######|  |##    |  |######|  |##  ##|  |####|  |######

K |##  ##|L |##    |M |##   ##|N |##   ##|O | #### |P |##### |Q | ####  |R |##### |S | #####|T |######
  |## ## |  |##    |  |### ###|  |###  ##|  |##  ##|  |##  ##|  |##  ## |  |##  ##|  |##    |  |  ##
  |####  |  |##    |  |## # ##|  |## # ##|  |##  ##|  |##### |  |##  ## |  |##### |  | #### |  |  ##
  |## ## |  |##    |  |##   ##|  |##  ###|  |##  ##|  |##    |  |## ### |  |## ## |  |    ##|  |  ##
  |##  ##|  |######|  |##   ##|  |##   ##|  | #### |  |##    |  | ### ##|  |##  ##|  |##### |  |  ##

U |##  ##|V |##  ##|W |##   ##|X |##  ##|Y |##  ##|Z |######|/ |    ##|- |     |. |  |+ |      |: ||> |##   |, |  |@ | ##### |– |
  |##  ##|  |##  ##|  |##   ##|  | #### |  | #### |  |   ## |  |   ## |  |     |  |  |  |  ##  |  |##|  |  ## |  |  |  |##   ##|  |
  |##  ##|  |##  ##|  |## # ##|  |  ##  |  |  ##  |  |  ##  |  |  ##  |  |#####|  |  |  |######|  ||  |   ##|  |  |  |## ####|  |#####
  |##  ##|  | #### |  |### ###|  | #### |  |  ##  |  | ##   |  | ##   |  |     |  |  |  |  ##  |  |##|  |  ## |  |##|  |## ####|  |
  |######|  |  ##  |  |##   ##|  |##  ##|  |  ##  |  |######|  |##    |  |     |  |##|  |      |  ||  |##   |  | #|  | ###   |  |
`

/** The rows of each drawn character. */
export const GLYPHS: ReadonlyMap<string, readonly string[]> = readDrawings(drawings)

export const GLYPH_ROWS = 5

function readDrawings(text: string): Map<string, readonly string[]> {
  const glyphs = new Map<string, readonly string[]>()
  for (const block of text.trim().split('\n\n')) {
    const rows = block.split('\n').map((row) => row.split('|'))
    const names = rows[0] ?? []
    for (let column = 0; column + 1 < names.length; column += 2) {
      const cells = rows.map((row) => row[column + 1] ?? '')
      const width = Math.max(...cells.map(({ length }) => length))
      glyphs.set(
        (names[column] ?? '').trim(),
        cells.map((cell) => cell.padEnd(width)),
      )
    }
  }
  return glyphs
}
