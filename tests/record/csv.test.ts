import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { csvTable } from '../../src/record/csv.ts'
import { readCsv } from '../hostile/read-csv.ts'

describe('a table of text, as RFC 4180 has it', () => {
  // RFC 4180, section 2: rule 1 (each record on a line, delimited by CRLF), rules 5 to 7 (quotes)
  test.each([
    [[['aaa', 'bbb', 'ccc']], 'aaa,bbb,ccc\r\n'],
    [
      [
        ['aaa', 'b\r\nbb', 'ccc'],
        ['zzz', 'yyy', 'xxx'],
      ],
      'aaa,"b\r\nbb",ccc\r\nzzz,yyy,xxx\r\n',
    ],
    [[['aaa', 'b"bb', 'ccc']], 'aaa,"b""bb",ccc\r\n'],
    [[['3,20', '', ' ']], '"3,20",, \r\n'],
    [[], ''],
  ])('%j', (rows, text) => {
    expect(csvTable(rows)).toBe(text)
  })

  // OWASP, CSV Injection: cells that begin with = + - @, their full-width forms, a tab or a line end, prepended with a single quote
  test.each([
    ['=1+2', "'=1+2"],
    ['+49 30', "'+49 30"],
    ['-2', "'-2"],
    ['@name', "'@name"],
    ['\tx', "'\tx"],
    ['\rx', '"\'\rx"'],
    ['=HYPERLINK("x")', '"\'=HYPERLINK(""x"")"'],
    [' =1+2', "' =1+2"],
    ['\u00a0@x', "'\u00a0@x"],
    ['\nx', '"\'\nx"'],
    ['\uff1d1+2', "'\uff1d1+2"],
    ['a=b', 'a=b'],
    ['3-5', '3-5'],
  ])('the cell %j cannot be taken for a formula', (cell, text) => {
    expect(csvTable([[cell]])).toBe(`${text}\r\n`)
  })

  test('what is written is read back, cell by cell', () => {
    const cells = fc.oneof(fc.string({ maxLength: 8 }), fc.constantFrom(',', '"', '\r\n', '=', "'", ';', 'é'))
    const rows = fc.array(fc.array(cells, { minLength: 1, maxLength: 4 }), { maxLength: 5 })
    fc.assert(
      fc.property(rows, (table) => {
        const back = readCsv(csvTable(table))
        expect(back.map((row) => row.map(withoutGuard))).toEqual(table.map((row) => row.map(withoutGuard)))
      }),
      { seed: 20261130, numRuns: 500 },
    )
  })
})

function withoutGuard(cell: string): string {
  return cell.replace(/^'(?=\s*[=+\-@\uff1d\uff0b\uff0d\uff20]|[\t\r\n])/u, '')
}
