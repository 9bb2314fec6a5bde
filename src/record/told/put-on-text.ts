import { counted } from '../../words/grammar.ts'
import type { PutOnRecord } from '../facts/put-on.ts'
import { type Line, line } from './line.ts'
import { history, type Telling } from './telling.ts'

/** What was put on: what was asked, when it went on, and until when it had to set. */
export function putOnText(telling: Telling, record: PutOnRecord): Line[] {
  const { set, dropped, applied, curedAt, late } = record
  return [
    history(telling, set, 4),
    ...applied.flatMap(({ entry, stands }) => [
      history(telling, entry, 6),
      ...(stands ? [] : [line('no longer counted', 8)]),
    ]),
    ...(late > 0 ? [line(`together ${counted(late, 'minute')} too late`, 6)] : []),
    ...(curedAt === null ? [] : [line(`sets until ${telling.when(curedAt)}`, 6)]),
    ...(dropped === null ? [] : [history(telling, dropped, 6)]),
    ...(dropped === null && applied.every(({ stands }) => !stands) ? [line('not put on', 6)] : []),
  ]
}
