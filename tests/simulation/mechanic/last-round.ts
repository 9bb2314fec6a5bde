import type { Act } from '../job/act.ts'
import type { Defect } from '../mistakes/mistake.ts'
import type { Mechanic } from './mechanic.ts'

/**
 * The round before the first start, as the tool asks for it: every container that it names is tipped out, the bench is looked
 * over, and what it names in the toolbox is looked for there. What is not as it says is told, and put right: the step of it comes
 * apart, and goes back with it.
 */
export function tipOut(mechanic: Mechanic, round: Act): void {
  for (let turn = 0; turn < MOST_TURNS; turn += 1) {
    const isUnderWay = mechanic.bench.session.state.steps.get(round.step)?.built === 'underway'
    // What holds up the round is put right first.
    if (!isUnderWay && !mechanic.perform({ ...round, doing: 'take', say: () => `take ${round.step}` })) return
    const [found] = seenOn(mechanic, round.step)
    if (!found) return
    mechanic.find(found.defect, 'last round', 'seen')
    if (!found.tell()) mechanic.takeApart(found.defect.step, 'it was not done')
  }
}

const MOST_TURNS = 30

/** A mistake that is before one's eyes, and how it is told. Telling answers whether that puts it right, too. */
interface Seen {
  defect: Defect
  tell(): boolean
}

function seenOn(mechanic: Mechanic, step: number): Seen[] {
  const { bench, known } = mechanic
  const answer = bench.say(`step ${step}`)
  const text = answer.ok ? answer.text : []
  const tipped = new Set(text.flatMap((line) => /^ +\w+ (\d+)\b.*\bheld\b/.exec(line)?.[1] ?? []).map(Number))
  const toolbox = text.find((line) => /^ +toolbox: /.test(line)) ?? ''
  return mechanic.open().flatMap((defect): Seen[] => {
    if (defect.going !== 'ticked' || !defect.lies) return []
    const { thing, at } = defect.lies
    const id = known.piece(thing, at)
    if (thing.kind === 'aid') {
      const isTool = thing.where === null
      const tell = () => {
        bench.say(`move 1 ${id} from toolbox to ${isTool ? 'bench' : 'machine'} because it is not in the box`)
        // A tool lies on top where it was left; what was put in lies beneath.
        if (isTool) bench.say(`return ${id}`)
        return isTool
      }
      return toolbox.includes(thing.name) ? [{ defect, tell }] : []
    }
    const container = known.containers.get(thing)
    if (container === undefined) {
      const name = 'name' in thing ? thing.name : ''
      const tell = () => {
        bench.say(`found ${name}`)
        return false
      }
      return [{ defect, tell }]
    }
    if (!tipped.has(container)) return []
    const tell = () => {
      const counted = bench.say(`count ${container} = 1`)
      const entries = counted.ok ? (counted.entries ?? []) : []
      const [difference] = entries.flatMap((entry) =>
        entry.type === 'counted' ? entry.lines.flatMap((line) => line.difference ?? []) : [],
      )
      bench.say(`explain ${difference} ${id} from machine because it was never put on`)
      return false
    }
    return [{ defect, tell }]
  })
}
