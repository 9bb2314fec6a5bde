/**
 * A table as RFC 4180 has it: lines end in CR LF, and a cell with a comma, a quote or a line end is quoted. A cell that a
 * spreadsheet would take for a formula gets an apostrophe in front, as OWASP advises against CSV injection: the signs of full
 * width too, and behind spaces, which some programs leave out.
 */
export function csvTable(rows: readonly (readonly string[])[]): string {
  return rows.map((row) => `${row.map(csvCell).join(',')}\r\n`).join('')
}

function csvCell(text: string): string {
  const plain = FORMULA.test(text) ? `'${text}` : text
  return /[",\r\n]/.test(plain) ? `"${plain.replace(/"/g, '""')}"` : plain
}

const FORMULA = /^(?:\s*[=+\-@\uff1d\uff0b\uff0d\uff20]|[\t\r\n])/u
