import { expect, test } from 'vitest'
import { escapeFilter } from '../../src/label/escape-filter.ts'

test.each([
  ['plain text', 'valve cover é🔩', 'valve cover é🔩'],
  ['an arrow key', 'a\x1b[Ab', 'ab'],
  ['an arrow key with parameters', 'a\x1b[1;5Cb', 'ab'],
  ['an arrow key in application mode', 'a\x1bOAb', 'ab'],
  ['a function key', 'a\x1b[15~b', 'ab'],
  ['an eight-bit control sequence', 'a\x9b15~b', 'ab'],
  ['an intermediate byte', 'a\x1b[?2026;2$yb', 'ab'],
  ['ESC alone', 'a\x1b', 'a'],
  ['ESC twice', 'a\x1b\x1b[Ab', 'ab'],
  ['Alt with a letter', '\x1bx', 'x'],
  ['Alt with Backspace', 'a\x1b\x7f', 'a\x7f'],
  ['a control inside a control sequence ends it', 'a\x1b[2\x7fb', 'a\x7fb'],
  ['a control sequence that the line ends gives back what it took', 'a\x9b017000412\rb', 'a017000412\rb'],
  ['a colour report ended by BEL', 'a\x1b]11;rgb:00/00/00\x07b', 'ab'],
  ['a colour report ended by ST', 'a\x1b]11;rgb:00/00/00\x1b\\b', 'ab'],
  ['a colour report in eight-bit controls', 'a\x9d11;rgb:00/00/00\x9cb', 'ab'],
  ['an unfinished report ends with the line, and no Enter is left of it', 'a\x1b]11;rgb\rb', 'ab'],
  ['an unfinished report ends with the next sequence', 'a\x1b]11;rgb\x1b[Ab', 'ab'],
  ['a device report', 'a\x1bP>|term 1.0\x1b\\b', 'ab'],
  ['ESC, then a scan with a symbology identifier', '\x1b]Q3017004295\r', ']Q3017004295\r'],
  ['paste marks lose their ESC only', '\x1b[200~text\x1b[201~', '[200~text[201~'],
  ['paste marks without ESC', '[200~text[201~', '[200~text[201~'],
])('%s', (_, typed, kept) => {
  const take = escapeFilter()
  expect([...typed].map(take).join('')).toBe(kept)
})
