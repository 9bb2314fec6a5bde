/** What the names that the screens use come out as on terminals as they are delivered. */
export const NAMED_PALETTES: readonly (readonly [terminal: string, Record<Name, string>])[] = [
  // The table of colours in the article "ANSI escape code" of Wikipedia, as of 2013 and later: VGA, which the Linux
  // console has as well (default_red, default_grn and default_blu in drivers/tty/vt/vt.c).
  ['VGA', { black: '#000000', greenBright: '#55ff55', yellowBright: '#ffff55', cyanBright: '#55ffff' }],
  // The same table; xterm's own is in XTerm-col.ad.
  ['xterm', { black: '#000000', greenBright: '#00ff00', yellowBright: '#ffff00', cyanBright: '#00ffff' }],
  // The same table.
  [
    'Windows XP',
    { black: '#000000', greenBright: '#00ff00', yellowBright: '#ffff00', cyanBright: '#00ffff' },
  ],
  // The same table.
  ['macOS', { black: '#000000', greenBright: '#31e722', yellowBright: '#eaec23', cyanBright: '#14f0f0' }],
  // The same table.
  ['PuTTY', { black: '#000000', greenBright: '#55ff55', yellowBright: '#ffff55', cyanBright: '#55ffff' }],
  // The scheme "Campbell", with which the Windows console and its successor come; published as a list of values.
  ['Windows', { black: '#0c0c0c', greenBright: '#16c60c', yellowBright: '#f9f1a5', cyanBright: '#61d6d6' }],
]

type Name = 'black' | 'greenBright' | 'yellowBright' | 'cyanBright'

/**
 * A colour of the 256 by its number, 16 or more, as xterm defines them (256colres.h, made by 256colres.pl): a cube of
 * six levels each, then grey from 8 in steps of 10.
 */
export function settledColour(number: number): string {
  if (number < 16 || number > 255) throw new RangeError(`no settled colour: ${number}`)
  const cell = number - 16
  const levels =
    number < 232
      ? [Math.floor(cell / 36), Math.floor(cell / 6) % 6, cell % 6].map((level) => CUBE[level] ?? 0)
      : Array<number>(3).fill(8 + 10 * (number - 232))
  return `#${levels.map((level) => level.toString(16).padStart(2, '0')).join('')}`
}

const CUBE = [0x00, 0x5f, 0x87, 0xaf, 0xd7, 0xff]
