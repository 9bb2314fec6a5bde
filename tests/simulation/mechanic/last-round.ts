import type { Act } from '../job/act.ts'
import type { Defect } from '../mistakes/mistake.ts'
import type { Mechanic } from './mechanic.ts'

/**
 * The round before the first start, as the tool asks for it: every container that it names is tipped out, and the bench is looked
 * over. What lies there is said, and put right: its step comes apart, and goes back with it.
 */
export function tipOut(mechanic: Mechanic, round: Act): void {
  for (let turn = 0; turn < MOST_TURNS; turn += 1) {
    // What holds up the round is put right first.
    if (!mechanic.perform({ ...round, doing: 'take', say: () => `take ${round.step}` })) return
    const [found] = lying(mechanic, round.step)
    if (!found) return
    const { defect, container } = found
    mechanic.find(defect, 'last round', 'seen')
    if (container === null) mechanic.bench.say(`found ${nameOf(defect)}`)
    else countIn(mechanic, defect, container)
    mechanic.takeApart(defect.step, 'it was not put on')
  }
}

const MOST_TURNS = 30

/** What lies in the containers that the tool names, and on the bench. */
function lying(mechanic: Mechanic, step: number): { defect: Defect; container: number | null }[] {
  const answer = mechanic.bench.say(`step ${step}`)
  const text = answer.ok ? answer.text : []
  const named = new Set(text.flatMap((line) => /^ +\w+ (\d+)\b.*\bheld\b/.exec(line)?.[1] ?? []).map(Number))
  return mechanic.open().flatMap((defect) => {
    if (defect.going !== 'ticked' || !defect.lies) return []
    const container = mechanic.known.containers.get(defect.lies.thing) ?? null
    return container === null || named.has(container) ? [{ defect, container }] : []
  })
}

/** As many as lie in one bag are counted at once, and each is explained. */
function countIn({ bench, known }: Mechanic, { lies }: Defect, container: number): void {
  const counted = bench.say(`count ${container} = 1`)
  const entries = counted.ok ? (counted.entries ?? []) : []
  const [difference] = entries.flatMap((entry) =>
    entry.type === 'counted' ? entry.lines.flatMap((line) => line.difference ?? []) : [],
  )
  const piece = lies ? known.piece(lies.thing, lies.at) : ''
  bench.say(`explain ${difference} ${piece} from machine because it was never put on`)
}

function nameOf({ lies }: Defect): string {
  return lies && 'name' in lies.thing ? lies.thing.name : ''
}
