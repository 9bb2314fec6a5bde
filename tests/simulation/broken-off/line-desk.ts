import type { Options } from '../../../src/cli/arguments.ts'
import { Desk } from '../../../src/cli/desk.ts'
import type { DiskShelf } from '../../../src/cli/job-shelf.ts'

export const OPTIONS: Options = {
  json: false,
  noColour: true,
  reader: false,
  invert: false,
  whole: false,
  all: false,
  help: false,
  version: false,
}

/** The command line over the jobs of a home, for who works there. */
export function lineDesk(shelf: DiskShelf, by: string): Desk {
  return new Desk(shelf, { options: { ...OPTIONS, by }, cwd: shelf.home, colour: false })
}
