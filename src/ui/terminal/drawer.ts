import type { Cursor } from './terminal.ts'

// Shown as one by terminals that know it, so that no half of a frame is seen; the others pass over it.
const BEGIN = '\x1b[?2026h'
const END = '\x1b[?2026l'

/** Turns frames into the bytes that change the screen from the last one to the next. */
export function drawer() {
  let shown: string[] = []
  return {
    draw(frame: string, height: number, cursor: Cursor | undefined): string {
      const rows = frame.split('\n').slice(0, height)
      let bytes = ''
      let changed = 0
      for (let row = 0; row < Math.max(rows.length, shown.length); row += 1) {
        if (rows[row] === shown[row]) continue
        changed += 1
        // Erased first: after a row of full width, erasing to its end would take its last character.
        bytes += `\x1b[${row + 1};1H\x1b[0m\x1b[2K${rows[row] ?? ''}`
      }
      shown = rows
      const drawn = changed > 1 ? `${BEGIN}${bytes}\x1b[0m${END}` : `${bytes}\x1b[0m`
      const place = cursor ? `\x1b[${cursor.y + 1};${cursor.x + 1}H\x1b[?25h` : ''
      return `\x1b[?25l${drawn}${place}`
    },
    /** Nothing that was drawn is on the screen any more. */
    forget() {
      shown = []
    },
  }
}
