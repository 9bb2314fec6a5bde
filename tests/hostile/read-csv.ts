/** Reads a table one character after the other, by the grammar of RFC 4180. */
export function readCsv(text: string): string[][] {
  const rows: string[][] = []
  let row: string[] = []
  let cell = ''
  let isQuoted = false
  for (let at = 0; at < text.length; at++) {
    const character = text.charAt(at)
    if (isQuoted) {
      if (character !== '"') cell += character
      else if (text.charAt(at + 1) === '"') {
        cell += '"'
        at += 1
      } else isQuoted = false
    } else if (character === '"') isQuoted = true
    else if (character === ',') {
      row.push(cell)
      cell = ''
    } else if (character === '\r' && text.charAt(at + 1) === '\n') {
      rows.push([...row, cell])
      row = []
      cell = ''
      at += 1
    } else cell += character
  }
  return rows
}
