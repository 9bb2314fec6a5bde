import type { Entry, EntryOf } from '../../src/journal/entry.ts'

interface Sheet {
  pieces: string[]
  spots: string[]
}

/** Sketches of where positions lie and slips with readings: the third part of the naive model. */
export class NaiveDrawings {
  #sheets: Sheet[] = []
  readonly slips: string[] = []

  read(entry: Entry): void {
    if (entry.type === 'laid-out') this.#draw(entry)
    if (entry.type === 'measured') {
      const { id, name, measurement } = entry.measure
      if (measurement.readings.length === 0) throw new Error(`${id} is a slip without a reading`)
      this.slips.push(`${id} ${name} ${measurement.readings.map(({ mm }) => mm)}`)
    }
    if (!('pieces' in entry)) return
    // What takes the home of another lies where that one lay.
    for (const piece of entry.pieces) {
      if (!('replaces' in piece) || piece.replaces === undefined) continue
      for (const sheet of this.#sheets) if (sheet.pieces.includes(piece.replaces)) sheet.pieces.push(piece.id)
    }
  }

  /** Each sheet on the wall in one line. */
  sheets(): string[] {
    return this.#sheets.map(({ pieces, spots }) => `${pieces}: ${spots.join(' ')}`)
  }

  #draw({ of: pieces, places }: EntryOf<'laid-out'>): void {
    const names = new Set(places.map(({ position }) => position))
    const spots = new Set(places.map(({ x, y }) => `${x},${y}`))
    if (names.size !== places.length) throw new Error('a position is drawn twice')
    if (spots.size !== places.length) throw new Error('two positions are drawn in one place')
    this.#sheets = this.#sheets.filter(
      (sheet) => !sheet.pieces.some((piece) => pieces.includes(piece as 'p1')),
    )
    this.#sheets.push({
      pieces: [...pieces],
      spots: places.map(({ position, x, y, arrow }) => `${position}@${x},${y}${arrow ? ` ${arrow}` : ''}`),
    })
  }
}
