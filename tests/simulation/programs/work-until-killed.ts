import { writeSync } from 'node:fs'
import { DiskShelf } from '../../../src/cli/job-shelf.ts'
import { perform } from '../../../src/cli/perform.ts'
import { Book } from '../broken-off/book.ts'
import { deedsOf } from '../broken-off/deeds.ts'
import { lineDesk, OPTIONS } from '../broken-off/line-desk.ts'
import { madeUp } from '../broken-off/made-up.ts'

// Does one whole job on the disk, and says of each deed its number and the ids of its entries once they are recorded.
// Somebody is to kill it before the end.
const [home = '', seed = ''] = process.argv.slice(2)
const machine = madeUp(Number(seed))
const deeds = deedsOf(machine)
const book = new Book(machine, deeds)
const shelf = (by: string) => new DiskShelf(home, { by })
shelf('Anna').create({ name: machine.shape, machine: machine.shape, units: 'metric' })
const desks = { Anna: lineDesk(shelf('Anna'), 'Anna'), Boris: lineDesk(shelf('Boris'), 'Boris') }

for (let at = book.next(); at !== null; at = book.next()) {
  const isSeenAgain = deeds[at]?.act.doing === 'see again'
  const result = perform(desks[isSeenAgain ? 'Boris' : 'Anna'], [book.line(at)], OPTIONS)
  if ('errand' in result || !result.ok) throw new Error(`${book.line(at)} was refused`)
  book.did(at, result.entries ?? [])
  writeSync(1, `${[at, ...(result.entries ?? []).map(({ id }) => id)].join(' ')}\n`)
}
