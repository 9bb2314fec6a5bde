import { type Arguments, readArguments } from '../../../src/cli/arguments.ts'
import { Desk } from '../../../src/cli/desk.ts'
import type { DiskShelf } from '../../../src/cli/job-shelf.ts'

/** As nothing said on the command line leaves them. */
export const { options: OPTIONS } = readArguments([]) as Arguments

/** The command line over the jobs of a home, for who works there. */
export function lineDesk(shelf: DiskShelf, by: string): Desk {
  return new Desk(shelf, { options: { ...OPTIONS, by }, cwd: shelf.home, colour: false })
}
