import type { Machine, Part, Thing } from '../machines/machine.ts'
import type { Act } from './act.ts'
import { act } from './strip-acts.ts'

/** While it is apart: what goes back is judged, what is used once is bought, the way back is planned. */
export function waitActs(machine: Machine): Act[] {
  return [
    ...machine.steps.flatMap(({ things }, at) => things.flatMap((thing) => waits(thing, at + 1))),
    ...machine.steps.flatMap(({ critical }, at) =>
      critical ? [act('plan', at + 1, () => `step ${at + 1} critical after 30 min`)] : [],
    ),
    ...machine.extra.map(({ kind, title, after, before }) => {
      const behind = after === null ? '' : ` after ${after + 1}`
      return act('plan', 0, () => `add ${kind} ${title}${behind} before ${before + 1}`)
    }),
    act('ask', 0, () => 'proposals'),
    {
      ...act('plan', 0, ({ roundProposed }) => `accept ${roundProposed}`),
      isNeedless: ({ roundProposed }) => roundProposed === 0,
    },
  ]
}

function waits(thing: Thing, no: number): Act[] {
  if (thing.kind === 'put-on') return [act('plan', no, () => `${thing.verb} ${no}: ${thing.text}`, thing)]
  if ('check' in thing && thing.check !== null) {
    return [
      act('ask', no, () => `check ${thing.name}: ${thing.check}`, thing),
      act('judge', no, () => `ok ${thing.name}: nothing found`, thing),
    ]
  }
  if (thing.kind === 'part' && thing.isSingleUse) return newPart(thing, no)
  if (thing.kind === 'lot' && thing.isSingleUse) {
    return [
      act('supply', no, () => `new ${thing.count} ${thing.name} into new bag`, thing),
      act('dispose', no, () => `scrap old ${thing.name}`, thing),
    ]
  }
  return []
}

/** A new one in place of what is used once. What is more than a washer is held beside the old one, which then goes. */
function newPart(thing: Part, no: number): Act[] {
  const { name, isPlain } = thing
  return [
    act('supply', no, () => `new ${name}`, thing),
    isPlain
      ? act('dispose', no, () => `scrap old ${name}`, thing)
      : act('compare', no, () => `compare ${name}: alike`, thing),
  ]
}
