import { dirname } from 'node:path'
import { toFile } from '../../print/destinations/file.ts'
import { toFreeFile } from '../../print/destinations/free-file.ts'
import { orderList } from '../../record/order-list.ts'
import type { ErrandOutcome } from '../../session/errands.ts'
import type { Session } from '../../session/session.ts'
import { say } from '../../words/cures.ts'
import { told } from '../../words/told.ts'

/**
 * Writes the list of what to buy and what was ordered as a CSV file: under a free name in the folder of the job, or as the
 * file that was named, which may not be there yet.
 */
export async function writeOrderList(
  session: Session,
  file: string | null,
  { cwd }: { cwd: string },
): Promise<ErrandOutcome> {
  const bytes = new TextEncoder().encode(orderList(session.stateNow()))
  const folder = dirname(session.store.path)
  const sent =
    file === null
      ? await toFreeFile(bytes, { folder, name: 'to-buy', ending: 'csv' })
      : await toFile(bytes, file, cwd)
  if (sent.ok)
    return { ok: true, text: [`Written: ${sent.where}`], entries: [], answer: { file: sent.where } }
  const isThere = sent.code === 'exists'
  return {
    ok: false,
    exit: isThere ? 'refused' : 'not-recorded',
    code: isThere ? 'file-exists' : 'file-not-written',
    told: isThere
      ? told(
          `${sent.where} is there already, and nothing is written over it`,
          `say another name, or ${say('buy csv')} for a free one`,
        )
      : told(
          `${sent.where} cannot be written (${sent.code})`,
          'look at the folder and the room on the disk, then say it again',
        ),
    entries: [],
  }
}
